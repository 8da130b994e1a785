/**
 * Maps of a whole green: time to the first picture and to the refined one, on one thread and shared by two, for two sizes of
 * green and two spacings, and against playing every place. Leaves out: the screen and its workers (src/screens/green).
 */
import { Worker } from 'node:worker_threads';
import {
  emptyGreenMap,
  filledIn,
  type GreenQuestion,
  generateGreen,
  PLACE_STATUS,
  type PlayedPlaces,
  pinSpots,
  placesToPlay,
  playPlaces,
  prepareNextPutts,
  wholeGreen,
  withPlayed,
} from '../../sim/index.ts';
import { milliseconds, type Subject, times } from './timing.ts';

export interface MapRow {
  readonly what: string;
  readonly first: string;
  readonly refined: string;
  /** On two threads. */
  readonly 'first, two': string;
  readonly 'refined, two': string;
  /** Asked for on two threads. */
  readonly target: string;
  /** Places played of those of the grid. */
  readonly played: string;
  /** Time of playing every place, from the mean of the coarse ones, over that of the refined map. */
  readonly ratio: string;
}

/** Sides of the green, m, and finest spacings, m. */
const MAPPED = [
  [10, 0.5],
  [10, 0.25],
  [20, 0.5],
  [20, 0.25],
] as const;

/** Once each: a map takes seconds, and its places are many alike. */
export async function mapRows({ putt: like, player }: Subject): Promise<MapRow[]> {
  const rows: MapRow[] = [];
  for (const [sizeM, spacing] of MAPPED) {
    const surface = generateGreen({ seed: 3, sizeM });
    const hole = pinSpots(surface, 1, 1)[0];
    const putt = { ...like, surface, hole, ball: hole };
    const question = { putt, player, table: prepareNextPutts(putt, player) };
    const empty = emptyGreenMap(putt, { spacing });
    let began = performance.now();
    const coarse = placesToPlay(empty, 0);
    filledIn(withPlayed(empty, playPlaces(question, empty, coarse), question.table), question.table);
    const first = performance.now() - began;
    began = performance.now();
    const map = wholeGreen(question, { spacing });
    const refined = performance.now() - began;
    const shared = await sharedByTwo({ question, spacing });
    const played = map.status.filter((status) => status === PLACE_STATUS.played).length;
    const last = sizeM === 20 && spacing === 0.25;
    rows.push({
      what: `${sizeM} x ${sizeM} m at ${100 * spacing} cm`,
      first: milliseconds(first),
      refined: milliseconds(refined),
      'first, two': milliseconds(shared.first),
      'refined, two': milliseconds(shared.refined),
      target: last ? 'under 1000 and 10000 ms' : '',
      played: `${played} of ${map.status.length}`,
      ratio: times(((first / coarse.length) * map.status.length) / refined),
    });
  }
  return rows;
}

const THREAD = new URL('./map-thread.ts', import.meta.url).href;
/** A thread of Node 20 knows no TypeScript until it is taught. */
const START = `import('tsx/esm/api').then(({ register }) => {
  register();
  return import(require('node:worker_threads').workerData);
});`;

interface Work {
  readonly question: GreenQuestion;
  readonly spacing: number;
}

/** Milliseconds for the whole map with its places dealt to two threads, step by step, as the page does. */
async function sharedByTwo({ question, spacing }: Work): Promise<{ first: number; refined: number }> {
  const workers = [0, 1].map(() => new Worker(START, { eval: true, workerData: THREAD }));
  const answer = (worker: Worker, message: unknown): Promise<PlayedPlaces> =>
    new Promise((resolve, reject) => {
      worker.once('message', resolve);
      worker.once('error', reject);
      worker.postMessage(message);
    });
  // The threads start and learn the question before the clock does.
  await Promise.all(workers.map((worker) => answer(worker, { question, spacing, nodes: new Int32Array(0) })));
  const began = performance.now();
  let map = emptyGreenMap(question.putt, { spacing });
  let first = 0;
  for (let step = 0; step < map.strides.length; step++) {
    const nodes = placesToPlay(map, step);
    const halves = workers.map((worker, i) => answer(worker, { nodes: nodes.filter((_, n) => n % 2 === i) }));
    for (const played of await Promise.all(halves)) map = withPlayed(map, played, question.table);
    map = filledIn(map, question.table);
    if (step === 0) first = performance.now() - began;
  }
  const refined = performance.now() - began;
  await Promise.all(workers.map((worker) => worker.terminate()));
  return { first, refined };
}
