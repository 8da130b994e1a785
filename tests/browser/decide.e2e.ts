/**
 * The deciding screen in a real browser, by pointer and by keyboard. No figure is checked here beyond "it changed" or "it
 * stayed": the figures have their own tests. Needs openApp(): a page on the production build at the given size.
 */
import { createRequire } from 'node:module';
import type { Page } from 'playwright';
import { afterEach, describe, expect, it } from 'vitest';
import { openApp } from '../support/browser.ts';

let page: Page | undefined;
afterEach(async () => {
  await page?.close();
});

const open = async (
  options: { width?: number; height?: number; colorScheme?: 'light' | 'dark' } = {},
): Promise<Page> => {
  const opened: Page = await openApp({
    width: 1440,
    height: 900,
    colorScheme: 'light',
    path: '/#/',
    ...options,
  });
  page = opened;
  await opened.getByTestId('paces').waitFor();
  await opened.locator('tr:not(.stale) >> text=expected putts').waitFor();
  return opened;
};

const row = (on: Page, name: string): Promise<string> =>
  on.locator('[data-testid=paces] tr', { hasText: name }).first().innerText();

const ballBox = async (on: Page) => {
  const box = await on.locator('[data-handle=ball]').boundingBox();
  if (box === null) throw new Error('the ball has no box');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

describe('deciding', () => {
  it('changes the numbers when the ball is dragged', async () => {
    const on = await open();
    const before = await row(on, 'aim beside');
    const length = await on.getByLabel('Length (ft)').inputValue();
    const { x, y } = await ballBox(on);
    await on.mouse.move(x, y);
    await on.mouse.down();
    await on.mouse.move(x - 60, y - 90, { steps: 5 });
    await on.mouse.up();
    await expect.poll(() => row(on, 'aim beside')).not.toBe(before);
    expect(await on.getByLabel('Length (ft)').inputValue()).not.toBe(length);
  });

  it('moves the ball by arrow keys and says so in the text of the map', async () => {
    const on = await open();
    const before = await on.getByTestId('map-words').innerText();
    await on.locator('[data-handle=ball]').focus();
    for (let press = 0; press < 5; press += 1) await on.keyboard.press('ArrowDown');
    await expect.poll(() => on.getByTestId('map-words').innerText()).not.toBe(before);
  });

  it('explains bad input beside the field and keeps the last good result', async () => {
    const on = await open();
    const before = await row(on, 'holed');
    const field = on.getByLabel('Green speed (ft)');
    await field.fill('40');
    await expect
      .poll(() => on.locator('#green-speed-problem').innerText())
      .toMatch(/^Got “40”, expected .+ Type /);
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    expect(await row(on, 'holed')).toBe(before);
  });

  it('turns every length to metric when asked', async () => {
    const on = await open();
    await on.getByLabel('m, cm').check();
    await expect.poll(() => row(on, 'stops past')).toContain('15 cm');
    expect(await on.getByLabel('Length (m)').inputValue()).toBe('3.66');
  });

  it('shows the Rules caution and what is left out', async () => {
    const on = await open();
    expect(await on.getByText('Rule 4.3a').isVisible()).toBe(true);
    expect(await on.getByText('Left out:').isVisible()).toBe(true);
  });

  it.each([
    [390, 'light'],
    [390, 'dark'],
    [1440, 'light'],
    [1440, 'dark'],
  ] as const)(
    'has no sideways scroll and no serious finding of axe at %i px, %s',
    async (width, colorScheme) => {
      const on = await open({ width, colorScheme });
      expect(await on.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
        0,
      );
      expect(await on.evaluate(() => document.documentElement.dataset.theme)).toBe(colorScheme);
      await on.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
      const found = await on.evaluate(async () => {
        const { axe } = window as unknown as {
          axe: { run: () => Promise<{ violations: { id: string; impact: string | null }[] }> };
        };
        return (await axe.run()).violations.filter(
          ({ impact }) => impact === 'serious' || impact === 'critical',
        );
      });
      expect(found.map(({ id }) => id)).toEqual([]);
    },
  );

  it('draws something on the map: its picture has more than one colour', async () => {
    const on = await open();
    const picture = await on.getByTestId('map').screenshot();
    // A blank PNG of this size compresses to a few kilobytes at most; lines and hachures do not.
    expect(picture.length).toBeGreaterThan(6000);
  });
});
