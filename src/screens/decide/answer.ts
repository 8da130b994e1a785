/**
 * Keeps the answer in step with the putt. On a plane the comparison runs here, in the same frame as the drag, as long as
 * it fits in one; everything else goes to the worker, newest question first. Old answers stay, marked stale.
 */
import { batch, computed, effect, signal } from '@preact/signals';
import { proxy } from 'comlink';
import {
  type Comparison,
  comparePaces,
  type NextPutts,
  type Odds,
  type Player,
  type Point,
  type Putt,
  puttOdds,
  type Read,
  readPutt,
  type Surface,
} from '../../../sim/index.ts';
import { player } from '../../app/settings.ts';
import { createLane } from '../../worker/client.ts';
import type { Misses, SensitivityCase } from '../../worker/messages.ts';
import { diePace, firmPace, greenSpeed, hole, problem, putt, surface } from './situation.ts';

export interface PaceAnswer {
  readonly pace: number;
  readonly read: Read;
  readonly odds: Odds | undefined;
}

export interface Answer {
  readonly putt: Putt;
  readonly die: PaceAnswer;
  readonly firm: PaceAnswer;
  readonly best: PaceAnswer | undefined;
  readonly comparison: Comparison;
}

/** The last good answer; undefined only before the first. */
export const answer = signal<Answer | undefined>(undefined);
/** The putt has moved on since `answer` was worked out. */
export const behind = signal(true);
/** Three-putts and expected putts in `answer` come from an older green or player. */
export const tableBehind = signal(true);
/** Share of the sensitivity work done, 0..1; undefined when idle. */
export const marginProgress = signal<number | undefined>(undefined);
export const margin = signal<readonly SensitivityCase[] | undefined>(undefined);
export const marginBehind = signal(true);
export const clouds = signal<{ readonly die: Misses | undefined; readonly firm: Misses | undefined }>({
  die: undefined,
  firm: undefined,
});
/** An engine failure, told to the person instead of swallowed. */
export const failure = signal<string | undefined>(undefined);
/** The person stopped the work; it resumes with the next change. */
export const stopped = signal(false);

const quick = createLane();
const tables = createLane({ interrupt: true });
const margins = createLane({ interrupt: true });

/** Paces compared, m: 41 from a trickle to a metre and a half, and the person's two. */
const PACES = Array.from({ length: 41 }, (_, index) => 0.05 + (index * 1.45) / 40);
/** Longest main-thread comparison worth keeping there, ms: leaves the frame room to draw. */
const FRAME_BUDGET = 11;
const CLOUD_SIZE = 160;
const CLOUD_SEED = 20;
/** Quiet time before clouds, tables and margins start, ms: a drag should not queue work it will throw away. */
const CLOUD_PAUSE = 90;
const TABLE_PAUSE = 60;
const MARGIN_PAUSE = 350;

const pacesOf = (die: number, firm: number): number[] =>
  [...new Set([...PACES, die, firm])].sort((first, second) => first - second);

const rowAt = (comparison: Comparison, pace: number): PaceAnswer | undefined =>
  comparison.rows.find((row) => row.pace === pace);

/** The table in hand and what it was made for. */
let table: NextPutts | undefined;
let tableKey: readonly unknown[] = [];
/** Running mean of a main-thread comparison, ms. */
let mainCost = 0;

const same = (first: readonly unknown[], second: readonly unknown[]): boolean =>
  first.length === second.length && first.every((value, index) => value === second[index]);

/** An older table still gives a fair, greyed answer when only slope, green speed or player moved; never for another hole. */
const tableServes = (): boolean => {
  const [land, , place] = tableKey as readonly [Surface | undefined, unknown, Point | undefined];
  return (
    place === hole.peek() &&
    (land === surface.peek() || (land?.kind === 'plane' && surface.peek().kind === 'plane'))
  );
};

const keyOf = (): readonly unknown[] => [surface.value, greenSpeed.value, hole.value, player.value];

const timers = new Map<string, ReturnType<typeof setTimeout>>();
const after = (name: string, pause: number, work: () => void): void => {
  clearTimeout(timers.get(name));
  timers.set(name, setTimeout(work, pause));
};

const tell = (cause: unknown): void => {
  failure.value = `The engine could not answer: ${cause instanceof Error ? cause.message : String(cause)}. Change the putt to try again.`;
};

interface Question {
  readonly putt: Putt;
  readonly player: Player;
  readonly die: number;
  readonly firm: number;
}

const take = (
  question: Question,
  comparison: Comparison,
  best: PaceAnswer | undefined,
  fresh: boolean,
): void => {
  const die = rowAt(comparison, question.die);
  const firm = rowAt(comparison, question.firm);
  if (!die || !firm) return;
  batch(() => {
    answer.value = { putt: question.putt, die, firm, best, comparison };
    behind.value = false;
    tableBehind.value = !fresh;
    failure.value = undefined;
  });
};

const bestHere = (
  { putt: asked, player: errors }: Question,
  comparison: Comparison,
): PaceAnswer | undefined => {
  const pace = comparison.best?.fewestPutts;
  if (pace === undefined) return undefined;
  const odds = puttOdds(asked, pace, errors, table);
  return { pace, read: readPutt(asked, pace), odds: odds.status === 'ok' ? odds : undefined };
};

const compareHere = (question: Question, fresh: boolean): void => {
  const before = performance.now();
  const comparison = comparePaces(
    question.putt,
    pacesOf(question.die, question.firm),
    question.player,
    table,
  );
  const best = bestHere(question, comparison);
  const cost = performance.now() - before;
  mainCost = mainCost === 0 ? cost : 0.7 * mainCost + 0.3 * cost;
  take(question, comparison, best, fresh);
};

const compareThere = async (question: Question, fresh: boolean): Promise<void> => {
  const used = table;
  const found = await quick.latest(async (engine) => {
    const comparison = await engine.compare(
      question.putt,
      pacesOf(question.die, question.firm),
      question.player,
      used,
    );
    const pace = comparison.best?.fewestPutts;
    const best =
      pace === undefined
        ? undefined
        : (await engine.compare(question.putt, [pace], question.player, used)).rows[0];
    return { comparison, best };
  });
  if (found === undefined) return;
  take(question, found.comparison, found.best, fresh && used === table);
  if (question.putt !== putt.peek()) behind.value = true;
};

const makeTable = (question: Question, key: readonly unknown[]): void => {
  tables
    .latest((engine) => engine.prepareNextPutts(question.putt, question.player))
    .then((made) => {
      if (made === undefined) return;
      table = made;
      tableKey = key;
      ask();
    })
    .catch(tell);
};

const makeClouds = async (question: Question): Promise<void> => {
  const found = await quick.latest(async (engine) => {
    const at = (pace: number): Promise<Misses> =>
      engine.sampleMisses(question.putt, pace, question.player, CLOUD_SIZE, CLOUD_SEED);
    return { die: await at(question.die), firm: await at(question.firm) };
  });
  if (found !== undefined && question.putt === putt.peek()) clouds.value = found;
};

const makeMargin = async (question: Question): Promise<void> => {
  marginProgress.value = 0;
  const found = await margins.latest((engine) =>
    engine.sensitivity(
      question.putt,
      question.die,
      question.firm,
      question.player,
      proxy((share: number) => {
        marginProgress.value = share;
      }),
    ),
  );
  if (found === undefined || question.putt !== putt.peek()) return;
  batch(() => {
    margin.value = found;
    marginBehind.value = false;
    marginProgress.value = undefined;
  });
};

/** Works out what is missing for the putt on the page; called on every change. */
const ask = (): void => {
  if (problem.peek() !== undefined) return;
  const question: Question = {
    putt: putt.peek(),
    player: player.peek(),
    die: diePace.peek(),
    firm: firmPace.peek(),
  };
  const key = keyOf();
  const fresh = table !== undefined && same(key, tableKey);
  if (!fresh) {
    tableBehind.value = true;
    after('table', TABLE_PAUSE, () => makeTable(question, key));
  }
  // Nothing to say yet: the last answer stays, greyed, until the table is there.
  if (table === undefined || !tableServes()) return;
  if (question.putt.surface.kind === 'plane' && mainCost < FRAME_BUDGET) {
    try {
      compareHere(question, fresh);
    } catch (cause) {
      tell(cause);
    }
  } else {
    compareThere(question, fresh).catch(tell);
    // A slow moment (a garbage collection, a busy core) should not exile the work for good.
    mainCost *= 0.9;
  }
  after('clouds', CLOUD_PAUSE, () => void makeClouds(question).catch(tell));
  if (fresh) after('margin', MARGIN_PAUSE, () => void makeMargin(question).catch(tell));
};

/** The two lines alone, at once, whatever the tables do: for the map. */
export const lines = computed<{ readonly die: Read; readonly firm: Read } | undefined>(() => {
  if (problem.value !== undefined) return undefined;
  return { die: readPutt(putt.value, diePace.value), firm: readPutt(putt.value, firmPace.value) };
});

export const cancelWork = (): void => {
  for (const timer of timers.values()) clearTimeout(timer);
  tables.cancel();
  margins.cancel();
  batch(() => {
    marginProgress.value = undefined;
    stopped.value = true;
  });
};

/** Starts following the putt; returns the function that stops. */
export const followPutt = (): (() => void) => {
  let frame = 0;
  const stop = effect(() => {
    // Read everything the answer depends on, then work once per frame however many of them changed.
    void [putt.value, player.value, diePace.value, firmPace.value, problem.value];
    batch(() => {
      behind.value = true;
      marginBehind.value = true;
      stopped.value = false;
      marginProgress.value = undefined;
    });
    margins.cancel();
    clearTimeout(timers.get('margin'));
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(ask);
  });
  return () => {
    stop();
    cancelAnimationFrame(frame);
    cancelWork();
  };
};
