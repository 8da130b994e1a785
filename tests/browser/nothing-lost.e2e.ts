/**
 * What is shown as saved is there afterwards: the page and the whole browser killed while recording, two tabs at once, full and
 * blocked storage, a database of a newer version, clocks and time zones that change, names that are markup.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright';
import { afterEach, describe, expect, inject, it } from 'vitest';
import type { RecordedPutt, RecordedRound } from '../../sim/index.ts';
import { puttSchema, roundSchema } from '../../src/store/recordSchema.ts';
import { puttWords } from '../../src/text/record.ts';
import { launchOptions, openApp, pageProblems } from '../support/browser.ts';
import { type OnDevice, readDevice } from '../support/onDevice.ts';
import { holeWords, openRecord, pick, putts, recordHole, startRound } from '../support/recording.ts';
import { sized } from '../support/size.ts';
import { type Shown, startTapping, stopTapping, watchShown } from '../support/tapper.ts';

let page: Page | undefined;
afterEach(async () => {
  await page?.close();
  page = undefined;
});

const TAB_KILLS = sized(25, 200);
const BROWSER_KILLS = sized(3, 10);

/** Small linear congruence (Knuth's MMIX constants cut to 32 bits would do as well): seeded moments, not chance. */
const seeded = (seed: number) => {
  let state = seed >>> 0;
  return (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
};

/**
 * What is wrong: anything shown as saved that is not on the device as it was shown, and any record there that is not whole or
 * not in its place. Plain comparisons, because they are made some hundred thousand times.
 */
const wrongWith = (shown: Shown, { tables }: OnDevice): string[] => {
  const kept = tables.putts as unknown as readonly RecordedPutt[];
  const byId = new Map(kept.map((putt) => [putt.id, putt]));
  const wrong: string[] = [];
  for (const [id, words] of shown.saved) {
    const putt = byId.get(id);
    if (putt === undefined) wrong.push(`shown as saved and not there: ${id} ${words}`);
    else if (words !== '' && puttWords(putt, 'imperial') !== words)
      wrong.push(`shown as “${words}” and kept as “${puttWords(putt, 'imperial')}”`);
  }
  const holes = new Map<string, RecordedPutt[]>();
  for (const putt of kept) {
    if (!puttSchema.safeParse(putt).success) wrong.push(`half a putt: ${JSON.stringify(putt)}`);
    const key = `${putt.roundId} ${putt.hole}`;
    holes.set(key, [...(holes.get(key) ?? []), putt]);
  }
  for (const [key, found] of holes) {
    const inOrder = [...found].sort((a, b) => a.stroke - b.stroke);
    for (const [index, putt] of inOrder.entries()) {
      if (putt.stroke !== index + 1) wrong.push(`a stroke is missing before ${key} ${putt.stroke}`);
      if (putt.holed && index < inOrder.length - 1) wrong.push(`a putt after the holed one: ${key}`);
      // Each putt begins where the one before ended: nothing between them is missing.
      if (index > 0 && putt.distance !== inOrder[index - 1].miss?.leave)
        wrong.push(`a gap: ${key} ${putt.stroke}`);
    }
  }
  for (const round of tables.rounds as unknown as readonly RecordedRound[])
    if (!roundSchema.safeParse(round).success) wrong.push(`half a round: ${JSON.stringify(round)}`);
  return wrong;
};

const openIn = async (context: BrowserContext): Promise<Page> => {
  const opened = await context.newPage();
  await opened.goto(`${inject('baseURL')}#/record`, { waitUntil: 'commit' });
  await opened.locator('.rec-pad, .rec-start, [data-testid=forgotten]').first().waitFor();
  return opened;
};

describe('killed while recording', () => {
  // Half a second or so for each kill on a quiet machine, three times that beside other work.
  it(`${TAB_KILLS} times by the death of the tab, loses no putt it showed as saved and keeps none by half`, {
    timeout: 900_000,
  }, async () => {
    page = await openRecord({ width: 390, height: 844, keepsItself: true });
    const context = page.context();
    const shown = await watchShown(context);
    const chance = seeded(20260502);
    let duringWrite = 0;
    for (let kill = 1; kill <= TAB_KILLS; kill += 1) {
      const tab = await openIn(context);
      // What the page before showed is judged on what this one finds.
      expect(wrongWith(shown, await readDevice(tab))).toEqual([]);
      await startTapping(tab, kill);
      // Every other one as it begins; the others when some putts are there, however slow the machine.
      const enough = kill % 2 === 0 ? shown.saved.size + 5 : 0;
      await expect.poll(() => shown.saved.size).toBeGreaterThanOrEqual(enough);
      await tab.waitForTimeout(10 + Math.floor(chance() * 240));
      const dead = tab.waitForEvent('crash');
      const session = await context.newCDPSession(tab);
      // Never answers: the page that would is gone.
      session.send('Page.crash').catch(() => undefined);
      await dead;
      if (shown.saving) duringWrite += 1;
      await tab.close();
    }
    const last = await openIn(context);
    expect(wrongWith(shown, await readDevice(last))).toEqual([]);
    // The test met what it is about: many putts, and kills in the middle of writes.
    expect(shown.saved.size).toBeGreaterThan(2 * TAB_KILLS);
    expect(duringWrite).toBeGreaterThan(TAB_KILLS / 40);
    console.log(
      `${TAB_KILLS} tabs killed: ${shown.saved.size} putts shown as saved, ${duringWrite} kills during a write`,
    );
  });

  it(`${BROWSER_KILLS} times by the death of the whole browser, on a profile of its own`, async () => {
    const profile = mkdtempSync(join(tmpdir(), 'borrow-profile-'));
    const all: Shown = { saved: new Map(), saving: false };
    const chance = seeded(7);
    try {
      for (let kill = 1; kill <= BROWSER_KILLS + 1; kill += 1) {
        const context = await chromium.launchPersistentContext(profile, {
          ...launchOptions(),
          viewport: { width: 390, height: 844 },
        });
        const shown = await watchShown(context);
        const tab = await openIn(context);
        expect(wrongWith(all, await readDevice(tab))).toEqual([]);
        if (kill > BROWSER_KILLS) {
          await context.close();
          break;
        }
        await startTapping(tab, 1000 + kill);
        // Some putts first, however slow the machine; then any moment.
        await expect.poll(() => shown.saved.size).toBeGreaterThan(8);
        await tab.waitForTimeout(Math.floor(chance() * 900));
        const closed = context.waitForEvent('close');
        process.kill(processOf(profile), 'SIGKILL');
        await closed;
        for (const [id, words] of shown.saved) all.saved.set(id, words);
      }
      expect(all.saved.size).toBeGreaterThan(5 * BROWSER_KILLS);
    } finally {
      rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    }
  });
});

/** The browser's own process among those that work on a profile: the one without a type. */
const processOf = (profile: string): number => {
  const lines = execFileSync('ps', ['-A', '-ww', '-o', 'pid=,args='], { encoding: 'utf8' }).split('\n');
  const own = lines.filter(
    (line) => line.includes(`--user-data-dir=${profile}`) && !line.includes('--type='),
  );
  if (own.length !== 1) throw new Error(`expected one browser on ${profile}, got ${own.length}`);
  return Number.parseInt(own[0].trim(), 10);
};

describe('two tabs at once', () => {
  it('lose nothing silently on the same hole: the second is told, sees both, and chooses', async () => {
    page = await openRecord({ width: 390, height: 844 });
    await startRound(page);
    const other = await page.context().newPage();
    await other.goto('/#/record');
    await other.getByText('Putt 1: How far').waitFor();
    await pick(page, '12 ft', 'uphill', 'left to right');
    await pick(other, '20 ft', 'downhill', 'straight', 'Missed left, short', '3 ft');
    await other.getByText('Putt 2:').waitFor();
    await pick(page, 'Holed');
    const refused = page.getByTestId('refused');
    await expect.poll(() => refused.innerText()).toMatch(/^Not saved: another tab has changed hole 1/);
    expect(await refused.innerText()).toContain('20 ft downhill, straight: missed left, short, 3 ft left');
    expect(await page.locator('.rec-said').first().innerText()).toContain('12 ft, uphill, left to right');
    await pick(page, 'Save mine after these');
    await expect.poll(() => holeWords(page as Page, 1)).toBe('Hole 1: 2 putts');
    await expect.poll(() => holeWords(other, 1)).toBe('Hole 1: 2 putts');
    expect(pageProblems(page)).toEqual([]);
  });

  it('both tapping as fast as they can, keep every putt either showed as saved', async () => {
    const fresh = await openRecord({ width: 390, height: 844 });
    page = fresh;
    const seen = await watchShown(fresh.context());
    await startRound(fresh);
    const other = await openIn(fresh.context());
    // The watcher begins with a page's next load.
    await fresh.reload();
    await fresh.locator('.rec-pad').waitFor();
    await startTapping(fresh, 11, 'drop');
    await startTapping(other, 12, 'drop');
    await expect.poll(() => seen.saved.size, { timeout: 200_000 }).toBeGreaterThan(sized(20, 150));
    await stopTapping(fresh);
    await stopTapping(other);
    await fresh.waitForTimeout(500);
    expect(wrongWith(seen, await readDevice(fresh))).toEqual([]);
  });
});

/** Bytes: room for the app's own database and little more. */
const SMALL_QUOTA = 400_000;

/** Another database of the origin takes all the room that is left, down to the last hundred bytes. */
const fillStorage = (on: Page): Promise<void> =>
  on.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opened = indexedDB.open('filler', 1);
        opened.onupgradeneeded = () => opened.result.createObjectStore('rest', { autoIncrement: true });
        opened.onerror = () => reject(opened.error);
        opened.onsuccess = async () => {
          const fits = (size: number): Promise<boolean> =>
            new Promise((answer) => {
              const write = opened.result.transaction('rest', 'readwrite');
              // Chance, because the browser packs what repeats.
              write.objectStore('rest').put(crypto.getRandomValues(new Uint8Array(size)));
              write.oncomplete = () => answer(true);
              write.onabort = () => answer(false);
            });
          for (const size of [50_000, 5000, 500, 100]) while (await fits(size));
          opened.result.close();
          resolve();
        };
      }),
  );

describe('storage that refuses', () => {
  it('full: the putt is refused in words, stays on the form over a reload, and is saved once there is room', async () => {
    // A page that keeps itself on the device would, on a slow machine, fill the room made below before the putt is saved.
    page = await openApp({ width: 390, height: 844, path: '/#/nowhere', keepsItself: false });
    const on = page;
    const session = await on.context().newCDPSession(on);
    const { origin } = new URL(inject('baseURL'));
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: SMALL_QUOTA });
    await on.goto('/#/record');
    await startRound(on);
    await recordHole(on);
    await fillStorage(on);
    await pick(on, '12 ft', 'uphill', 'left to right', 'Holed');
    await expect
      .poll(() => on.getByTestId('refused').innerText())
      .toMatch(/^Not saved: .*storage of this device is full/);
    await on.reload();
    await on.locator('.rec-said').first().waitFor();
    expect(await on.locator('.rec-said').first().innerText()).toContain('12 ft, uphill, left to right');
    await pick(on, 'Save');
    await on.getByTestId('refused').waitFor();
    expect(await holeWords(on, 2)).toBe('Hole 2: nothing yet');
    // Not by deleting what fills it: Chromium goes on counting deleted databases until it tidies up, which may be never.
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 10 * SMALL_QUOTA });
    await pick(on, 'Save');
    await expect.poll(() => holeWords(on, 2)).toBe('Hole 2: 1 putt');
    expect((await readDevice(on)).tables.putts).toHaveLength(3);
  });

  /** A page of the app's origin that is not the app. */
  const stranger = async (context: BrowserContext): Promise<Page> => {
    await context.route('**/nothing-here', (route) =>
      route.fulfill({ contentType: 'text/html', body: '<p>nothing' }),
    );
    const blank = await context.newPage();
    await blank.goto('/nothing-here');
    return blank;
  };
  const makeDatabase = (on: Page, version: number): Promise<void> =>
    on.evaluate(
      (wanted) =>
        new Promise<void>((resolve, reject) => {
          const opened = indexedDB.open('borrow', wanted);
          opened.onupgradeneeded = () => {
            const sets = opened.result.createObjectStore('readSets', { keyPath: 'id' });
            sets.createIndex('startedAt', 'startedAt');
            sets.put({ id: 'kept', wind: 3 });
            // A table this version has never heard of.
            if (wanted > 100) opened.result.createObjectStore('later', { keyPath: 'id' }).put({ id: 'late' });
          };
          opened.onerror = () => reject(opened.error);
          opened.onsuccess = () => {
            // Held open whatever is asked of it, as an old tab would.
            Object.assign(window, { held: opened.result });
            resolve();
          };
        }),
      version,
    );
  const release = (on: Page): Promise<void> =>
    on.evaluate(() => (window as unknown as { held: IDBDatabase }).held.close());
  const worksForTheVisit = async (on: Page): Promise<void> => {
    await startRound(on);
    await pick(on, '12 ft', 'uphill', 'left to right', 'Missed low, past', '2 ft');
    await expect
      .poll(() => putts(on))
      .toEqual(['1. 12 ft uphill, left to right: missed low, past, 2 ft left on this page only']);
    expect(await on.getByTestId('saved').count()).toBe(0);
  };

  it('blocked by an old tab: a sentence, records untouched, and what is entered is kept on the page only', async () => {
    page = await openApp({ width: 390, height: 844, path: '/#/nowhere' });
    const context = page.context();
    await page.goto('about:blank');
    const blank = await stranger(context);
    await blank.evaluate(
      () => new Promise((resolve) => (indexedDB.deleteDatabase('borrow').onsuccess = resolve)),
    );
    await makeDatabase(blank, 10);
    await page.goto('/#/record');
    await expect
      .poll(() => (page as Page).getByRole('alert').first().innerText())
      .toContain('an older tab of this page in the way');
    await worksForTheVisit(page);
    await release(blank);
    await page.goto('about:blank');
    expect((await readDevice(blank)).tables.readSets).toEqual([{ id: 'kept', wind: 3 }]);
  });

  it('of a newer version: a sentence, records untouched, and what is entered is kept on the page only', async () => {
    page = await openApp({ width: 390, height: 844, path: '/#/nowhere' });
    const context = page.context();
    await page.goto('about:blank');
    const blank = await stranger(context);
    await blank.evaluate(
      () => new Promise((resolve) => (indexedDB.deleteDatabase('borrow').onsuccess = resolve)),
    );
    await makeDatabase(blank, 900);
    await release(blank);
    await page.goto('/#/record');
    await expect
      .poll(() => (page as Page).getByRole('alert').first().innerText())
      .toContain('written by a newer version of this page');
    await worksForTheVisit(page);
    expect(await readDevice(blank)).toEqual({
      version: 900,
      tables: { readSets: [{ id: 'kept', wind: 3 }], later: [{ id: 'late' }] },
    });
  });
});

describe('clocks and names', () => {
  it('keeps the order of putts and the day of the round when the clock is set back and the time zone changes', async () => {
    page = await openRecord({ width: 390, height: 844, timezone: 'machine' });
    const on = page;
    const session = await on.context().newCDPSession(on);
    // New York, the evening of 2 May; in UTC it is 3 May already.
    await session.send('Emulation.setTimezoneOverride', { timezoneId: 'America/New_York' });
    const setClock = (moment: string): Promise<void> =>
      on.evaluate((at) => {
        Date.now = () => Date.parse(at);
      }, moment);
    await setClock('2026-05-03T01:00:00Z');
    await startRound(on);
    await recordHole(on);
    await setClock('2026-05-01T09:00:00Z');
    await session.send('Emulation.setTimezoneOverride', { timezoneId: 'Asia/Tokyo' });
    await pick(on, '30 ft', 'uphill', 'straight', 'Missed left, short', '3 ft');
    await setClock('2026-04-01T09:00:00Z');
    await pick(on, 'Missed past', '6 in');
    await setClock('2026-03-01T09:00:00Z');
    await pick(on, 'Holed the next');
    await on.getByRole('heading', { name: 'Hole 3' }).waitFor();
    const { tables } = await readDevice(on);
    expect(tables.rounds).toMatchObject([{ day: '2026-05-02' }]);
    await on.reload();
    await pick(on, 'Go on with it');
    await on.getByText('Putt 1: How far').waitFor();
    expect(await on.getByRole('heading', { level: 1 }).innerText()).toBe('Hole 3');
    await on.locator('[data-hole="2"]').click();
    expect((await putts(on)).map((words) => words.replace(/:.*/, ''))).toEqual([
      '1. 30 ft uphill, straight',
      '2. 3 ft',
      '3. 6 in',
    ]);
    await pick(on, 'End the round', 'Yes, end it');
    await expect.poll(() => on.getByTestId('rounds').innerText()).toContain('May 2, 2026');
  });

  it.each(['<img src=x onerror="window.ran=1">', '"><script>window.ran=1</script>', '&lt;b&gt;'])(
    'shows a course named %s as that text',
    async (name) => {
      page = await openRecord({ width: 390, height: 844 });
      await page.getByText('Course, green speed').click();
      await page.getByLabel('Course', { exact: true }).fill(name);
      await startRound(page);
      await pick(page, 'End the round', 'Yes, end it');
      await expect.poll(() => (page as Page).getByTestId('rounds').innerText()).toContain(name);
      await page
        .getByTestId('rounds')
        .getByRole('button', { name: /^Delete/ })
        .click();
      expect(await page.evaluate(() => 'ran' in window)).toBe(false);
      expect(await page.locator('main img, main script').count()).toBe(0);
      expect(pageProblems(page)).toEqual([]);
    },
  );
});
