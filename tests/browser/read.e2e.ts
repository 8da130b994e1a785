/**
 * The reading screen in a real browser: a set by pointer and by keyboard, kept over a reload. Figures have their own
 * tests; here only what a person meets.
 */
import type { Page } from 'playwright';
import { afterEach, describe, expect, it } from 'vitest';
import { addAxe, openApp, type PageOptions, pageProblems } from '../support/browser.ts';

let page: Page | undefined;
afterEach(async () => {
  await page?.close();
});

const open = async (options: PageOptions = {}): Promise<Page> => {
  page = await openApp({ width: 1440, height: 900, path: '/#/read', ...options });
  await page.getByText('None yet.').waitFor();
  return page;
};
const start = (on: Page, drill: string): Promise<void> => on.locator(`[data-drill=${drill}]`).click();
const words = (on: Page): Promise<string> => on.getByTestId('aim-words').innerText();
const button = (on: Page, name: string) => on.getByRole('button', { name });

const seriousFindings = async (on: Page): Promise<string[]> => {
  await addAxe(on);
  return on.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run(): Promise<{ violations: { id: string; impact: string | null }[] }> };
    };
    const { violations } = await axe.run();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id }) => id);
  });
};
const sidewaysScroll = (on: Page): Promise<number> =>
  on.evaluate(() => document.documentElement.scrollWidth - innerWidth);

describe('reading', () => {
  it('does a set of ten by pointer, sums it up with an interval, and still has it after a reload', async () => {
    const on = await open();
    await start(on, 'pin-high-sidehill');
    for (let number = 1; number <= 10; number += 1) {
      await on.getByRole('heading', { name: `Putt ${number} of 10` }).waitFor();
      const box = await on.getByTestId('aim').boundingBox();
      if (box === null) throw new Error('the aim has no box');
      const before = await words(on);
      await on.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await on.mouse.down();
      await on.mouse.move(box.x + box.width / 2 - 60, box.y + box.height / 2, { steps: 3 });
      await on.mouse.up();
      expect(await words(on)).not.toBe(before);
      expect(await words(on)).toContain('left');
      await button(on, 'Commit to this aim').click();
      await on.getByTestId('answer').waitFor();
      await button(on, number < 10 ? 'Next putt' : 'See the summary').click();
    }
    const summary = await on.getByTestId('summary').innerText();
    expect(summary).toContain('10 of 10 putts answered');
    expect(summary).toContain('95% interval');
    expect(summary).toContain('All putts');
    await on.reload();
    await expect.poll(() => on.getByTestId('past').innerText()).toContain('10 of 10');
    await button(on, 'Look at Pin-high sidehill').click();
    expect(await on.getByTestId('summary').innerText()).toBe(summary);
    expect(pageProblems(on)).toEqual([]);
  });

  it('keeps each committed answer at once: a set left half way goes on after a reload', async () => {
    const on = await open();
    await start(on, 'left-and-right');
    for (const aim of ['6 left', '4 right']) {
      await on.getByLabel('Aim beside the hole centre (in)').fill(aim);
      await button(on, 'Commit to this aim').click();
      await on.getByTestId('answer').waitFor();
      await button(on, 'Next putt').click();
    }
    const given = await on.locator('.read-given').innerText();
    await on.reload();
    await button(on, 'Go on with putt 3').click();
    await on.getByRole('heading', { name: 'Putt 3 of 10' }).waitFor();
    expect(await on.locator('.read-given').innerText()).toBe(given);
  });

  it('is done by keyboard alone: start, aim, commit, next', async () => {
    const on = await open();
    await on.locator('[data-drill=die-and-firm]').focus();
    await on.keyboard.press('Enter');
    await on.getByRole('heading', { name: 'Putt 1 of 10' }).waitFor();
    await on.getByTestId('aim').focus();
    for (let press = 0; press < 5; press += 1) await on.keyboard.press('ArrowLeft');
    await on.keyboard.press('Shift+ArrowRight');
    expect(await words(on)).toMatch(/^4\.8 in left: /);
    expect(await on.getByTestId('aim').getAttribute('aria-valuetext')).toMatch(/^4\.8 in left, /);
    await on.keyboard.press('Enter');
    await on.getByTestId('answer').waitFor();
    // The heading has the focus; the next button follows it.
    await on.keyboard.press('Tab');
    await on.keyboard.press('Enter');
    await on.getByRole('heading', { name: 'Putt 2 of 10' }).waitFor();
  });

  it('shows no slope, true aim or true line before the commitment, and all of them after', async () => {
    const on = await open();
    await start(on, 'long-lag');
    await on.getByTestId('aim').waitFor();
    const before = await on.locator('main').innerText();
    expect(before).not.toMatch(/slope|%|true/i);
    expect(await on.locator('svg > g .read-true, .read-true-aim, .read-start-true').count()).toBe(0);
    await button(on, 'Commit to this aim').click();
    await on.getByTestId('answer').waitFor();
    expect(await on.getByTestId('answer').innerText()).toMatch(
      /True: \d[\d.]* in (left|right)[\s\S]*Slope\s+\d/,
    );
    expect(await on.locator('svg > g .read-true').count()).toBe(1);
  });

  it('explains a bad aim beside the field and commits the last good one', async () => {
    const on = await open();
    await start(on, 'pin-high-sidehill');
    const field = on.getByLabel('Aim beside the hole centre (in)');
    await field.fill('7 right');
    await field.fill('a cup');
    await expect
      .poll(() => on.locator('#read-aim-problem').innerText())
      .toMatch(/^Got “a cup”, expected .+ Type /);
    await button(on, 'Commit to this aim').click();
    expect(await on.getByTestId('answer').innerText()).toContain('Yours: 7 in right');
  });

  it('turns to centimetres when asked', async () => {
    const on = await open();
    await start(on, 'whole-greens');
    await on.getByLabel('m, cm').check();
    await on.getByLabel('Aim beside the hole centre (cm)').fill('30 left');
    expect(await words(on)).toMatch(/^30 cm left: /);
  });

  it('says so and works on when the browser refuses to keep records', async () => {
    const on = await open();
    await on.addInitScript(() => {
      Object.defineProperty(window, 'indexedDB', { value: undefined });
    });
    await on.reload();
    await expect
      .poll(() => on.getByRole('alert').innerText())
      .toContain('Your answers last until you close the page');
    await start(on, 'pin-high-sidehill');
    await button(on, 'Commit to this aim').click();
    await on.getByTestId('answer').waitFor();
  });

  it.each([
    [390, 'light'],
    [390, 'dark'],
    [1440, 'light'],
    [1440, 'dark'],
  ] as const)(
    'has no sideways scroll and nothing serious for axe at %i px, %s',
    async (width, colorScheme) => {
      const on = await open({ width, height: 844, colorScheme });
      expect(await seriousFindings(on)).toEqual([]);
      expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      await start(on, 'whole-greens');
      await on.getByTestId('aim').waitFor();
      expect(await seriousFindings(on)).toEqual([]);
      expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      await button(on, 'Commit to this aim').click();
      await on.getByTestId('answer').waitFor();
      expect(await seriousFindings(on)).toEqual([]);
      await button(on, 'Leave the set').click();
      await button(on, 'Look at Whole greens').click();
      await on.getByTestId('summary').waitFor();
      expect(await seriousFindings(on)).toEqual([]);
      expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
    },
  );
});
