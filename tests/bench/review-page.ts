/**
 * How long the review of a hundred thousand putts takes in the browser, over the production build of the folder it is run in:
 * `npx tsx tests/bench/review-page.ts [runs] [--profile]`. Prints, asserts nothing.
 *
 * From the moment the browser has read the putts from its database to the last of six charts; from a filter chosen to the last
 * chart drawn again; and the longest task that blocks the page in each. Each as time gone by, and as time the processor gave to the
 * page: on an idle machine they are alike, on a busy one only the second says something of the page. The page itself is not
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

/** Runs in the page before the app: marks what happens, for the trace. */
const watch = (): void => {
  const { getAll } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.getAll = function (this: IDBObjectStore, ...words) {
    const request = getAll.apply(this, words);
    // First of the listeners: the page's own comes after.
    request.addEventListener('success', () => {
      // The browser makes the objects only when they are asked for: that is still reading.
      void request.result;
      performance.mark(`read ${this.name}`);
    });
    return request;
  };
  new MutationObserver((changes) => {
    for (const node of changes.flatMap(({ addedNodes }) => [...addedNodes]))
      if (node instanceof SVGSVGElement && node.parentElement?.classList.contains('chart'))
        performance.mark('chart');
  }).observe(document, { childList: true, subtree: true });
};

const marksOf = (on: Page, name: string): Promise<number> =>
  on.evaluate((which) => performance.getEntriesByName(which).length, name);
const chartsDrawn = (on: Page, count: number): Promise<unknown> =>
  on.waitForFunction((least) => performance.getEntriesByName('chart').length >= least, count, {
    timeout: PATIENCE,
  });
const choose = (on: Page, climb: 'up' | 'down'): Promise<void> =>
  on.evaluate((value) => {
    performance.mark('filter');
    document.querySelector<HTMLInputElement>(`input[name=climb][value=${value}]`)?.click();
  }, climb);

/** What is read of a trace; times in microseconds, `tts` and `tdur` of the thread's own clock. */
interface TraceEvent {
  readonly name: string;
  readonly cat: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly tts?: number;
  readonly dur?: number;
  readonly tdur?: number;
}

interface Stretch {
  /** Time gone by and processor time of the page, ms. */
  readonly passed: number;
  readonly worked: number;
  /** The same of the longest task in it. */
  readonly longestPassed: number;
  readonly longestWorked: number;
}

const stretch = (events: readonly TraceEvent[], from: TraceEvent, to: TraceEvent): Stretch => {
  const tasks = events.filter(
    ({ name, ph, pid, tid, ts, dur = 0 }) =>
      name === 'RunTask' &&
      ph === 'X' &&
      pid === from.pid &&
      tid === from.tid &&
      ts + dur > from.ts &&
      ts < to.ts,
  );
  return {
    passed: (to.ts - from.ts) / 1000,
    worked: ((to.tts ?? Number.NaN) - (from.tts ?? Number.NaN)) / 1000,
    longestPassed: Math.max(...tasks.map(({ dur = 0 }) => dur)) / 1000,
    longestWorked: Math.max(...tasks.map(({ tdur = 0 }) => tdur)) / 1000,
  };
};

/** Runs in the page: what tells how quick the machine is just now, as in review.ts. */
const sortNumbers = (): void => {
  const numbers = Float64Array.from({ length: 1e6 }, (_, i) => (i * 7919) % 1_000_003);
  performance.mark('sort');
  numbers.sort();
  performance.mark('sorted');
};

interface Times {
  readonly sorted: Stretch;
  readonly gate: Stretch;
  readonly opened: Stretch;
  readonly filtered: Stretch;
}

const onceOpened = async (browser: Browser, on: Page): Promise<Times> => {
  await browser.startTracing(on, {
    categories: ['blink.user_timing', 'disabled-by-default-devtools.timeline'],
  });
  await on.reload();
  await chartsDrawn(on, CHARTS);
  // Once the page is quiet, so that nothing of its opening is counted in.
  await on.waitForTimeout(1500);
  const before = await marksOf(on, 'chart');
  await choose(on, 'up');
  await chartsDrawn(on, before + FILTERED_CHARTS);
  await on.evaluate(sortNumbers);
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  const marks = traceEvents
    .filter(({ cat, ph }) => cat.includes('blink.user_timing') && ph !== 'E' && ph !== 'e')
    .sort((a, b) => a.ts - b.ts);
  const first = (name: string): TraceEvent => {
    const found = marks.find((mark) => mark.name === name);
    if (found === undefined) throw new Error(`The trace has no mark "${name}".`);
    return found;
  };
  const charts = marks.filter(({ name }) => name === 'chart');
  const putts = first('read putts');
  const filter = first('filter');
  return {
    sorted: stretch(traceEvents, first('sort'), first('sorted')),
    gate: stretch(traceEvents, putts, first('read practice')),
    opened: stretch(traceEvents, putts, charts[CHARTS - 1]),
    filtered: stretch(traceEvents, filter, charts[charts.length - 1]),
  };
};

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const say = (what: string, stretches: readonly Stretch[]): void => {
  const line = (of: keyof Stretch): string => {
    const values = stretches.map((one) => one[of]);
    return `${median(values).toFixed(0)} ms (${values.map((one) => one.toFixed(0)).join(', ')})`;
  };
  console.log(`${what}
  processor time: ${line('worked')}; longest task ${line('longestWorked')}
  time gone by:   ${line('passed')}; longest task ${line('longestPassed')}`);
};

/** Own time of each function over one opening and one filter, ms; what waits for the processor is in it. */
const profile = async (on: Page): Promise<void> => {
  const session = await on.context().newCDPSession(on);
  await session.send('Profiler.enable');
  await session.send('Profiler.setSamplingInterval', { interval: 500 });
  for (const what of ['opened', 'filtered']) {
    await session.send('Profiler.start');
    if (what === 'opened') {
      await on.reload();
      await chartsDrawn(on, CHARTS);
    } else {
      const before = await marksOf(on, 'chart');
      await choose(on, 'down');
      await chartsDrawn(on, before + FILTERED_CHARTS);
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
  await chartsDrawn(page, CHARTS);
  const times: Times[] = [];
  for (let run = 0; run < runs; run++) times.push(await onceOpened(browser, page));
  const load = loadavg().map((one) => one.toFixed(1));
  console.log(`${records.putts.length} putts of ${ROUNDS} rounds, ${runs} times: median (each)`);
  console.log(`load of this machine over 1, 5 and 15 minutes: ${load.join(', ')}`);
  say(
    'a million numbers sorted (some 90 ms where nothing else runs)',
    times.map(({ sorted }) => sorted),
  );
  say(
    'putts read to all records through the gate',
    times.map(({ gate }) => gate),
  );
  say(
    'putts read to the sixth chart',
    times.map(({ opened }) => opened),
  );
  say(
    'filter chosen to the last chart drawn again',
    times.map(({ filtered }) => filtered),
  );
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
