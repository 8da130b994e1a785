/**
 * The review in a real browser over the production build: what a person meets. Figures on the page are counted by hand from rounds
 * written by hand; how they come about is tested in tests/src/review and tests/sim/evidence.
 */
import { readFileSync } from 'node:fs';
import type { Download, Page } from 'playwright';
import { afterEach, describe, expect, it } from 'vitest';
import { openApp, type PageOptions, pageProblems } from '../support/browser.ts';
import { SIDES_IN_UNITS, seriousFindings, sidewaysScroll } from '../support/findings.ts';
import { manyRecords, putRecords } from '../support/reviewRecords.ts';
import { NONE_OF_SIX, NOTHING_DROPPED, roundInFeet } from '../support/roundsByHand.ts';
import { sized } from '../support/size.ts';

/** A busy machine with two cores: pages of charts, and a hundred thousand records put in and read again, ms. */
const LONG = 300_000;
const VERY_LONG = 900_000;

/** The name of a course as someone may type it: it is text, whatever it looks like. */
const COURSE = '<b>Fen</b> & <img src=x onerror="document.title=1">';
const NINE = roundInFeet(NOTHING_DROPPED, {
  id: 'round-nine',
  day: '2026-05-02',
  course: COURSE,
  miss: { side: 'low', reach: 'short' },
  fields: { climb: 'up', breaks: 'leftToRight' },
});
const SIX = roundInFeet(NONE_OF_SIX, {
  id: 'round-six1',
  day: '2026-06-07',
  miss: { side: 'low', reach: 'past' },
  fields: { climb: 'down', breaks: 'rightToLeft' },
});
const BOTH = { rounds: [NINE.round, SIX.round], putts: [...NINE.putts, ...SIX.putts], practice: [] };

let page: Page | undefined;
afterEach(async () => {
  const problems = page ? [...pageProblems(page)] : [];
  await page?.close();
  page = undefined;
  expect(problems).toEqual([]);
});

const open = async (options: PageOptions = {}): Promise<Page> => {
  page = await openApp({ width: 1440, height: 900, path: '/#/review', ...options });
  await page.getByText('Nothing is recorded yet.').waitFor();
  return page;
};
const openWith = async (options: PageOptions = {}): Promise<Page> => {
  const on = await open(options);
  await putRecords(on, BOTH);
  await allDrawn(on);
  return on;
};
/** Every section has its chart. */
const allDrawn = (on: Page): Promise<unknown> =>
  on.waitForFunction(() => document.querySelectorAll('.review .chart > svg').length === 6);
const words = (on: Page, id: string): Promise<string> => on.getByTestId(id).innerText();
const card = (on: Page, id: string) => on.locator(`section[aria-labelledby="${id}-title"]`);
const rowOf = async (on: Page, id: string, name: string): Promise<string[]> => {
  const row = card(on, id)
    .locator('details tbody tr')
    .filter({ has: on.locator(`th:text-is("${name}")`) });
  return row.locator('td').allTextContents();
};

describe('without records', () => {
  it(
    'says so, shows the invented player when asked, names him as invented, and lets him go',
    async () => {
      const on = await open();
      expect(await on.getByRole('link', { name: 'Record a round' }).getAttribute('href')).toBe('#/record');
      await on.getByRole('button', { name: 'Look at the invented player' }).click();
      await allDrawn(on);
      expect(await on.getByRole('complementary', { name: 'Invented records' }).innerText()).toContain(
        'These records are invented',
      );
      expect(await words(on, 'remaining')).toMatch(/^\d+ putts of \d+ pass these filters\.$/);
      await on.getByRole('button', { name: 'Back to your own records' }).click();
      await on.getByText('Nothing is recorded yet.').waitFor();
      await on.getByRole('button', { name: 'Look at the invented player' }).click();
      await on.getByRole('button', { name: 'Remove the invented player' }).click();
      await on.getByText('Nothing is recorded yet.').waitFor();
    },
    LONG,
  );
});

describe('with two rounds', () => {
  it(
    'shows every section with the figures of those rounds, and names of courses as text',
    async () => {
      const on = await openWith();
      // Eighteen putts on the nine, thirty-one on the eighteen.
      expect(await words(on, 'remaining')).toBe('All 49 putts of your record.');
      // 3 to 6 ft: first putts of 5, 3 and 4 ft and a second of 4 ft dropped, a second of 3 ft did not.
      expect((await rowOf(on, 'holed', '3 to 6 ft')).slice(0, 3)).toEqual(['5', '4', '80%']);
      // Of 27 holes one in three putts, from 27 ft.
      expect(await words(on, 'three-putt-answer')).toMatch(/^You three-putt 3\.7% of greens \(.*, 1 of 27\)/);
      expect((await rowOf(on, 'three-putts', '20 to 30 ft')).slice(0, 2)).toEqual(['3', '1']);
      // 22 misses, every one low; 9 short and 13 past.
      expect(await words(on, 'misses-answer')).toMatch(
        /^Half of your misses finish within 24 in .*; they lean low\.$/,
      );
      expect(await card(on, 'misses').innerText()).toContain('22 of 22 misses low');
      expect(await card(on, 'misses').innerText()).toContain('13 of 22 misses past');
      expect(await words(on, 'gained-answer')).toContain('against the benchmark, Tour record (published)');
      expect(await words(on, 'rounds')).toContain('31 putts on 18 holes');
      expect(await words(on, 'rounds')).toContain('18 putts on 9 holes');
      expect(await words(on, 'rounds')).toContain(COURSE);
      expect(await on.locator('.review b, .review img').count()).toBe(0);
      expect(await on.title()).toBe('Borrow: your putting, reviewed');
      expect(await words(on, 'trend-answer')).toMatch(/^Better or worse\? Your record cannot tell: /);
      expect(await card(on, 'trend').innerText()).toContain('So few rounds could not show any change.');
    },
    LONG,
  );

  it(
    'refuses to conclude from six putts, and explains the nine on which nothing dropped',
    async () => {
      const on = await openWith();
      const bands = await words(on, 'bands');
      expect(bands).toMatch(
        /You holed 0 of 6 from 12 to 20 ft; a player like you holes none in such a set \d+% of the time\.\s+6 putts: fewer than 12, nothing to conclude\./,
      );
      expect(bands).toMatch(/more such putts, some \d+ rounds\./);
      expect(await words(on, 'round-answer')).not.toMatch(/unusual/);
      expect(await words(on, 'evidence')).toContain('What dropped is no evidence of a fault, nor of none');
      expect(await words(on, 'practise')).toMatch(
        /evidence does not carry|This round alone would not carry it/,
      );
      // By keyboard: from the list of rounds to the check of the nine.
      await on.getByRole('button', { name: /^Check this round ?, May 2, 2026$/ }).focus();
      await on.keyboard.press('Enter');
      await expect
        .poll(() => words(on, 'round-answer'))
        .toMatch(/^Nothing longer than 3 ft dropped, and yet you gained \d\.\d strokes/);
      expect(await on.locator('#review-round').inputValue()).toBe('round-nine');
      expect(await on.evaluate(() => document.activeElement?.id)).toBe('review-round');
      const explained = await words(on, 'explained');
      expect(explained).toContain('half of the 9 holes began beyond 42 ft');
      expect(explained).toContain('Of your 9 putts longer than a tap-in');
      expect(explained).toContain('you did not once');
      await on.getByRole('button', { name: 'Later' }).click();
      await expect.poll(() => on.getByTestId('explained').count()).toBe(0);
    },
    LONG,
  );

  it(
    'filters by keyboard, names another benchmark wherever its numbers are, and speaks metres',
    async () => {
      const on = await openWith();
      await on.getByLabel('all', { exact: true }).focus();
      await on.keyboard.press('Tab');
      await on.keyboard.press('Tab');
      // Slope, after dates and kind: any, uphill.
      await on.keyboard.press('ArrowRight');
      await expect.poll(() => words(on, 'remaining')).toBe('18 putts of 49 pass these filters.');
      expect(await words(on, 'holed-answer')).toContain('18 putts');
      // The round check asks the whole record.
      expect(await words(on, 'bands')).toContain('0 of 6 from 12 to 20 ft');
      await on.getByRole('button', { name: 'No filters' }).click();
      await on.getByLabel('chosen', { exact: true }).check();
      await on.getByLabel('From', { exact: true }).fill('2026-06-01');
      await expect.poll(() => words(on, 'remaining')).toBe('31 putts of 49 pass these filters.');
      await on.getByLabel('Benchmark', { exact: true }).selectOption({ label: 'Averaging 90 (modelled)' });
      for (const id of ['three-putt-answer', 'gained-answer', 'rounds', 'trend-answer'])
        await expect.poll(() => words(on, id)).toMatch(/Averaging 90 \(modelled\)|nothing to compare/);
      expect(await on.locator('main').innerText()).not.toMatch(/the benchmark, Tour/);
      await on.getByLabel('m, cm').check();
      await expect.poll(() => words(on, 'bands')).toContain('from 4 to 6 m');
      expect(await words(on, 'bands')).not.toMatch(/\d ft/);
      await on.reload();
      await allDrawn(on);
      expect(await on.locator('#review-benchmark').inputValue()).toBe('averaging-90-modelled');
    },
    LONG,
  );

  it(
    'gives every chart away as a picture and as a table',
    async () => {
      const on = await openWith();
      const saved = async (name: string, id: string): Promise<Download> => {
        const [download] = await Promise.all([
          on.waitForEvent('download'),
          card(on, id).getByRole('button', { name }).click(),
        ]);
        return download;
      };
      for (const id of ['holed', 'three-putts', 'misses', 'gained', 'round', 'trend']) {
        // Chromium drops the eleventh file that a page saves within a second, without a word. No person is that fast.
        await on.waitForTimeout(300);
        const picture = await saved('Save as a picture', id);
        expect(picture.suggestedFilename()).toMatch(/^borrow-[a-z-]+\.png$/);
        // What every PNG begins with (PNG specification, 5.2).
        expect([...readFileSync(await picture.path()).subarray(0, 8)]).toEqual([
          137, 80, 78, 71, 13, 10, 26, 10,
        ]);
        const table = await saved('Save as a table (CSV)', id);
        expect(table.suggestedFilename()).toMatch(/^borrow-[a-z-]+\.csv$/);
        const shown = await card(on, id).locator('details tbody tr').count();
        const lines = readFileSync(await table.path(), 'utf8')
          .trim()
          .split('\r\n');
        expect(lines.length).toBe(shown + 1);
      }
    },
    LONG,
  );
});

describe('the page', () => {
  it.each(SIDES_IN_UNITS)(
    'at %i px, %s, in %s: nothing serious for axe, no sideways scroll, filters folded on a phone',
    async (width, colorScheme, unit) => {
      const on = await openWith({ width, height: 900, colorScheme });
      await on.getByLabel(unit).check();
      const filters = on.locator('.review-filters');
      expect(await filters.getAttribute('open')).toBe(width === 390 ? null : '');
      if (width === 390) await filters.locator('summary').click();
      // Everything that can be opened is open when it is looked at.
      await on.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      await allDrawn(on);
      expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      expect(await seriousFindings(on)).toEqual([]);
    },
    LONG,
  );
});

/** Rounds of some thirty putts. */
const MANY_ROUNDS = sized(320, 3200);

describe(`${MANY_ROUNDS} rounds of putts`, () => {
  it(
    'are reviewed, in pages, and answer a filter',
    async () => {
      const on = await open();
      const many = manyRecords(MANY_ROUNDS, 'a hundred thousand');
      const count = many.putts.length;
      expect(count).toBeGreaterThan(29 * MANY_ROUNDS);
      await putRecords(on, many);
      await on.waitForFunction(
        () => document.querySelectorAll('.review .chart > svg').length === 6,
        undefined,
        {
          timeout: VERY_LONG / 2,
        },
      );
      expect(await words(on, 'remaining')).toMatch(
        new RegExp(`^${count.toLocaleString('en-US')} putts of [\\d,]+ pass these filters\\.$`),
      );
      expect(await card(on, 'rounds').innerText()).toContain(
        `Rounds 1 to 6 of ${MANY_ROUNDS.toLocaleString('en-US')}`,
      );
      // Long lists come in pages: the page stays small.
      expect(await on.evaluate(() => document.querySelectorAll('*').length)).toBeLessThan(6000);
      await on.getByLabel('uphill').check();
      await expect
        .poll(() => words(on, 'remaining'), { timeout: LONG })
        .not.toContain(count.toLocaleString('en-US'));
    },
    VERY_LONG,
  );
});
