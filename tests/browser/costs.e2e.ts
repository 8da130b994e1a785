/**
 * What it costs, in a real browser over the production build: that the sentence is the engine's, that progress is shown and the work
 * stops and goes on, that the record's first putts are used when there are any, and how the page stands at both widths and themes.
 */
import type { Page } from 'playwright';
import { afterAll, describe, expect, it } from 'vitest';
import { goTo, openApp, pageProblems } from '../support/browser.ts';
import { soundOnEverySide } from '../support/findings.ts';
import { A_FIT } from '../support/players.ts';
import { sized } from '../support/size.ts';

/** Some ten players by the engine, seconds each on a busy machine, ms. */
const PATIENCE = 400_000;
const LONG = 900_000;

const finished = (on: Page): Promise<void> =>
  on.getByText('All is worked out.').waitFor({ timeout: PATIENCE });
const answer = (on: Page): Promise<string> => on.getByTestId('cost-answer').innerText();

/** Who it may be: two of a fit, who differ in one error, or the family of a preset, which takes the engine a minute. */
const PLAYER = sized('fit:own', 'handicap-6');
/** One finished page for all tests: what it takes is the engine's work, done once. */
let shared: Page | undefined;
const common = async (): Promise<Page> => {
  if (shared === undefined) {
    shared = await openApp({ width: 1440, height: 900, path: '/#/costs', kept: A_FIT });
    await shared.getByLabel('Start from').selectOption(PLAYER);
    await finished(shared);
  }
  return shared;
};
afterAll(async () => {
  const problems = shared ? [...pageProblems(shared)] : [];
  await shared?.close();
  expect(problems).toEqual([]);
});

describe('what it costs', () => {
  it(
    'answers in one sentence with strokes and their range, says where the first putts come from, and what to practise',
    async () => {
      const on = await common();
      expect(await answer(on)).toMatch(
        /^Your [a-z -]+ (costs you most(, your [a-z -]+ with a chance of \d+%)?|and [a-z -]+ cost you about alike): .*\d\.\d\d strokes a round \(\d\.\d\d to \d\.\d\d\)/,
      );
      expect(await on.getByTestId('mix').innerText()).toMatch(/stated mix.*common practice, no source/);
      expect(await on.getByTestId('where').innerText()).toMatch(/putts on 18 holes/);
      expect(await on.getByTestId('firmer').innerText()).toMatch(
        /^Firmer \(30 in past in the place of 17 in\)/,
      );
      expect(await on.getByTestId('firmer-table').locator('tbody tr').count()).toBe(15);
      // Players who differ in one error: where it counts a range stands with the number.
      const cells = await on.getByTestId('by-distance').locator('tbody tr:nth-child(2) td').allInnerTexts();
      expect(cells.some((cell) => /^[−+]?[\d.]+\n[−+]?[\d.]+ to [−+]?[\d.]+$/.test(cell))).toBe(true);
      await on.locator('#savings-title ~ .chart svg').waitFor();
    },
    LONG,
  );

  it(
    'answers whether one step saves more than another, and the other way round when they change places',
    async () => {
      const on = await common();
      const compared = on.getByTestId('compared');
      await expect.poll(() => compared.innerText()).toMatch(/^No: pace 10% better saves .* less than/);
      await on.getByLabel('Would this').selectOption('lineHalf');
      await on.getByLabel('save more than this?').selectOption('paceShare');
      await expect
        .poll(() => compared.innerText())
        .toMatch(/^Yes: a start line off by half a degree less saves/);
      await on.getByLabel('save more than this?').selectOption('lineHalf');
      await expect.poll(() => compared.innerText()).toMatch(/choose two different steps/);
    },
    LONG,
  );

  it(
    'turns to metres without working again, and shows one direction of the firmer putts at a time',
    async () => {
      const on = await common();
      await on.getByLabel('m, cm').check({ force: true });
      await expect.poll(() => on.getByTestId('by-distance').innerText()).toMatch(/2 to 4.5 m/);
      expect(await on.getByText('All is worked out.').isVisible()).toBe(true);
      const before = await on.getByTestId('firmer-table').innerText();
      await on.getByRole('radio', { name: 'downhill' }).check({ force: true });
      await expect.poll(() => on.getByTestId('firmer-table').innerText()).not.toBe(before);
      await on.getByLabel('ft, in').check({ force: true });
      await on.getByRole('radio', { name: 'all round' }).check({ force: true });
    },
    LONG,
  );

  it(
    'has no sideways scroll and no finding of axe, at 390 and 1440 px, light and dark',
    async () => {
      const on = await common();
      await soundOnEverySide(on, 'costs');
    },
    LONG,
  );

  it(
    'takes the first putts of the record shown, without working again',
    async () => {
      const on = await common();
      const before = await on.getByTestId('by-distance').innerText();
      await goTo(on, 'Review');
      await on.getByRole('button', { name: 'Look at the invented player' }).click();
      await on.getByText('These records are invented').waitFor({ timeout: PATIENCE });
      await goTo(on, 'What it costs');
      await expect
        .poll(() => on.getByTestId('mix').innerText(), { timeout: PATIENCE })
        .toMatch(/^First putts: the invented player’s, from \d+ holes\.$/);
      expect(await on.getByTestId('by-distance').innerText()).not.toBe(before);
      // Kept from before: nothing is worked out again.
      expect(await on.getByText('All is worked out.').isVisible()).toBe(true);
    },
    LONG,
  );

  it(
    'shows how far the work is, stops when told, keeps the last answer marked as old, and goes on',
    async () => {
      const on = await common();
      const old = await answer(on);
      await on.getByLabel('Start from').selectOption('tour');
      await on.getByTestId('work').waitFor({ timeout: PATIENCE });
      expect(await on.getByTestId('work').innerText()).toMatch(/, \d+%$/);
      await on.getByRole('button', { name: 'Stop' }).click();
      await on.getByText('Stopped.').waitFor();
      expect(await on.getByTestId('stale').innerText()).toMatch(/as they were before\.$/);
      expect(await answer(on)).toBe(old);
      await on.getByRole('button', { name: 'Go on' }).click();
      await on.getByTestId('work').waitFor({ timeout: PATIENCE });
      // Back to the errors before: known at once.
      await on.getByLabel('Start from').selectOption(PLAYER);
      await finished(on);
      expect(await answer(on)).toBe(old);
    },
    LONG,
  );
});
