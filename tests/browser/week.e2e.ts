/**
 * The week, in a real browser over the production build: a plan is made of the engine's costs, changed, ticked off, kept over a reload,
 * taken away as a calendar file and on paper; how the page stands at both widths and themes; and that an open round hides it.
 */
import { readFileSync } from 'node:fs';
import ICAL from 'ical.js';
import type { Page } from 'playwright';
import { afterAll, describe, expect, it } from 'vitest';
import { openApp, pageProblems } from '../support/browser.ts';
import { findings, sidewaysScroll } from '../support/findings.ts';

/** Some ten players by the engine and a dozen drills, seconds each on a busy machine, ms. */
const PATIENCE = 400_000;
const LONG = 450_000;

const answer = (on: Page): Promise<string> => on.getByTestId('week-answer').innerText();
const names = (on: Page): Promise<string[]> => on.getByTestId('week-item').locator('strong').allInnerTexts();
const picture = async (on: Page, name: string): Promise<void> => {
  if (process.env.PICTURES)
    await on.screenshot({ path: `${process.env.PICTURES}/${name}.png`, fullPage: true });
};

/** One page with a plan for all tests: what it takes is the engine's work, done once. */
let shared: Page | undefined;
const common = async (): Promise<Page> => {
  if (shared === undefined) {
    shared = await openApp({ width: 1440, height: 900, path: '/#/costs' });
    await shared.getByLabel('Start from').selectOption('handicap-6');
    await shared.getByRole('link', { name: 'The week' }).click();
    await shared.getByRole('button', { name: 'Plan the week' }).waitFor({ timeout: PATIENCE });
  }
  return shared;
};
afterAll(async () => {
  const problems = shared ? [...pageProblems(shared)] : [];
  await shared?.close();
  expect(problems).toEqual([]);
});

describe('the week', () => {
  it(
    'says first that nothing is planned, shows how far the work is, and makes a plan with scores to expect',
    async () => {
      const on = await common();
      expect(await answer(on)).toMatch(/^No week is planned yet/);
      await picture(on, 'week-empty-1440');
      await on.getByRole('button', { name: 'Plan the week' }).click();
      await on.getByTestId('work').waitFor({ timeout: PATIENCE });
      expect(await on.getByTestId('work').innerText()).toMatch(/, \d+%$/);
      await on.getByTestId('week-session').first().waitFor({ timeout: PATIENCE });
      expect(await answer(on)).toMatch(
        /cost(s most| about alike), \d\.\d\d strokes a round \(\d\.\d\d to \d\.\d\d\) for .*: .* this week; test on .*, again in two weeks\.$/,
      );
      expect(await on.getByTestId('week-basis').innerText()).toMatch(
        /stated mix.*common practice, no source/,
      );
      await on.getByTestId('scores-working').waitFor({ state: 'detached', timeout: PATIENCE });
      const expected = await on.locator('.week-expected').allInnerTexts();
      expect(expected.length).toBeGreaterThanOrEqual(4);
      for (const words of expected)
        expect(words).toMatch(
          /^Expected: (\d+\.\d \(\d+ to \d+\); \d+ or (more|fewer) passes|about 7 of 10|no score)/,
        );
    },
    LONG,
  );

  it(
    'lets a session change its day, minutes and ground, and a drill give way to another',
    async () => {
      const on = await common();
      const first = on.getByTestId('week-session').first();
      const before = await names(on);
      const instead = on.locator('select[id^=instead-]').first();
      const [, other] = await instead.locator('option').all();
      const chosen = (await other.innerText()).replace(/, \d+ min$/, '');
      expect(before).not.toContain(chosen);
      await instead.selectOption({ index: 1 });
      await expect.poll(() => names(on)).toContain(chosen);
      await first.getByText('Change this session').click();
      await first.getByRole('combobox', { name: 'minutes' }).selectOption('20');
      await expect.poll(() => first.getByRole('heading').innerText()).toMatch(/20 min, grass/);
      await first.getByRole('radio', { name: 'carpet' }).check({ force: true });
      await expect.poll(() => first.getByRole('heading').innerText()).toMatch(/20 min, carpet/);
      await first.getByRole('radio', { name: 'grass' }).check({ force: true });
      await first.getByRole('combobox', { name: 'minutes' }).selectOption('40');
      const day = first.getByRole('combobox', { name: 'day' });
      const heading = await first.getByRole('heading').innerText();
      await day.selectOption({ index: 1 });
      await expect.poll(() => first.getByRole('heading').innerText()).not.toBe(heading);
      await on.getByTestId('scores-working').waitFor({ state: 'detached', timeout: PATIENCE });
    },
    LONG,
  );

  it(
    'keeps ticks, scores and changes over a reload, and takes a score only if it is one',
    async () => {
      const on = await common();
      const item = on.getByTestId('week-item').filter({ hasText: ', the test' });
      await item.getByRole('checkbox').press('Space');
      const score = item.getByLabel('Your score');
      await score.fill('many');
      await item.getByText('expected a whole number from 0').waitFor();
      await score.fill('7');
      await score.blur();
      const [title, all] = [await answer(on), await names(on)];
      await on.reload();
      await on.getByTestId('week-session').first().waitFor();
      expect(await answer(on)).toBe(title);
      expect(await names(on)).toEqual(all);
      expect(await item.getByRole('checkbox').isChecked()).toBe(true);
      expect(await item.getByLabel('Your score').inputValue()).toBe('7');
      await on.getByText('The first score was 7.').waitFor();
      await expect
        .poll(() => on.getByTestId('week-moved').innerText())
        .toMatch(
          /Nothing can be said before[\s\S]*The test: nothing to compare yet \(1 score before, 0 since\)/,
        );
      await on.getByLabel('Score of the repetition').fill('8');
      await on.getByLabel('Score of the repetition').blur();
      await expect
        .poll(() => on.getByTestId('week-moved').innerText())
        .toMatch(/The test: (cannot tell yet|better|worse)/);
    },
    LONG,
  );

  it(
    'hands over a calendar file that a reader of calendars takes, an entry for each session and one for the test again',
    async () => {
      const on = await common();
      const saved = on.waitForEvent('download');
      await on.getByRole('button', { name: 'Calendar file' }).click();
      const file = await saved;
      expect(file.suggestedFilename()).toMatch(/^borrow-week-\d{4}-\d\d-\d\d\.ics$/);
      const text = readFileSync(await file.path(), 'utf8');
      const events = new ICAL.Component(ICAL.parse(text))
        .getAllSubcomponents('vevent')
        .map((one) => new ICAL.Event(one));
      expect(events.length).toBe(3);
      expect(events.every(({ startDate }) => startDate.isDate)).toBe(true);
      const described = events.map(({ description }) => description).join('\n');
      for (const name of await names(on)) expect(described).toContain(name);
    },
    LONG,
  );

  it(
    'prints sessions and set-ups with their drawings, black on white, without the navigation, in the dark theme too',
    async () => {
      const on = await common();
      await on.getByRole('radio', { name: 'Dark' }).check({ force: true });
      await on.emulateMedia({ media: 'print' });
      expect(await on.getByTestId('week-sheet').isVisible()).toBe(true);
      const sheet = await on.getByTestId('week-sheet').innerText();
      for (const name of await names(on)) expect(sheet).toContain(name);
      const setUps = on.getByTestId('week-set-up');
      expect(await setUps.count()).toBeGreaterThan(2);
      for (const one of await setUps.all()) expect(await one.locator('svg').isVisible()).toBe(true);
      for (const gone of ['nav.places', '.preferences', 'button', '.week-side', '[data-testid=week-session]'])
        for (const thing of await on.locator(gone).all()) expect(await thing.isVisible(), gone).toBe(false);
      const colours = await on.evaluate(() =>
        [
          getComputedStyle(document.body),
          getComputedStyle(document.querySelector('h1') ?? document.body),
        ].map(({ backgroundColor, color }) => [backgroundColor, color]),
      );
      expect(colours[0][0]).toBe('rgb(255, 255, 255)');
      expect(colours[1][1]).toBe('rgb(0, 0, 0)');
      if (process.env.PICTURES) {
        await on.pdf({ path: `${process.env.PICTURES}/week.pdf`, format: 'A4' });
        await on.setViewportSize({ width: 760, height: 1000 });
        await picture(on, 'week-print');
        await on.setViewportSize({ width: 1440, height: 900 });
      }
      await on.emulateMedia({ media: null });
    },
    LONG,
  );

  it(
    'has no sideways scroll and no finding of axe, at 390 and 1440 px, light and dark, with a new week being planned',
    async () => {
      const on = await common();
      for (const [width, theme] of [
        [1440, 'Light'],
        [1440, 'Dark'],
        [390, 'Dark'],
        [390, 'Light'],
      ] as const) {
        await on.setViewportSize({ width, height: 900 });
        await on.getByRole('radio', { name: theme }).check({ force: true });
        await expect.poll(() => sidewaysScroll(on)).toBeLessThanOrEqual(0);
        expect(await findings(on), `${width} ${theme}`).toEqual([]);
        await picture(on, `week-${width}-${theme}`);
      }
      await on.getByRole('button', { name: 'Plan a new week' }).click();
      await on.getByRole('radio', { name: 'three' }).check({ force: true });
      await expect.poll(() => sidewaysScroll(on)).toBeLessThanOrEqual(0);
      expect(await findings(on)).toEqual([]);
      await picture(on, 'week-again-390');
      await on.getByRole('button', { name: 'Keep the plan there is' }).click();
      await on.setViewportSize({ width: 1440, height: 900 });
    },
    LONG,
  );

  it(
    'gives way to the Rules mode while a round is open',
    async () => {
      const on = await openApp({ path: '/#/record' });
      await on
        .getByRole('button', { name: /^Start/ })
        .first()
        .click();
      await on.getByText('Rules mode').first().waitFor();
      await on.goto('/#/week');
      await on.getByTestId('rules-mode').waitFor();
      expect(await on.getByTestId('week-answer').count()).toBe(0);
      expect(pageProblems(on)).toEqual([]);
      await on.close();
    },
    LONG,
  );
});
