/**
 * The reading screen in a real browser: a set by pointer and by keyboard, kept over a reload. Figures have their own
 * tests; here only what a person meets.
 */
import type { Page } from 'playwright';
import { afterEach, describe, expect, it } from 'vitest';
import { READ_DRILLS } from '../../drills/index.ts';
import { makeReadSet } from '../../sim/index.ts';
import type { KeptSet } from '../../src/store/schema.ts';
import { openApp, type PageOptions, pageProblems } from '../support/browser.ts';
import { SIDES, SIDES_IN_UNITS, seriousFindings, sidewaysScroll } from '../support/findings.ts';
import { normals } from '../support/normals.ts';
import { pixelsOfColour } from '../support/pixels.ts';

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

/** Inks of the map, light theme (src/scene/palette.ts): the person's own, and the true line's. */
const OWN_INK = '#a8538a';
const TRUE_INK = '#26241f';

const aim = (on: Page) => on.locator('[data-handle=aim]');
/** Middle of the aim on the page, CSS pixels. */
const placeOfAim = async (on: Page): Promise<{ x: number; y: number }> => {
  const box = await aim(on).boundingBox();
  if (box === null) throw new Error('the aim has no box');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};
/** Half way from ball to hole, clear of both and of an aim beside the hole. */
const middleOfMap = async (on: Page): Promise<{ x: number; y: number }> => {
  const box = await on.getByTestId('map').boundingBox();
  if (box === null) throw new Error('the map has no box');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};
const typeAim = (on: Page, text: string): Promise<void> => on.getByLabel(/^Or type it/).fill(text);

/** Sets of two months as the page would have kept them, one a day: 40% off, then 15%, the second month on shorter putts. */
const twoMonths = (now: number): KeptSet[] => {
  const normal = normals('two months');
  return Array.from({ length: 16 }, (_unused, index) => {
    const [id, off, ago] =
      index < 8 ? (['die-and-firm', 0.4, 45] as const) : (['up-and-down-pairs', 0.15, 15] as const);
    const drill = READ_DRILLS.find((one) => one.id === id);
    if (drill === undefined) throw new Error(`no drill ${id}`);
    const startedAt = now - (ago - (index % 8)) * 86_400_000 + index * 3_600_000;
    const questions = makeReadSet(drill, `${index}`);
    return {
      id: `set-of-two-months-${index}`,
      kind: 'aim',
      feedback: 'each',
      size: 10,
      drillId: drill.id,
      drillName: drill.name,
      seed: `${index}`,
      startedAt,
      day: new Date(startedAt).toISOString().slice(0, 10),
      questions,
      answers: questions.map(({ number, trueAim }) => ({
        kind: 'aim',
        number,
        aim: trueAim * (1 + off * normal()),
        answeredAt: startedAt + number * 60_000,
      })),
    };
  });
};
/** Into the page's own database, which it has opened by now. */
const keepSets = (on: Page, sets: readonly KeptSet[]): Promise<void> =>
  on.evaluate(
    (records) =>
      new Promise<void>((resolve, reject) => {
        const request = indexedDB.open('borrow');
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const transaction = request.result.transaction('readSets', 'readwrite');
          for (const record of records) transaction.objectStore('readSets').put(record);
          transaction.oncomplete = () => {
            request.result.close();
            resolve();
          };
        };
      }),
    sets,
  );

describe('reading', () => {
  it('does a set of ten by pointer, sums it up with an interval, and still has it after a reload', async () => {
    // A small page: where this runs, WebGL is drawn by the processor. The wide one is drawn below.
    const on = await open({ width: 390, height: 844 });
    await start(on, 'pin-high-sidehill');
    for (let number = 1; number <= 10; number += 1) {
      await on.getByRole('heading', { name: `Putt ${number} of 10` }).waitFor();
      await aim(on).waitFor();
      const before = await words(on);
      const { x, y } = await placeOfAim(on);
      // Not on the aim itself: a finger may move it from anywhere on the map.
      await on.mouse.move(x + 50, y + 120);
      await on.mouse.down();
      await on.mouse.move(x - 30, y + 120, { steps: 3 });
      await on.mouse.up();
      await expect.poll(() => words(on)).toMatch(/ in left: /);
      expect(await words(on)).not.toBe(before);
      await button(on, 'Commit to this aim').click();
      await on.getByTestId('answer').waitFor();
      await button(on, number < 10 ? 'Next putt' : 'See the summary').click();
    }
    await expect.poll(() => on.getByTestId('summary').innerText()).toContain('holed putts in a hundred');
    const summary = await on.getByTestId('summary').innerText();
    expect(summary).toContain('10 of 10 putts answered');
    expect(summary).toContain('95% interval');
    for (const kind of ['All putts', 'Left to right', 'Right to left']) expect(summary).toContain(kind);
    await on.reload();
    await expect.poll(() => on.getByTestId('past').innerText()).toContain('10 of 10');
    await button(on, 'Look at Pin-high sidehill').click();
    expect(await on.getByTestId('summary').innerText()).toBe(summary);
    expect(pageProblems(on)).toEqual([]);
  });

  it('does a set of ten by keyboard alone, and a set left half way goes on after a reload', async () => {
    const on = await open({ width: 390, height: 700 });
    await on.locator('[data-drill=die-and-firm]').focus();
    await on.keyboard.press('Enter');
    for (let number = 1; number <= 10; number += 1) {
      await on.getByRole('heading', { name: `Putt ${number} of 10` }).waitFor();
      await aim(on).waitFor();
      if (number === 3) {
        // Nothing committed is lost, and the very same putt is asked again.
        const given = await on.locator('.read-given').innerText();
        await on.reload();
        await button(on, 'Go on with putt 3').focus();
        await on.keyboard.press('Enter');
        await on.getByRole('heading', { name: 'Putt 3 of 10' }).waitFor();
        expect(await on.locator('.read-given').innerText()).toBe(given);
        await aim(on).waitFor();
      }
      // The heading has the focus; the aim is the next thing.
      await on.keyboard.press('Tab');
      expect(await on.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(
        /^Your aim: arrow keys move it 1 in, with Shift a quarter inch; Enter commits$/,
      );
      for (let press = 0; press < 5; press += 1) await on.keyboard.press('ArrowLeft');
      await on.keyboard.press('Shift+ArrowRight');
      await expect.poll(() => words(on)).toMatch(/^4\.75 in left: /);
      await expect
        .poll(() => on.locator('.scene > .scene-words').first().innerText())
        .toContain('4.75 in left');
      await on.keyboard.press('Enter');
      await on.getByTestId('answer').waitFor();
      // In a browser just started the first write takes longer than a whole putt by keyboard; a reload before it aborts it.
      await on.getByText('Saved', { exact: true }).waitFor();
      // The verdict has the focus; the way on follows it.
      await on.keyboard.press('Tab');
      await on.keyboard.press('Enter');
    }
    expect(await on.getByTestId('summary').innerText()).toContain('10 of 10 putts answered');
  });

  it.each(['webgl', 'canvas'] as const)(
    'draws the aim where it is, and the rolls only after the commitment (%s)',
    async (painter) => {
      const on = await open({ graphics: painter === 'webgl' ? 'card' : 'none' });
      await start(on, 'pin-high-sidehill');
      await aim(on).waitFor();
      expect(await on.locator('.scene').getAttribute('data-painter')).toBe(painter);
      const atHole = await placeOfAim(on);
      // Farther left than any of these putts breaks (the set is drawn anew each time): the two lines cannot cover each other.
      await typeAim(on, '40 left');
      await expect.poll(async () => (await placeOfAim(on)).x).toBeLessThan(atHole.x - 30);
      const there = await placeOfAim(on);
      const middle = await middleOfMap(on);
      // A ring of 8 to 12 pixels' radius has well over a hundred pixels; a few where it was could be edges of others.
      await expect.poll(() => pixelsOfColour(on, { ...there, reach: 14 }, OWN_INK)).toBeGreaterThan(40);
      expect(await pixelsOfColour(on, { ...atHole, reach: 14 }, OWN_INK)).toBe(0);
      expect(await pixelsOfColour(on, { ...middle, reach: 150 }, TRUE_INK)).toBe(0);
      await button(on, 'Commit to this aim').click();
      await on.getByTestId('answer').waitFor();
      // Two lines of 3 pixels cross a square 300 high: some 800 pixels each, dashes and smoothed edges taken off.
      await expect.poll(() => pixelsOfColour(on, { ...middle, reach: 150 }, TRUE_INK)).toBeGreaterThan(150);
      expect(await pixelsOfColour(on, { ...middle, reach: 150 }, OWN_INK)).toBeGreaterThan(80);
      expect(pageProblems(on)).toEqual([]);
    },
  );

  it('shows no slope, true aim or true line before the commitment, and all of them after', async () => {
    const on = await open();
    await start(on, 'long-lag');
    await aim(on).waitFor();
    // The words of the map for those who cannot see it are among these.
    // The caution below it speaks of slopes, as the Rules do.
    const before = await on.locator('.read-question').innerText();
    expect(before).toContain('The ground: ');
    expect(before).not.toMatch(/slope|%|true/i);
    await button(on, 'Commit to this aim').click();
    await on.getByTestId('answer').waitFor();
    expect(await on.getByTestId('figures').innerText()).toMatch(
      /True\s+\d[\d.]* in (left|right)[\s\S]*Error\s[\s\S]*Slope\s+\d/,
    );
    await expect.poll(() => on.getByTestId('answer').innerText()).toMatch(/\d+% of these drop from your aim/);
    await expect
      .poll(() => on.locator('.scene > .scene-words').first().innerText())
      .toContain('The true aim is');
  });

  it('explains a bad aim beside the field, commits nothing meanwhile, and keeps the last good one', async () => {
    const on = await open();
    await start(on, 'pin-high-sidehill');
    await typeAim(on, '7 right');
    await typeAim(on, 'a cup');
    await expect
      .poll(() => on.locator('#read-aim-problem').innerText())
      .toMatch(/^Got “a cup”, expected .+ Type /);
    await button(on, 'Commit to this aim').click();
    expect(await on.getByTestId('answer').count()).toBe(0);
    expect(await on.evaluate(() => document.activeElement?.id)).toBe('read-aim');
    expect(await words(on)).toMatch(/^7 in right: /);
    await on.keyboard.press('Escape');
    await on.keyboard.press('Enter');
    await on.getByTestId('answer').waitFor();
    expect(await on.getByTestId('figures').innerText()).toContain('7 in right');
  });

  it('takes the side that is chosen before anything is typed, and keeps it while a number is typed anew', async () => {
    const on = await open();
    await start(on, 'pin-high-sidehill');
    await on.getByRole('radio', { name: 'right' }).check();
    expect(await on.getByRole('radio', { name: 'right' }).isChecked()).toBe(true);
    await typeAim(on, '20');
    await expect.poll(() => words(on)).toMatch(/^20 in right: /);
    // Through nothing, as one does on the way to another number.
    await typeAim(on, '0');
    await typeAim(on, '6');
    await expect.poll(() => words(on)).toMatch(/^6 in right: /);
    await on.getByRole('radio', { name: 'left' }).check();
    await expect.poll(() => words(on)).toMatch(/^6 in left: /);
    await typeAim(on, '0');
    await on.getByRole('radio', { name: 'right' }).check();
    await typeAim(on, '20');
    await button(on, 'Commit to this aim').click();
    await on.getByTestId('answer').waitFor();
    expect(await on.getByTestId('figures').innerText()).toContain('20 in right');
  });

  it('says so and works on when the browser refuses to keep records', async () => {
    const on = await open();
    await on.addInitScript(() => {
      Object.defineProperty(window, 'indexedDB', { value: undefined });
    });
    await on.reload();
    await expect
      .poll(() => on.getByRole('alert').innerText())
      .toContain('What you enter lasts until you close the page');
    await start(on, 'pin-high-sidehill');
    await button(on, 'Commit to this aim').click();
    await on.getByTestId('answer').waitFor();
  });

  it('does an adaptive set by keyboard alone, asks the same putt after a reload, and keeps all of it', async () => {
    const on = await open({ width: 390, height: 700 });
    await on.locator('[data-drill=adaptive]').focus();
    await on.keyboard.press('Enter');
    for (let number = 1; number <= 10; number += 1) {
      await on.getByRole('heading', { name: `Putt ${number} of 10` }).waitFor();
      await aim(on).waitFor();
      if (number === 4) {
        const given = await on.locator('.read-given').innerText();
        await on.reload();
        await button(on, 'Go on with putt 4').focus();
        await on.keyboard.press('Enter');
        await on.getByRole('heading', { name: 'Putt 4 of 10' }).waitFor();
        expect(await on.locator('.read-given').innerText()).toBe(given);
        await aim(on).waitFor();
      }
      await on.keyboard.press('Tab');
      for (let press = 0; press < 3; press += 1) await on.keyboard.press('ArrowLeft');
      await on.keyboard.press('Enter');
      await on.getByTestId('answer').waitFor();
      expect(await on.getByTestId('answer').innerText()).toMatch(/It (counts|does not count) as a hit\./);
      await on.getByText('Saved', { exact: true }).waitFor();
      await on.keyboard.press('Tab');
      await on.keyboard.press('Enter');
    }
    await expect.poll(() => on.getByTestId('summary').innerText()).toContain('10 of 10 putts answered');
    expect(await on.getByTestId('hits').innerText()).toMatch(/^\d+ of 10 aims counted\./);
    // The cost of the last putt may still be on its way.
    await expect.poll(() => on.getByTestId('summary').innerText()).toContain('holed putts in a hundred');
    const summary = await on.getByTestId('summary').innerText();
    await on.reload();
    await button(on, 'Look at Adaptive set').click();
    expect(await on.getByTestId('summary').innerText()).toBe(summary);
    expect(pageProblems(on)).toEqual([]);
  });

  it('shows nothing before the last putt when one wants the truth at the end, then every answer', async () => {
    const on = await open({ width: 390, height: 844 });
    await on.getByLabel('at the end of the set').check();
    await start(on, 'adaptive');
    for (let number = 1; number <= 10; number += 1) {
      await on.getByRole('heading', { name: `Putt ${number} of 10: where do you aim?` }).waitFor();
      expect(await on.getByTestId('answer').count()).toBe(0);
      if (number === 3) {
        // Left half way, the list of earlier sets does not tell either.
        await button(on, 'Leave the set').click();
        const past = await on.getByTestId('past').innerText();
        expect(past).toContain('You chose to see the answers after the last putt.');
        expect(past).not.toMatch(/%/);
        await button(on, 'Go on with putt 3').click();
        await on.getByRole('heading', { name: 'Putt 3 of 10' }).waitFor();
      }
      await typeAim(on, `${number} left`);
      await button(on, 'Commit to this aim').click();
    }
    for (const number of [1, 2]) {
      await on.getByRole('heading', { name: `Putt ${number}: ` }).waitFor();
      expect(await on.getByTestId('figures').innerText()).toContain(`${number} in left`);
      await button(on, 'Next answer').click();
    }
    await button(on, 'Straight to the summary').click();
    expect(await on.getByTestId('summary').innerText()).toContain('10 of 10 putts answered');
    await expect.poll(() => on.getByTestId('summary').innerText()).toContain('holed putts in a hundred');
    await on.reload();
    await expect.poll(() => on.getByTestId('past').innerText()).toContain('10 of 10');
    expect(pageProblems(on)).toEqual([]);
  });

  it('asks die or firm by pointer and keyboard, tells no line before, and what each pace takes after', async () => {
    const on = await open({ width: 390, height: 844 });
    await start(on, 'die-or-firm');
    await on.getByRole('heading', { name: 'Putt 1 of 10: die or firm?' }).waitFor();
    await on.locator('.scene').waitFor();
    expect(await on.locator('.read-question').innerText()).not.toMatch(/slope|%|aims? \d/i);
    expect(await aim(on).count()).toBe(0);
    await button(on, 'Die, ').click();
    await on.getByTestId('answer').waitFor();
    // What a miss costs on this green is worked out first: some ten seconds on two busy cores.
    await expect
      .poll(() => on.getByTestId('answer').innerText(), { timeout: 120_000 })
      .toMatch(/With your errors it takes \d\.\d{3} putts to die it in and \d\.\d{3} to hit it firm\./);
    expect(await on.getByTestId('figures').innerText()).toMatch(/Die \(yours\)[\s\S]+Firm[\s\S]+Slope\s+\d/);
    await on.getByText('Saved', { exact: true }).waitFor();
    await button(on, 'Next putt').focus();
    await on.keyboard.press('Enter');
    await on.getByRole('heading', { name: 'Putt 2 of 10' }).waitFor();
    await on.keyboard.press('Tab');
    await on.keyboard.press('Tab');
    expect(await on.evaluate(() => document.activeElement?.textContent)).toContain('Firm');
    await on.keyboard.press('Enter');
    await on.getByTestId('answer').waitFor();
    await on.getByText('Saved', { exact: true }).waitFor();
    await on.reload();
    await expect.poll(() => on.getByTestId('past').innerText()).toContain('2 of 10');
    await expect.poll(() => on.getByTestId('past').innerText()).toContain('Your choices gave away');
    await button(on, 'Look at Die or firm').click();
    expect(await on.getByTestId('summary').innerText()).toMatch(/a tossed coin \d\.\d{3}/);
    expect(pageProblems(on)).toEqual([]);
  });

  it('asks what slope it is by sliders, tells both slopes after the commitment, and keeps them', async () => {
    const on = await open({ width: 390, height: 844 });
    await start(on, 'what-slope');
    for (let number = 1; number <= 10; number += 1) {
      await on.getByRole('heading', { name: `Putt ${number} of 10: what slope is this?` }).waitFor();
      const total = on.getByLabel('Slope of the ground');
      if (number === 1) {
        await on.locator('.scene').waitFor();
        expect(await on.locator('.read-given').innerText()).not.toMatch(/%|pace/i);
        expect(await aim(on).count()).toBe(0);
      }
      await total.focus();
      for (let press = 0; press < 4; press += 1) await on.keyboard.press('ArrowRight');
      expect(await total.getAttribute('aria-valuetext')).toBe('2.4%');
      await on.keyboard.press('Tab');
      await on.keyboard.press('ArrowLeft');
      expect(await on.getByLabel('Of it, along your line').getAttribute('aria-valuetext')).toBe(
        '0.1% downhill',
      );
      await on.keyboard.press('Enter');
      await on.getByTestId('answer').waitFor();
      expect(await on.getByTestId('figures').innerText()).toMatch(
        /Yours\s+2\.4%\s+0\.1% downhill\s+True\s+\d/,
      );
      await button(on, number < 10 ? 'Next putt' : 'See the summary').click();
    }
    const summary = await on.getByTestId('summary').innerText();
    expect(summary).toMatch(/Of the ground\s+(0|[+−]\d)/);
    expect(summary).toContain('spread');
    await on.reload();
    await button(on, 'Look at What slope').click();
    expect(await on.getByTestId('summary').innerText()).toBe(summary);
    expect(pageProblems(on)).toEqual([]);
  });

  it('answers whether the reading is better than last month, corrected for the questions', async () => {
    const on = await open({ width: 390, height: 844 });
    await keepSets(on, twoMonths(Date.now()));
    await on.reload();
    await expect
      .poll(() => on.getByTestId('progress-answer').innerText())
      .toMatch(/^Better than last month: at one and the same mix/);
    const progress = on.getByTestId('progress');
    await progress.locator('svg').waitFor();
    await progress.getByText('The chart as a table').click();
    expect(await progress.innerText()).toMatch(/last 30 days\s+80\s+\d+% \(/);
    expect(await progress.innerText()).toMatch(/of which .+ come from easier questions|as hard/);
    expect(await seriousFindings(on)).toEqual([]);
    expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
  });

  it('shows earlier sets in pages, newest first, and comes back to the page it was left on', async () => {
    const on = await open({ width: 390, height: 844 });
    await keepSets(on, twoMonths(Date.now()));
    await on.reload();
    const past = on.getByTestId('past');
    await past.getByText('Sets 1 to 8 of 16').waitFor();
    const days = () => past.locator('tbody th .quiet').allTextContents();
    // The day and hour each was begun, as written, back into moments: none before the next.
    const moments = (lines: readonly string[]): number[] =>
      lines.map((line) => Date.parse(line.replace(/^\d+ of \d+ putts, /, '').replace('\u202f', ' ')));
    const first = moments(await days());
    await past.getByRole('button', { name: 'Next' }).focus();
    await on.keyboard.press('Enter');
    await past.getByText('Sets 9 to 16 of 16').waitFor();
    const all = [...first, ...moments(await days())];
    expect(all.filter(Number.isFinite).length).toBe(16);
    expect(all).toEqual([...all].sort((a, b) => b - a));
    await past.locator('tbody').getByRole('button').last().click();
    await on.getByTestId('summary').waitFor();
    await button(on, 'Back to the drills').click();
    await past.getByText('Sets 9 to 16 of 16').waitFor();
    expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
    expect(await seriousFindings(on)).toEqual([]);
  });

  it.each(SIDES)(
    'has no sideways scroll and nothing serious for axe in the new questions at %i px, %s',
    async (width, colorScheme) => {
      const on = await open({ width, height: 844, colorScheme });
      const isFine = async (): Promise<void> => {
        expect(await seriousFindings(on)).toEqual([]);
        expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      };
      for (const [drill, commit] of [
        ['what-slope', 'Commit to these slopes'],
        ['die-or-firm', 'Firm, '],
        ['adaptive', 'Commit to this aim'],
      ] as const) {
        await start(on, drill);
        await on.locator('.scene').waitFor();
        await isFine();
        await button(on, commit).click();
        await on.getByTestId('answer').waitFor();
        await isFine();
        await button(on, 'Leave the set').click();
        await on.getByTestId('past').getByRole('button').first().click();
        await on.getByTestId('summary').waitFor();
        await isFine();
        await button(on, 'Back to the drills').click();
      }
      await isFine();
    },
  );

  it.each(SIDES_IN_UNITS)(
    'has no sideways scroll and nothing serious for axe at %i px, %s, in %s',
    async (width, colorScheme, units) => {
      const on = await open({ width, height: 844, colorScheme });
      await on.getByLabel(units).check();
      expect(await seriousFindings(on)).toEqual([]);
      expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      await start(on, 'whole-greens');
      await aim(on).waitFor();
      await typeAim(on, '30 left');
      expect(await words(on)).toMatch(units === 'm, cm' ? /^30 cm left: / : /^30 in left: /);
      expect(await seriousFindings(on)).toEqual([]);
      expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      await button(on, 'Commit to this aim').click();
      await on.getByTestId('answer').waitFor();
      expect(await seriousFindings(on)).toEqual([]);
      expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      await button(on, 'Leave the set').click();
      await button(on, 'Look at Whole greens').click();
      await on.getByTestId('summary').waitFor();
      expect(await seriousFindings(on)).toEqual([]);
      expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
    },
  );
});
