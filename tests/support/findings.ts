/** What is wrong with a page for those who see or hear it otherwise (by axe-core), whether it scrolls sideways, on every side; pictures of it. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright';
import { expect } from 'vitest';
import { sized } from './size.ts';

interface Violation {
  readonly id: string;
  readonly impact: string | null;
  readonly nodes: readonly { readonly html: string }[];
}

/**
 * Loads axe-core into the page. By evaluation, not by a script tag: the page's content policy rightly refuses inline
 * scripts, and tests must not switch the policy off.
 */
const addAxe = async (on: Page): Promise<void> => {
  if (await on.evaluate(() => 'axe' in window)) return;
  await on.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
};

/** Everything axe finds, or only what is serious, each with the first place it is found at. */
export const findings = async (on: Page, least: 'any' | 'serious' = 'any'): Promise<string[]> => {
  await addAxe(on);
  const found = await on.evaluate(async (): Promise<readonly Violation[]> => {
    const { axe } = window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } };
    const { violations } = await axe.run();
    return violations.map(({ id, impact, nodes }) => ({
      id,
      impact,
      nodes: nodes.slice(0, 1).map(({ html }) => ({ html })),
    }));
  });
  return found
    .filter(({ impact }) => least === 'any' || impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
};

export const seriousFindings = (on: Page): Promise<string[]> => findings(on, 'serious');

/** How far the page scrolls sideways, CSS pixels. */
export const sidewaysScroll = (on: Page): Promise<number> =>
  on.evaluate(() => document.documentElement.scrollWidth - innerWidth);

/** For looking at: the folder that PICTURES names, nothing without it. */
export const picture = async (on: Page, name: string): Promise<void> => {
  if (process.env.PICTURES)
    await on.screenshot({ path: `${process.env.PICTURES}/${name}.png`, fullPage: true });
};

/** No sideways scroll and no finding of axe on a telephone and on a desk, CSS pixels, as the page is. */
export const soundAtBothWidths = async (on: Page, least: 'any' | 'serious' = 'any'): Promise<void> => {
  for (const width of [390, 1440]) {
    await on.setViewportSize({ width, height: 900 });
    await expect.poll(() => sidewaysScroll(on)).toBeLessThanOrEqual(0);
    expect(await findings(on, least), `${width} px`).toEqual([]);
  }
};

type Side = readonly [width: number, theme: 'light' | 'dark'];
/** On a telephone and on a desk, light and dark: every day each of these once, at full size each with each. */
export const SIDES = sized<readonly Side[]>(
  [
    [390, 'dark'],
    [1440, 'light'],
  ],
  [
    [390, 'light'],
    [390, 'dark'],
    [1440, 'dark'],
    [1440, 'light'],
  ],
);
/** The same, each with a unit. */
export const SIDES_IN_UNITS = SIDES.map(
  ([width, theme], index) => [width, theme, index % 2 === 0 ? 'm, cm' : 'ft, in'] as const,
);

/** On every side: no sideways scroll, and nothing for axe. Ends on the desk, in the light. */
export const soundOnEverySide = async (
  on: Page,
  name: string,
  least: 'any' | 'serious' = 'any',
): Promise<void> => {
  for (const [width, theme] of SIDES) {
    await on.setViewportSize({ width, height: 900 });
    await on.getByRole('radio', { name: theme === 'dark' ? 'Dark' : 'Light' }).check({ force: true });
    await expect.poll(() => sidewaysScroll(on)).toBeLessThanOrEqual(0);
    expect(await findings(on, least), `${name} ${width} ${theme}`).toEqual([]);
    await picture(on, `${name}-${width}-${theme}`);
  }
  // The navigation unfolds a moment later: who goes on at once would press a button that is on its way out.
  const fold = on.getByRole('navigation', { name: 'Screens' }).getByRole('button');
  await fold.waitFor({ state: 'detached' });
};
