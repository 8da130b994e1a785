/**
 * Keeps the answer in step with the putt. On a plane the two paces asked about are worked out here, in the same frame as
 * the drag, as long as they fit in one; all the paces, and everything on a green, come from a worker, newest question
 * first. Old answers stay, marked stale.
 */
import { batch, effect, signal } from '@preact/signals';
import { proxy } from 'comlink';
import {
  type Comparison,
  comparePaces,
  type NextPutts,
  type Odds,
  type Player,
  type Putt,
  type Read,
} from '../../../sim/index.ts';
import { hasTable, keepTable, roughTable, tableFor, useTable } from '../../state/nextPutts.ts';
import { knownPlayer, player } from '../../state/settings.ts';
import { diePace, firmPace, problem, putt } from '../../state/situation.ts';
import { createLane } from '../../worker/client.ts';
import { askFamily, dropFamily } from './family.ts';
import { askMargin, cancelMargin, dropMargin } from './margin.ts';
import { after, failure, forgetAll, stopped, tell } from './work.ts';

/** The two paces asked about. */
export interface Answer {
  readonly putt: Putt;
  readonly dieOdds: Odds | undefined;
  readonly firmOdds: Odds | undefined;
  /** Whether next putts are of this ground, or nearly: otherwise nothing that depends on them may be shown. */
  readonly counted: boolean;
}

/** All paces, and the best of them. */
export interface Paces {
  /** Paces asked about, m past. */
  readonly die: number;
  readonly firm: number;
  readonly comparison: Comparison;
  readonly best: { readonly pace: number; readonly read: Read; readonly odds: Odds } | undefined;
}

/** The last good answer; undefined only before the first. */
export const answer = signal<Answer | undefined>(undefined);
/** The putt has moved on since `answer` was worked out. */
export const behind = signal(true);
/** Three-putts and expected putts in `answer` come from an older green or player. */
export const tableBehind = signal(true);
/** Share of the table of next putts made so far, 0..1; undefined when none is being made. */
export const tableProgress = signal<number | undefined>(undefined);
/** undefined: nothing is known of this ground yet. */
export const paces = signal<Paces | undefined>(undefined);
/** The putt has moved on since `paces` was worked out. */
export const pacesBehind = signal(true);

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

const takeTwo = ({ putt: asked, die, firm }: Question, { rows }: Comparison, table: Table): void => {
  const oddsAt = (pace: number): Odds | undefined => rows.find((row) => row.pace === pace)?.odds;
  batch(() => {
    answer.value = { putt: asked, dieOdds: oddsAt(die), firmOdds: oddsAt(firm), counted: table.near };
    behind.value = false;
    tableBehind.value = !table.exact;
    failure.value = undefined;
  });
};

/** Running mean of a main-thread comparison of two paces, ms. */
let mainCost = 0;

const compareHere = (question: Question, table: Table): void => {
  const before = performance.now();
  const { putt: asked, player: errors, die, firm } = question;
  takeTwo(question, comparePaces(asked, [die, firm], errors, table.table), table);
  const cost = performance.now() - before;
  mainCost = mainCost === 0 ? cost : 0.7 * mainCost + 0.3 * cost;
};

const compareThere = async (question: Question, table: Table): Promise<void> => {
  const { die, firm } = question;
  pacesBehind.value = true;
  const found = await compareLane.latest(async (engine, send) => {
    const sent = send.putt(question.putt);
    const next = send.table(table.table);
    const comparison = await engine.compare(sent, pacesOf(question), question.player, next);
    if (comparison.best === undefined) return { comparison, best: undefined };
    const { fewestPutts: pace, odds } = comparison.best;
    return { comparison, best: { pace, read: await engine.read(sent, pace), odds } };
  });
  if (found === undefined) return;
  const current = question.putt === putt.peek();
  batch(() => {
    // Where the two paces were not worked out in the frame itself, they come from here.
    if (behind.peek()) takeTwo(question, found.comparison, table);
    paces.value = table.near ? { die, firm, ...found } : undefined;
    pacesBehind.value = !current || !table.exact;
    if (!current) behind.value = behind.peek() || answer.peek()?.putt !== putt.peek();
  });
};

const makeTable = async (question: Question): Promise<void> => {
  const { putt: asked, player: errors } = question;
  let done = false;
  const made = await tableLane.latest(async (engine, send) => {
    const told = proxy((share: number) => {
      if (!done) tableProgress.value = share;
    });
    const table = await engine.prepareNextPutts(send.putt(asked), errors, undefined, told);
    done = true;
    return table;
  });
  tableProgress.value = undefined;
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
  // On a plane the two paces asked about fit into the frame; all the paces never need to.
  if (asked.surface.kind === 'plane' && mainCost < FRAME_BUDGET) {
    try {
      compareHere(question, table);
    } catch (cause) {
      tell(cause);
    }
  } else {
    behind.value = true;
    // A slow moment (a garbage collection, a busy core) should not exile the work for good.
    mainCost *= 0.95;
  }
  compareThere(question, table).catch(tell);
  if (exact)
    after('margin', MARGIN_PAUSE, () => {
      void askMargin({ putt: asked, player: errors, paces: { die, firm } }).catch(tell);
      void askFamily({ putt: asked, known: knownPlayer.peek(), paces: { die, firm } }).catch(tell);
    });
};

/** Ends long work; a change of the putt starts it again. */
export const cancelWork = (): void => {
  forgetAll();
  tableLane.cancel();
  cancelMargin();
  dropFamily(true);
  stopped.value = true;
};

/** Starts following the putt; returns the function that stops. */
export const followPutt = (): (() => void) => {
  let frame = 0;
  const stop = effect(() => {
    // Read everything the answer depends on, then work once per frame however many of them changed.
    void [putt.value, knownPlayer.value, diePace.value, firmPace.value, problem.value];
    batch(() => {
      stopped.value = false;
      dropMargin(putt.value.surface);
      dropFamily();
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
    dropFamily(true);
  };
};
