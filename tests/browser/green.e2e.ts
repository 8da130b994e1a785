/**
 * The whole green in a real browser, by pointer and by keyboard, over the production build. Here: that the sentence follows
 * distance and green, that the page tells the engine's figures for the place it names, that work stops, goes on and is
 * kept, that the picture shows it. Colours looked for: the bluish green of Okabe & Ito (2008) in the map's darker ink.
 */
import type { Page } from 'playwright';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import {
  clockToBearing,
  emptyGreenMap,
  feetToMetres,
  type Putt,
  planeSurface,
  playPlaces,
  prepareNextPutts,
} from '../../sim/index.ts';
import { DEFAULT_PLAYER } from '../../src/state/settings.ts';
import { goTo, handle, middleOf, openApp, type PageOptions, pageProblems } from '../support/browser.ts';
import { soundAtBothWidths } from '../support/findings.ts';
import { pixelsOfColour } from '../support/pixels.ts';
import { sized } from '../support/size.ts';

const GREEN_INK = '#00795a';
/** A green's table and map on a busy two-core machine, ms. */
const PATIENCE = 200_000;
const LONG = 400_000;

let page: Page | undefined;
afterEach(async () => {
  const problems = page ? [...pageProblems(page)] : [];
  await page?.close();
  page = undefined;
  expect(problems).toEqual([]);
});

const soon = <Value>(ask: () => Value | Promise<Value>) => expect.poll(ask, { timeout: PATIENCE });
const answer = (on: Page): Promise<string> => on.getByTestId('side-answer').innerText();
const place = (on: Page): Promise<string> => on.getByTestId('place').innerText();
const finished = (on: Page): Promise<void> =>
  on.getByText('The map is finished.').waitFor({ timeout: PATIENCE });
const answered = (on: Page): Promise<unknown> =>
  on.waitForFunction(
    () =>
      document.querySelector('[data-testid=side-answer].stale') === null &&
      /^From /.test(document.querySelector<HTMLElement>('[data-testid=side-answer]')?.innerText ?? ''),
    undefined,
    { timeout: PATIENCE },
  );

/** A map of a made-up green is refined for half a minute; one of a plane is waited for in any case. */
const TO_THE_END = sized(false, true);

const open = async (options: PageOptions = {}): Promise<Page> => {
  const opened = await openApp({ width: 1440, height: 900, path: '/#/green', ...options });
  page = opened;
  await opened.locator('[data-testid=green-map] canvas').waitFor();
  await answered(opened);
  return opened;
};

/** One finished page at 1440 px for the tests that leave it as they found it. */
let shared: Page | undefined;
const common = async (): Promise<Page> => {
  if (shared === undefined) {
    shared = await open();
    await finished(shared);
  }
  page = undefined;
  return shared;
};
afterAll(async () => {
  const problems = shared ? [...pageProblems(shared)] : [];
  await shared?.close();
  expect(problems).toEqual([]);
});

describe('the answer', () => {
  it(
    'is one sentence with distance, both places, putts and what the side is worth; margin and table follow',
    async () => {
      const on = await common();
      expect(await answer(on)).toMatch(
        /^From 15 ft(, leave it [a-z ]+: \d\.\d\d putts from [\d:]+( or [\d:]+)? against \d\.\d\d from [\d:]+( or [\d:]+)?, worth \d\.\d\d putts| it turns on your errors: leave it .* if you .*, .* if you .*; .* would tell)\.$/,
      );
      expect(await on.getByTestId('side-family').innerText()).toMatch(
        /^(That holds for|For the middle one,|That is for)/,
      );
      expect(await on.getByTestId('side-margin').innerText()).toMatch(
        /worth \d\.\d\d putts a foot slower, \d\.\d\d putts a foot faster/,
      );
      expect(await on.locator('[data-testid=sides] tbody tr').count()).toBeGreaterThanOrEqual(12);
      expect(await on.getByText('Rule 4.3a').isVisible()).toBe(true);
    },
    LONG,
  );

  it(
    'tells for each place what the engine finds when it plays that very place',
    async () => {
      const on = await common();
      const hole = { x: 0, y: 0 };
      const downhill = -Math.PI / 2;
      const putt: Putt = {
        surface: planeSurface({ slope: 0.02, downhill }),
        greenSpeed: feetToMetres(10),
        ball: { x: 1, y: 0 },
        hole,
        capture: 'rim',
        skid: false,
      };
      const player = DEFAULT_PLAYER;
      const table = prepareNextPutts(putt, player);
      const playedAt = (feet: number, clock: number) => {
        const bearing = clockToBearing(clock, downhill);
        const far = feetToMetres(feet);
        const origin = { x: far * Math.cos(bearing), y: far * Math.sin(bearing) };
        const map = { ...emptyGreenMap(putt), origin };
        const played = playPlaces({ putt, player, table }, map, Int32Array.of(0));
        return { expected: played.expected[0], one: played.one[0] };
      };
      // A map tells what lies between its nodes to about 0.01 putts (tests/src/green/accuracy.test.ts); half a unit of rounding.
      const close = 0.016;
      for (const hour of [12, 1, 3, 6]) {
        const cells = await on
          .locator('[data-testid=sides] tbody tr', { hasText: `${hour}:00` })
          .filter({ has: on.locator('.hour', { hasText: new RegExp(`^${hour}:00$`) }) })
          .locator('td')
          .allInnerTexts();
        const { expected, one } = playedAt(15, hour % 12);
        expect(Math.abs(Number(cells[0]) - expected)).toBeLessThan(close);
        expect(Math.abs(Number.parseFloat(cells[2]) / 100 - one)).toBeLessThan(close);
      }
      const ball = playedAt(12, 4);
      expect(await place(on)).toMatch(/^12 ft at 4:00, below the hole to the right: /);
      expect(Math.abs(Number(/(\d\.\d\d) putts/.exec(await place(on))?.[1]) - ball.expected)).toBeLessThan(
        close,
      );
    },
    LONG,
  );

  it(
    'follows the distance, by keyboard and by pointer, without a new map',
    async () => {
      const on = await common();
      const slider = on.locator('#distance');
      const before = await answer(on);
      await slider.focus();
      for (let press = 0; press < 5; press++) await on.keyboard.press('ArrowRight');
      await soon(() => answer(on)).toMatch(/^From 20 ft/);
      expect(await answer(on)).not.toBe(before);
      expect(await on.getByTestId('work').count()).toBe(0);
      const box = await slider.boundingBox();
      if (box === null) throw new Error('no slider');
      await on.mouse.click(box.x + box.width - 12, box.y + box.height / 2);
      await soon(() => answer(on)).toMatch(/^From (39|40) ft/);
      await slider.fill('15');
      await soon(() => answer(on)).toBe(before);
    },
    LONG,
  );

  it(
    'speaks metric when asked',
    async () => {
      const on = await common();
      await on.getByLabel('m, cm').check();
      await soon(() => answer(on)).toMatch(/^From 4\.57 m/);
      expect(await place(on)).toMatch(/^3\.66 m .* \d+ cm past\.$/);
      await on.getByLabel('ft, in').check();
      await soon(() => answer(on)).toMatch(/^From 15 ft/);
    },
    LONG,
  );
});

describe('a place', () => {
  it(
    'tells its numbers when tapped, when the ball is dragged there, and by arrow keys',
    async () => {
      const on = await common();
      const told = new Set([await place(on)]);
      const fresh = async (): Promise<void> => {
        await soon(async () => told.has(await place(on))).toBe(false);
        expect(await place(on)).toMatch(
          /ft at [\d:]+, .*: \d\.\d\d putts; \d+(\.\d)?% holed, .*% three putts or more; .* past\.$/,
        );
        told.add(await place(on));
      };
      const map = await on.getByTestId('green-map').boundingBox();
      if (map === null) throw new Error('no map');
      await on.mouse.click(map.x + map.width * 0.3, map.y + map.height * 0.3);
      await fresh();
      expect(await place(on)).toMatch(/above the hole to the left|to the left/);
      const ball = await middleOf(handle(on, 'ball'));
      await on.mouse.move(ball.x, ball.y);
      await on.mouse.down();
      await on.mouse.move(ball.x + 60, ball.y + 120, { steps: 4 });
      await on.mouse.up();
      await fresh();
      await handle(on, 'ball').focus();
      await on.keyboard.press('ArrowDown');
      await fresh();
      await on.keyboard.press('Shift+ArrowLeft');
      await fresh();
      // For readers: on the handle, and said once it rests.
      const described = await handle(on, 'ball').getAttribute('aria-describedby');
      // Each follows by a frame or more: asked together until all say the same.
      await soon(async () => {
        const now = await place(on);
        const handled = await on.locator(`#${described}`).innerText();
        const said = await on.locator('.place [role=status]').innerText();
        return handled === now && said === now;
      }).toBe(true);
    },
    LONG,
  );

  it(
    'is the putt of the deciding screen, and coming back finds the map as it was',
    async () => {
      const on = await common();
      const before = await answer(on);
      await handle(on, 'ball').focus();
      await on.keyboard.press('ArrowDown');
      await soon(() => place(on)).not.toMatch(/^12 ft/);
      const length = /^[\d.]+/.exec(await place(on))?.[0];
      await on.locator('.place').getByRole('link', { name: 'Decide this putt' }).click();
      await soon(() => on.locator('#length').inputValue()).toBe(length);
      await goTo(on, 'Whole green');
      await on.getByTestId('side-answer').waitFor();
      expect(await answer(on)).toBe(before);
      expect(await on.getByTestId('stale').count()).toBe(0);
      await finished(on);
    },
    LONG,
  );
});

describe('the work', () => {
  it(
    'shows how far it is, stops, keeps what there is, and goes on',
    async () => {
      const on = await open();
      await on.getByLabel('Made-up green').check();
      // The table of next putts first: stopped in it, nothing is known yet.
      await soon(() => on.getByTestId('work').innerText()).toMatch(/^Working out the next putts, \d+%$/);
      await on.getByRole('button', { name: 'Stop' }).click();
      await on.getByText('Stopped.').waitFor();
      expect(await on.getByTestId('stale').count()).toBe(1);
      await on.getByRole('button', { name: 'Go on' }).click();
      // Then the map: its first picture is there, stopped half way it stays.
      await soon(() => on.getByTestId('work').innerText()).toMatch(/^Refining the map, \d+%$/);
      await answered(on);
      await on.getByRole('button', { name: 'Stop' }).click();
      await on.getByText('Stopped.').waitFor();
      expect(await on.getByTestId('stale').count()).toBe(0);
      const half = await answer(on);
      await on.waitForTimeout(600);
      expect(await answer(on)).toBe(half);
      await on.getByRole('button', { name: 'Go on' }).click();
      await on.getByTestId('work').waitFor();
      if (TO_THE_END) await finished(on);
      expect(await answer(on)).toMatch(/^From 15 ft/);
      // Another hole by keyboard: the old answer stays and is marked, until the new one is there.
      const before = await answer(on);
      await handle(on, 'hole').focus();
      // Looked at within the page: from here the new answer may come between two looks.
      const marked = on.evaluate(
        () =>
          new Promise<string | undefined>((resolve) => {
            const look = (): void => {
              if (document.querySelector('[data-testid="stale"]') === null) requestAnimationFrame(look);
              else resolve(document.querySelector<HTMLElement>('[data-testid="side-answer"]')?.innerText);
            };
            look();
          }),
      );
      for (let press = 0; press < 4; press++) await on.keyboard.press('ArrowUp');
      expect(await marked).toBe(before);
      await on.getByTestId('stale').waitFor({ state: 'detached', timeout: PATIENCE });
      expect(await answer(on)).toMatch(/^From 15 ft/);
    },
    2 * LONG,
  );

  it(
    'says what is wrong with a green that holds no ball and goes on when it can again',
    async () => {
      const on = await open();
      await on.locator('#green-speed').fill('15');
      await on.locator('#slope').fill('8');
      await on.locator('.side-answer .problem').waitFor();
      expect(await answer(on)).toMatch(/^From 15 ft/);
      await on.locator('#slope').fill('1');
      await on.locator('.side-answer .problem').waitFor({ state: 'detached' });
      await answered(on);
    },
    LONG,
  );
});

describe('the picture', () => {
  it.each([
    ['webgl', 'card'],
    ['canvas', 'none'],
  ] as const)(
    'has isolines in their own ink, drawn by %s',
    async (painter, graphics) => {
      // High enough for the whole map: the answer above it may turn on the player, and is longer then.
      const on = await open({ graphics, width: 900, height: 1600 });
      expect(await on.locator('.scene').getAttribute('data-painter')).toBe(painter);
      const { x, y } = await middleOf(on.getByTestId('green-map'));
      // Below and left of the hole, clear of the mark of the best place above it, which has the same ink.
      // Arcs of dashes 1.9 px wide, softened at their edges: 320 and 420 pixels of them were seen, none without the isolines.
      await soon(() => pixelsOfColour(on, { x: x - 105, y: y + 75, reach: 100 }, GREEN_INK)).toBeGreaterThan(
        100,
      );
    },
    LONG,
  );

  it(
    'is told in words with the places on the ring',
    async () => {
      const on = await common();
      const words = await on.locator('[data-testid=green-map] .scene > .scene-words').first().innerText();
      expect(words).toMatch(
        /lines of equal expected putts.* 15 ft from the hole: best \d\.\d\d .*worst \d\.\d\d /,
      );
    },
    LONG,
  );
});

describe('at 390 and 1440 px', () => {
  it(
    'has no sideways scroll and no finding of axe, light, on a plane',
    async () => {
      const on = await common();
      await on.getByText('What the figures mean').click();
      await soundAtBothWidths(on);
    },
    LONG,
  );

  it(
    'has no sideways scroll and no finding of axe, dark, on a made-up green',
    async () => {
      const on = await common();
      await on.emulateMedia({ colorScheme: 'dark' });
      await soon(() => on.evaluate(() => document.documentElement.dataset.theme)).toBe('dark');
      await on.getByLabel('Made-up green').check();
      await answered(on);
      await soundAtBothWidths(on);
    },
    LONG,
  );
});
