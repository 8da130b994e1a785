/**
 * Recording in a real browser: what a player taps on the course, and the Rules mode while a round is open. What is lost and what
 * is not: nothing-lost.e2e.ts. Long, because what a player meets on one screen is told in one place.
 */
import type { Locator, Page } from 'playwright';
import { afterEach, describe, expect, it } from 'vitest';
import { type PageOptions, pageProblems } from '../support/browser.ts';
import { SIDES, seriousFindings, sidewaysScroll } from '../support/findings.ts';
import { holeWords, openRecord, pick, putts, recordHole, startRound } from '../support/recording.ts';

let page: Page | undefined;
afterEach(async () => {
  await page?.close();
});

const open = async (options: PageOptions = {}): Promise<Page> => {
  page = await openRecord(options);
  return page;
};
const button = (on: Page, name: string | RegExp): Locator => on.getByRole('button', { name, exact: true });
const hole = (on: Page): Promise<string> => on.getByRole('heading', { level: 1 }).innerText();
/** Counts what a finger does, in the page itself. */
const countTaps = (on: Page): Promise<void> =>
  on.evaluate(() => {
    const counted = window as unknown as { taps: number };
    counted.taps = 0;
    addEventListener('click', () => (counted.taps += 1), true);
  });
const taps = (on: Page): Promise<number> => on.evaluate(() => (window as unknown as { taps: number }).taps);

/** Targets of the question that is asked which are lower or narrower than so many CSS pixels. */
const tooSmall = (on: Page, least: number): Promise<string[]> =>
  on.locator('.rec-pad button, .rec-strip button, .rec-apart button').evaluateAll(
    (all, size) =>
      all
        .map((one) => ({ box: one.getBoundingClientRect(), name: one.textContent ?? '' }))
        .filter(({ box }) => box.height < size - 0.5 || box.width < size - 0.5)
        .map(({ box, name }) => `${name}: ${box.width} x ${box.height}`),
    least,
  );

/** Advice is on the page; a cold engine on a busy machine may take this long for its first answer, ms. */
const advice = (on: Page): Promise<void> =>
  expect.poll(() => on.locator('main').innerText(), { timeout: 120_000 }).toMatch(ADVICE);

describe('a hole on the course', () => {
  it('takes six taps by touch for a miss and a tap-in, four for a holed putt, each shown as saved', async () => {
    const on = await open({ width: 390, height: 844, touch: true });
    await button(on, 'Start 18 holes').tap();
    await on.getByText('Putt 1: How far').waitFor();
    await countTaps(on);
    await button(on, '12 ft').tap();
    await button(on, 'uphill').tap();
    await button(on, 'left to right').tap();
    await button(on, 'Missed low, past').tap();
    await button(on, '2 ft').tap();
    await on.locator('[data-putt] [data-testid=saved]').waitFor();
    await button(on, 'Holed the next').tap();
    await on.getByRole('heading', { name: 'Hole 2' }).waitFor();
    expect(await taps(on)).toBe(6);
    expect(await on.getByRole('status').first().innerText()).toMatch(/Hole 1, putt 2:\s+saved/);
    expect(await holeWords(on, 1)).toBe('Hole 1: 2 putts');

    await button(on, '5 ft').tap();
    await button(on, 'level').tap();
    await button(on, 'straight').tap();
    await button(on, 'Holed').tap();
    await on.getByRole('heading', { name: 'Hole 3' }).waitFor();
    expect(await taps(on)).toBe(10);
    expect(pageProblems(on)).toEqual([]);
  });

  it('takes two more taps for another miss', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await pick(on, '30 ft', 'downhill', 'right to left', 'Missed high, short', '6 ft');
    await countTaps(on);
    await pick(on, 'Missed past', '12 in');
    await on.getByText('Putt 3:').waitFor();
    expect(await taps(on)).toBe(2);
    await pick(on, 'Holed the next');
    await expect.poll(() => holeWords(on, 1)).toBe('Hole 1: 3 putts');
  });

  it('keeps every target of every question at 48 px or more, and the main one at 56, at 390 and 360 px', async () => {
    for (const [width, height] of [
      [390, 844],
      [360, 640],
    ] as const) {
      // Asked again until it holds: a question just answered is still leaving, and has no size then.
      const on = await open({ width, height });
      await startRound(on);
      await expect.poll(() => tooSmall(on, 48)).toEqual([]);
      // All that a usual hole takes lies on the screen without scrolling.
      const main = await on.locator('.rec-bar > .main').boundingBox();
      expect(main?.height).toBeGreaterThanOrEqual(56);
      expect((main?.y ?? 0) + (main?.height ?? 0)).toBeLessThanOrEqual(height);
      await pick(on, '12 ft', 'uphill', 'left to right');
      await expect.poll(() => tooSmall(on, 48)).toEqual([]);
      await pick(on, 'Missed low, past');
      await expect.poll(() => tooSmall(on, 48)).toEqual([]);
      await pick(on, '2 ft');
      await expect.poll(() => tooSmall(on, 48)).toEqual([]);
      await on.close();
    }
  });

  it('is recorded by keyboard alone', async () => {
    const on = await open();
    await button(on, 'Start 9 holes').focus();
    await on.keyboard.press('Enter');
    await on.getByText('Putt 1: How far').waitFor();
    const press = async (name: string): Promise<void> => {
      for (let step = 0; step < 60; step += 1) {
        await on.keyboard.press('Tab');
        const now = await on.evaluate(
          () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent,
        );
        if (now === name) return on.keyboard.press('Enter');
      }
      throw new Error(`no ${name} by Tab`);
    };
    for (const name of ['10 ft', 'downhill', 'right to left', 'Missed low, short', '18 in'])
      await press(name);
    await on.getByText('Putt 2:').waitFor();
    // The pressed button is gone: the focus is on the new question, not at the top of the page.
    expect(await on.evaluate(() => document.activeElement?.id)).toBe('rec-question');
    await press('Holed the next');
    await on.getByRole('heading', { name: 'Hole 2' }).waitFor();
    await on.locator('[data-hole="1"]').click();
    expect(await putts(on)).toEqual([
      '1. 10 ft downhill, right to left: missed low, short, 18 in left saved',
      '2. 18 in: holed saved',
    ]);
  });

  it('takes distances between and beyond the usual ones by small steps, in the units of the person', async () => {
    const on = await open({ width: 390, height: 844 });
    await on.getByLabel('m, cm').check();
    await startRound(on);
    await pick(on, '3 m');
    for (let step = 0; step < 2; step += 1) await button(on, 'How far is it?: a little more').click();
    expect(await on.locator('.rec-length').innerText()).toBe('3.2 m');
    await pick(on, '18 m');
    for (let step = 0; step < 3; step += 1) await button(on, 'How far is it?: a little more').click();
    expect(await on.locator('.rec-length').innerText()).toBe('21 m');
    await pick(on, 'level', 'straight', 'Missed left, short');
    await button(on, 'How much is left?: a little more').click();
    await button(on, 'How much is left?: a little more').click();
    await pick(on, '55 cm left');
    await expect
      .poll(() => putts(on))
      .toEqual(['1. 21 m level, straight: missed left, short, 55 cm left saved']);
  });

  it('writes down conceded putts, putts from off the green and holes without a putt, and says they stay out', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await pick(on, 'No putt on this hole');
    await on.getByRole('heading', { name: 'Hole 2' }).waitFor();
    expect(await holeWords(on, 1)).toBe('Hole 1: no putt');
    await on.getByText('What are these?').click();
    expect(await on.locator('.rec-why').innerText()).toContain(
      'stay out of what the review says of your putting',
    );
    await pick(
      on,
      'From off the green',
      '40 ft',
      'uphill',
      'straight',
      'Missed on line, short',
      '3 ft',
      'Conceded',
    );
    await on.getByRole('heading', { name: 'Hole 3' }).waitFor();
    await on.locator('[data-hole="2"]').click();
    expect(await putts(on)).toEqual([
      '1. 40 ft uphill, straight: missed from off the green on line, short, 3 ft left saved',
      '2. 3 ft: conceded saved',
    ]);
    // The stroke from off the green is no putt.
    expect(await holeWords(on, 2)).toBe('Hole 2: 1 putt');
  });

  it('keeps the optional words, and remembers that they stand open', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await pick(on, '8 ft', 'level', 'straight');
    await on.getByText('More about this putt').click();
    await pick(on, 'steep', 'die it in');
    await on.getByRole('group', { name: 'Started as meant?' }).getByRole('button', { name: 'no' }).click();
    await pick(on, 'Missed left, past', '12 in');
    await on.getByTestId('saved').first().waitFor();
    await on.reload();
    await on.locator('.rec-more').waitFor();
    expect(await on.locator('.rec-more').evaluate((one: HTMLDetailsElement) => one.open)).toBe(true);
    await on.getByRole('button', { name: /^Correct putt 1/ }).click();
    expect(await on.locator('.rec-more [aria-pressed=true]').allInnerTexts()).toEqual([
      'steep',
      'die it in',
      'no',
    ]);
  });
});

describe('mending', () => {
  it('takes the last saved putt back with its values, and saves it anew', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await pick(on, '12 ft', 'uphill', 'left to right', 'Holed');
    await on.getByRole('heading', { name: 'Hole 2' }).waitFor();
    await pick(on, 'Undo hole 1, putt 1');
    await on.getByRole('heading', { name: 'Hole 1' }).waitFor();
    expect(await on.locator('.rec-said').allInnerTexts()).toEqual([
      expect.stringMatching(/The putt\s+12 ft, uphill, left to right/),
      expect.stringMatching(/Where it went\s+holed/),
    ]);
    expect(await holeWords(on, 1)).toBe('Hole 1: nothing yet');
    await on.locator('[data-ask="Where it went"]').click();
    await pick(on, 'Missed high, past', '3 ft', 'Save', 'Holed the next');
    await on.getByRole('heading', { name: 'Hole 2' }).waitFor();
    expect(await holeWords(on, 1)).toBe('Hole 1: 2 putts');
  });

  it('goes back one question without losing what was tapped before', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await pick(on, '12 ft', 'uphill', 'left to right', 'Missed low, past', 'Back', 'Back', 'downhill');
    expect(await on.locator('.rec-asked').innerText()).toBe('12 ft downhill, left to right');
  });

  it('corrects an earlier hole, warns of putts that go, and goes on where the round was', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await recordHole(on);
    await recordHole(on);
    await on.getByRole('heading', { name: 'Hole 3' }).waitFor();
    await on.locator('[data-hole="1"]').click();
    await on.getByRole('button', { name: /^Correct putt 1/ }).click();
    await on.locator('[data-ask="The putt"]').click();
    await pick(on, '16 ft');
    await on.locator('[data-ask="Where it went"]').click();
    await pick(on, 'Holed');
    expect(await on.locator('.rec-pad .problem').innerText()).toContain('1 putt after it is taken out');
    await pick(on, 'Save');
    await on.getByRole('heading', { name: 'Hole 3' }).waitFor();
    await on.locator('[data-hole="1"]').click();
    expect(await putts(on)).toEqual(['1. 16 ft uphill, left to right: holed saved']);
  });

  it('goes on after a reload with what was tapped, on the hole that was being played', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await recordHole(on);
    await pick(on, '9 ft', 'downhill');
    await on.reload();
    await on.getByText('Putt 1:').waitFor();
    expect(await hole(on)).toBe('Hole 2');
    expect(await on.locator('[aria-pressed=true]').allInnerTexts()).toEqual(['9 ft', 'downhill']);
    await pick(on, 'straight', 'Holed');
    await on.getByRole('heading', { name: 'Hole 3' }).waitFor();
  });

  it('asks about a round left open on another day', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await recordHole(on);
    await on.addInitScript(() => {
      const now = Date.now.bind(Date);
      Date.now = () => now() + 26 * 3_600_000;
    });
    await on.reload();
    expect(await on.getByTestId('forgotten').innerText()).toMatch(
      /2 putts on 1 hole of 18\. Go on with it, or end it\?/,
    );
    await pick(on, 'Go on with it');
    expect(await hole(on)).toBe('Hole 2');
  });

  it('ends a round after one question, counts it, lists it, and deletes it after another', async () => {
    const on = await open({ width: 390, height: 844 });
    await on.getByText('Course, green speed').click();
    await on.getByLabel('Course', { exact: true }).fill('Home');
    await on.getByLabel(/^Green speed/).fill('10.5');
    await pick(on, 'Start 9 holes');
    await recordHole(on);
    await pick(on, 'End the round', 'Not yet');
    expect(await hole(on)).toBe('Hole 2');
    await pick(on, 'End the round', 'Yes, end it');
    await expect
      .poll(() => on.getByTestId('ended').innerText())
      .toBe('Round ended: 2 putts on 1 hole. Review it at home.');
    expect(await on.getByRole('link', { name: 'Review it at home.' }).getAttribute('href')).toBe('#/review');
    const rounds = on.getByTestId('rounds');
    await expect.poll(() => rounds.innerText()).toMatch(/Home, .*\s+2 putts on 1 hole of 9/);
    await rounds.getByRole('button', { name: /^Delete/ }).click();
    await rounds.getByRole('button', { name: 'Keep' }).click();
    await rounds.getByRole('button', { name: /^Delete/ }).click();
    await rounds.getByRole('button', { name: 'Delete', exact: true }).click();
    await rounds.getByText('None yet.').waitFor();
  });

  it('lays the main buttons under the thumb of the hand that is chosen, and remembers it', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    const centre = async (): Promise<number> => {
      const box = await on.locator('.rec-bar > .main').boundingBox();
      return (box?.x ?? 0) + (box?.width ?? 0) / 2;
    };
    const steps = async (): Promise<number> => (await on.locator('.rec-steps').boundingBox())?.x ?? 0;
    expect(await centre()).toBeGreaterThan(195);
    expect(await steps()).toBeGreaterThan(195);
    await on.getByRole('group', { name: 'Thumb' }).getByLabel('left').check();
    expect(await centre()).toBeLessThan(195);
    expect(await steps()).toBeLessThan(195);
    await on.reload();
    await on.getByText('Putt 1:').waitFor();
    expect(await centre()).toBeLessThan(195);
  });
});

describe('practice', () => {
  it('keeps a set without typing, lists it and deletes it', async () => {
    const on = await open({ width: 390, height: 844 });
    const practice = on.getByTestId('practice');
    await practice.getByText('Enter a practice set').click();
    await pick(on, '6 ft', 'Putts: 10 more', 'Holed: 5 more', 'Holed: 5 more', 'Holed: 1 more', 'carpet');
    await practice.getByText('More about these putts').click();
    await pick(on, 'Missed low: 1 more', 'Missed past: 1 more', 'level', 'Save the set');
    await expect
      .poll(() => on.getByTestId('practice-list').innerText())
      .toMatch(/11 of 20 from 6 ft, carpet[\s\S]*saved/);
    await on.reload();
    const list = on.getByTestId('practice-list');
    await expect.poll(() => list.innerText()).toContain('11 of 20 from 6 ft, carpet');
    await list.getByRole('button', { name: /^Delete/ }).click();
    await list.getByRole('button', { name: 'Delete', exact: true }).click();
    await expect.poll(() => list.innerText()).toBe('');
    expect(pageProblems(on)).toEqual([]);
  });
});

/** Words that would be advice or analysis: an aim, a slope or speed with a figure, odds. */
const ADVICE = /\d%|putts? better|past the hole|aim|holed \d|expected putts|Die it in here|Firm it in/i;

describe('the Rules mode', () => {
  it.each(['/', '/green', '/read', '/review', '/nowhere'])(
    'shows no advice at %s while a round is open, by address and over a reload, and lifts when the round ends',
    async (route) => {
      const on = await open({ width: 390, height: 844 });
      await startRound(on);
      await recordHole(on);
      // Whatever is shown from here on is kept, the first picture too.
      await on.addInitScript(() => {
        const seen: string[] = [];
        Object.assign(window, { seen });
        new MutationObserver(() => {
          const main = document.querySelector('main');
          if (main) seen.push(main.innerText);
        }).observe(document, { childList: true, subtree: true, characterData: true });
      });
      const base = on.url().replace(/#.*/, '');
      await on.goto('about:blank');
      await on.goto(`${base}#${route}`);
      await on.getByTestId('rules-mode').waitFor();
      await button(on, 'End the round').waitFor();
      await on.waitForLoadState('networkidle');
      const seen = await on.evaluate(() => (window as unknown as { seen: string[] }).seen);
      expect(seen.length).toBeGreaterThan(0);
      for (const words of seen) {
        expect(words).not.toMatch(ADVICE);
        expect(words).toContain('Rule 4.3a');
      }
      expect(await on.title()).toBe('Borrow: a round is open');
      expect(await on.getByRole('navigation', { name: 'Screens' }).innerText()).toContain(
        'Rules mode: a round is open',
      );
      await on.getByRole('link', { name: 'Back to the round' }).click();
      expect(await hole(on)).toBe('Hole 2');
      await on.goto(`${base}#${route}`);
      await pick(on, 'End the round', 'Yes, end it');
      await on.getByTestId('rules-mode').waitFor({ state: 'detached' });
      if (route === '/') await advice(on);
    },
  );

  it('stays where the records of an open round cannot be read, until the person says that it is over', async () => {
    const on = await open({ width: 390, height: 844 });
    await startRound(on);
    await on.addInitScript(() => {
      Object.defineProperty(window, 'indexedDB', { value: undefined });
    });
    const base = on.url().replace(/#.*/, '');
    await on.goto('about:blank');
    await on.goto(`${base}#/`);
    await expect
      .poll(() => on.getByTestId('rules-mode').innerText())
      .toContain('A round was open when your records could last be read');
    expect(await on.locator('main').innerText()).not.toMatch(ADVICE);
    await pick(on, 'My round is over');
    await advice(on);
  });

  it('reaches a second tab that is showing advice, and leaves it when the round ends in the first', async () => {
    const on = await open();
    const other = await on.context().newPage();
    await other.goto('/#/');
    await advice(other);
    await startRound(on);
    await other.getByTestId('rules-mode').waitFor();
    expect(await other.locator('main').innerText()).not.toMatch(ADVICE);
    // One round at a time: the second tab records into the same one.
    await other.goto('/#/record');
    await other.getByRole('heading', { name: 'Hole 1' }).waitFor();
    await other.goto('/#/');
    await pick(on, 'End the round', 'Yes, end it');
    await advice(other);
  });
});

describe('the page', () => {
  it.each([[360, 640, 'light'] as const, ...SIDES.map(([width, theme]) => [width, 844, theme] as const)])(
    'has no sideways scroll and nothing serious for axe at %i x %i px, %s',
    async (width, height, colorScheme) => {
      const on = await open({ width, height, colorScheme });
      const check = async (): Promise<void> => {
        expect(await seriousFindings(on)).toEqual([]);
        expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      };
      await on.getByText('Enter a practice set').click();
      await on.getByText('More about these putts').click();
      await check();
      await startRound(on);
      await check();
      await pick(on, '12 ft', 'uphill', 'left to right');
      await on.getByText('More about this putt').click();
      await check();
      await pick(on, 'Missed low, past');
      await check();
      await pick(on, '2 ft');
      await on.getByText('Putt 2:').waitFor();
      await check();
      await on.getByRole('button', { name: /^Correct putt 1/ }).click();
      await check();
      await pick(on, 'End the round');
      await check();
      await on.goto('/#/green');
      await on.getByTestId('rules-mode').waitFor();
      await check();
    },
  );
});
