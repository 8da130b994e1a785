/**
 * How long the review of a hundred thousand putts takes in the browser, over the production build:
 * `npx tsx tests/bench/review-page.ts [runs] [--profile]`. Prints, asserts nothing.
 *
 * Times, ms, from the moment the database has handed over the putts: to all records through the gate, to the last of six charts;
 * from a filter chosen to the last chart drawn again; the longest task that blocks the page in each. The page itself is not
 * changed: its calls to the database and its charts are watched from outside. With --profile: where the time goes, by function.
 * Leaves out: the figures alone, in Node (review.ts).
 */
import { loadavg } from 'node:os';
import { type Browser, chromium, type Page } from 'playwright';
import { chromiumArguments, findChromium } from '../support/chromium.ts';
import { manyRecords, putRecords } from '../support/reviewRecords.ts';
import { servedBuild } from '../support/serveBuild.ts';

/** Some 97,000 putts. */
const ROUNDS = 3200;
const CHARTS = 6;
/** The round check asks the whole record, whatever is filtered: its chart stays. */
const FILTERED_CHARTS = 5;
const PATIENCE = 120_000;

const runs = Number(process.argv.slice(2).find((word) => /^\d+$/.test(word)) ?? 5);
const profiled = process.argv.includes('--profile');

interface Seen {
  /** When each table was handed over, ms of the page's clock. */
  readonly handed: Record<string, number>;
  /** When charts were drawn. */
  charts: number[];
  tasks: { readonly start: number; readonly duration: number }[];
}

/** Runs in the page before the app. */
const watch = (): void => {
  const seen: Seen = { handed: {}, charts: [], tasks: [] };
  Object.assign(globalThis, { seen });
  const { getAll } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.getAll = function (this: IDBObjectStore, ...words) {
    const request = getAll.apply(this, words);
    // First of the listeners: the page's own comes after.
    request.addEventListener('success', () => {
      seen.handed[this.name] = performance.now();
    });
    return request;
  };
  new MutationObserver((changes) => {
    for (const { addedNodes } of changes)
      for (const node of addedNodes)
        if (node instanceof SVGSVGElement && node.parentElement?.classList.contains('chart'))
          seen.charts.push(performance.now());
  }).observe(document, { childList: true, subtree: true });
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries())
      seen.tasks.push({ start: startTime, duration });
  }).observe({ type: 'longtask', buffered: true });
};

const seenOn = (on: Page): Promise<Seen> =>
  on.evaluate(() => (globalThis as unknown as { readonly seen: Seen }).seen);
const drawn = (on: Page, count: number, from = 0): Promise<unknown> =>
  on.waitForFunction(
    ({ least, after }) =>
      (globalThis as unknown as { readonly seen: Seen }).seen.charts.filter((at) => at > after).length >= least,
    { least: count, after: from },
    { timeout: PATIENCE },
  );
const longest = ({ tasks }: Seen, from: number): number =>
  Math.max(0, ...tasks.filter(({ start, duration }) => start + duration > from).map(({ duration }) => duration));

interface Times {
  readonly handedOver: number;
  readonly toCharts: number;
  readonly longest: number;
  readonly filter: number;
  readonly filterLongest: number;
  /** A million numbers sorted: how busy the machine is. */
  readonly sort: number;
}

/** Runs in the page. */
const sortTime = (): number => {
  const numbers = Float64Array.from({ length: 1e6 }, (_, i) => (i * 7919) % 1_000_003);
  const begun = performance.now();
  numbers.sort();
  return performance.now() - begun;
};

const onceOpened = async (on: Page): Promise<Times> => {
  await on.reload();
  await drawn(on, CHARTS);
  const opened = await seenOn(on);
  const from = opened.handed.putts;
  // Once the page is quiet, so that nothing of its own is counted in.
  await on.waitForTimeout(1500);
  const clicked = await on.evaluate(() => {
    const choice = document.querySelector<HTMLInputElement>('input[name=climb][value=up]');
    const now = performance.now();
    choice?.click();
    return now;
  });
  await drawn(on, FILTERED_CHARTS, clicked);
  await on.waitForTimeout(300);
  const filtered = await seenOn(on);
  return {
    handedOver: opened.handed.practice - from,
    toCharts: Math.max(...opened.charts) - from,
    longest: longest(opened, from),
    filter: Math.max(...filtered.charts) - clicked,
    filterLongest: longest(filtered, clicked),
    sort: await on.evaluate(sortTime),
  };
};

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const say = (what: string, times: readonly Times[], of: keyof Times): void => {
  const all = times.map((one) => one[of].toFixed(0));
  console.log(`${what}: ${median(times.map((one) => one[of])).toFixed(0)} ms (${all.join(', ')})`);
};

/** Own time of each function over one opening and one filter, ms. */
const profile = async (on: Page): Promise<void> => {
  const session = await on.context().newCDPSession(on);
  await session.send('Profiler.enable');
  await session.send('Profiler.setSamplingInterval', { interval: 500 });
  for (const what of ['opened', 'filtered']) {
    await session.send('Profiler.start');
    if (what === 'opened') {
      await on.reload();
      await drawn(on, CHARTS);
    } else {
      await on.waitForTimeout(1000);
      const now = await on.evaluate(() => performance.now());
      await on.locator('input[name=climb][value=down]').click();
      await drawn(on, FILTERED_CHARTS, now);
    }
    const { profile: found } = await session.send('Profiler.stop');
    const own = new Map<string, number>();
    const nodes = new Map(found.nodes.map((node) => [node.id, node]));
    found.samples?.forEach((id, i) => {
      const frame = nodes.get(id)?.callFrame;
      if (frame === undefined) return;
      const file = frame.url.split('/').at(-1) ?? '';
      const name = `${frame.functionName || '(no name)'} ${file}:${frame.lineNumber}:${frame.columnNumber}`;
      own.set(name, (own.get(name) ?? 0) + (found.timeDeltas?.[i] ?? 0) / 1000);
    });
    console.log(what);
    for (const [name, time] of [...own].sort((a, b) => b[1] - a[1]).slice(0, 40))
      console.log(`  ${time.toFixed(1).padStart(7)}  ${name}`);
  }
};

const measure = async (browser: Browser, baseURL: string): Promise<void> => {
  const context = await browser.newContext({
    baseURL,
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
    // What the service worker fetches for later would be counted in.
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  await page.addInitScript(watch);
  await page.goto('/#/review');
  await page.getByText('Nothing is recorded yet.').waitFor();
  const records = manyRecords(ROUNDS, 'a hundred thousand');
  await putRecords(page, records);
  await drawn(page, CHARTS);
  const times: Times[] = [];
  for (let run = 0; run < runs; run++) times.push(await onceOpened(page));
  console.log(`${records.putts.length} putts of ${ROUNDS} rounds, ${runs} times; median (each)`);
  console.log(`load of this machine (1, 5, 15 min): ${loadavg().map((one) => one.toFixed(1)).join(', ')}`);
  say('putts handed over to all records through the gate', times, 'handedOver');
  say('putts handed over to the sixth chart', times, 'toCharts');
  say('longest task in it', times, 'longest');
  say('filter chosen to the last chart drawn again', times, 'filter');
  say('longest task in it', times, 'filterLongest');
  say('a million numbers sorted in the page', times, 'sort');
  if (profiled) await profile(page);
};

const place = await findChromium();
const { baseURL, end } = await servedBuild();
const browser = await chromium.launch({
  ...place,
  args: chromiumArguments,
  chromiumSandbox: process.getuid?.() !== 0,
});
try {
  await measure(browser, baseURL);
} finally {
  await browser.close();
  await end();
}
