/**
 * Keeps the comparison of paces in step with the putt. On a plane it runs here, in the same frame as the drag, as long as
 * it fits in one; everything else goes to a worker, newest question first. Old answers stay, marked stale.
 */
import { batch, effect, signal } from '@preact/signals';
import {
  type Comparison,
  comparePaces,
  type NextPutts,
  type Odds,
  type Player,
  type Putt,
  puttOdds,
  type Read,
  readPutt,
} from '../../../sim/index.ts';
import { player } from '../../app/settings.ts';
import { createLane } from '../../worker/client.ts';
import { askMargin, cancelMargin, dropMargin } from './margin.ts';
import { diePace, firmPace, problem, putt } from './situation.ts';
import { hasTable, keepTable, roughTable, tableFor, useTable } from './tables.ts';
import { after, failure, forgetAll, stopped, tell } from './work.ts';

export interface BestPace {
  readonly pace: number;
  readonly read: Read;
  readonly odds: Odds | undefined;
}

export interface Answer {
  readonly putt: Putt;
  /** Paces asked for, m past. */
  readonly die: number;
  readonly firm: number;
  readonly dieOdds: Odds | undefined;
  readonly firmOdds: Odds | undefined;
  readonly best: BestPace | undefined;
  readonly comparison: Comparison;
  /** Whether next putts are of this ground, or nearly: otherwise nothing that depends on them may be shown. */
  readonly counted: boolean;
}

/** The last good answer; undefined only before the first. */
export const answer = signal<Answer | undefined>(undefined);
/** The putt has moved on since `answer` was worked out. */
export const behind = signal(true);
/** Three-putts and expected putts in `answer` come from an older green or player. */
export const tableBehind = signal(true);

const compareLane = createLane();
const tableLane = createLane({ interrupt: true });

/** Paces compared, m: 41 from a trickle to a metre and a half, and the person's two. */
const PACES = Array.from({ length: 41 }, (_, index) => 0.05 + (index * 1.45) / 40);
/** Longest main-thread comparison worth keeping there, ms: leaves the frame room to draw. */
const FRAME_BUDGET = 9;
/** Quiet time before tables and margins start, ms: a drag should not queue work it will throw away. */
const TABLE_PAUSE = 60;
const MARGIN_PAUSE = 180;

interface Question {
  readonly putt: Putt;
  readonly player: Player;
  readonly die: number;
  readonly firm: number;
}

interface Table {
  readonly table: NextPutts;
  /** Made for this very ground, hole and player; near: roughTable. */
  readonly exact: boolean;
  readonly near: boolean;
}

const pacesOf = ({ die, firm }: Question): number[] =>
  [...new Set([...PACES, die, firm])].sort((first, second) => first - second);

const take = (
  { putt: asked, die, firm }: Question,
  comparison: Comparison,
  best: BestPace | undefined,
  table: Table,
): void => {
  const oddsAt = (pace: number): Odds | undefined => comparison.rows.find((row) => row.pace === pace)?.odds;
  batch(() => {
    answer.value = {
      putt: asked,
      die,
      firm,
      dieOdds: oddsAt(die),
      firmOdds: oddsAt(firm),
      best: table.near ? best : undefined,
      comparison,
      counted: table.near,
    };
    behind.value = false;
    tableBehind.value = !table.exact;
    failure.value = undefined;
  });
};

/** Running mean of a main-thread comparison, ms. */
let mainCost = 0;

const compareHere = (question: Question, table: Table): void => {
  const before = performance.now();
  const { putt: asked, player: errors } = question;
  const comparison = comparePaces(asked, pacesOf(question), errors, table.table);
  const pace = comparison.best?.fewestPutts;
  const odds = pace === undefined ? undefined : puttOdds(asked, pace, errors, table.table);
  const best =
    pace === undefined
      ? undefined
      : { pace, read: readPutt(asked, pace), odds: odds?.status === 'ok' ? odds : undefined };
  const cost = performance.now() - before;
  mainCost = mainCost === 0 ? cost : 0.7 * mainCost + 0.3 * cost;
  take(question, comparison, best, table);
};

const compareThere = async (question: Question, table: Table): Promise<void> => {
  behind.value = true;
  const found = await compareLane.latest(async (engine, send) => {
    const sent = send(question.putt);
    const comparison = await engine.compare(sent, pacesOf(question), question.player, table.table);
    const pace = comparison.best?.fewestPutts;
    if (pace === undefined) return { comparison, best: undefined };
    const odds = (await engine.compare(sent, [pace], question.player, table.table)).rows[0]?.odds;
    const { die: read } = await engine.lines(sent, { die: pace, firm: pace });
    return { comparison, best: { pace, read, odds } };
  });
  if (found === undefined) return;
  take(question, found.comparison, found.best, table);
  if (question.putt !== putt.peek()) behind.value = true;
};

const makeTable = async (question: Question): Promise<void> => {
  const { putt: asked, player: errors } = question;
  let done = false;
  const made = await tableLane.latest(async (engine, send) => {
    const table = await engine.prepareNextPutts(send(asked), errors, undefined);
    done = true;
    return table;
  });
  if (!done) return;
  keepTable(asked, errors, undefined, made);
  ask();
};

/** Works out what is missing for the putt on the page; called once per frame in which something changed. */
const ask = (): void => {
  if (problem.peek() !== undefined) return;
  const question: Question = {
    putt: putt.peek(),
    player: player.peek(),
    die: diePace.peek(),
    firm: firmPace.peek(),
  };
  const { putt: asked, player: errors, die, firm } = question;
  const exact = tableFor(asked, errors);
  if (exact) useTable(exact, asked);
  else if (!hasTable(asked, errors)) {
    tableBehind.value = true;
    after('table', TABLE_PAUSE, () => void makeTable(question).catch(tell));
  }
  const rough = roughTable(asked);
  const table = exact ? { table: exact, exact: true, near: true } : rough && { ...rough, exact: false };
  // Nothing to say yet: the page shows the lines alone until the first table is there.
  if (table === undefined) return;
  if (asked.surface.kind === 'plane' && mainCost < FRAME_BUDGET) {
    try {
      compareHere(question, table);
    } catch (cause) {
      tell(cause);
    }
  } else {
    compareThere(question, table).catch(tell);
    // A slow moment (a garbage collection, a busy core) should not exile the work for good.
    mainCost *= 0.95;
  }
  if (exact)
    after(
      'margin',
      MARGIN_PAUSE,
      () => void askMargin({ putt: asked, player: errors, paces: { die, firm } }).catch(tell),
    );
};

/** Ends long work; a change of the putt starts it again. */
export const cancelWork = (): void => {
  forgetAll();
  tableLane.cancel();
  cancelMargin();
  stopped.value = true;
};

/** Starts following the putt; returns the function that stops. */
export const followPutt = (): (() => void) => {
  let frame = 0;
  const stop = effect(() => {
    // Read everything the answer depends on, then work once per frame however many of them changed.
    void [putt.value, player.value, diePace.value, firmPace.value, problem.value];
    batch(() => {
      stopped.value = false;
      dropMargin(putt.value.surface);
    });
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(ask);
  });
  return () => {
    stop();
    cancelAnimationFrame(frame);
    forgetAll();
    tableLane.cancel();
    cancelMargin();
  };
};
