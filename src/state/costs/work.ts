/**
 * Keeps the table of costs in step with the question: worked out in a worker, with progress, stopped when asked; tables already made
 * are kept. Leaves out: what is asked (question.ts), what follows from a table (answer.ts).
 */
import { batch, effect, signal } from '@preact/signals';
import { proxy } from 'comlink';
import type { CostTable } from '../../../sim/index.ts';
import { createLane } from '../../worker/client.ts';
import { type CostQuestion, GREENS, keyOf, question } from './question.ts';

export interface ShownCosts {
  readonly question: CostQuestion;
  readonly table: CostTable;
}

/** The last table; undefined only before the first. */
export const shown = signal<ShownCosts | undefined>(undefined);
/** The question has moved on since. */
export const behind = signal(true);
/** Share of the work done, 0 to 1; undefined: nothing is being worked out. */
export const work = signal<number | undefined>(undefined);
export const stopped = signal(false);
export const failure = signal<string | undefined>(undefined);

const lane = createLane({ interrupt: true });
/** Quiet time before work starts, ms: a slider on its way should not start seconds of work at every step. */
const PAUSE = 500;
const MOST_TABLES = 12;
const kept = new Map<string, ShownCosts>();

let timer: ReturnType<typeof setTimeout> | undefined;
/** The work that is wanted; what runs for another is not told of. */
let current: object | undefined;

const show = (found: ShownCosts): void =>
  batch(() => {
    shown.value = found;
    behind.value = false;
    work.value = undefined;
    failure.value = undefined;
  });

const halt = (): void => {
  clearTimeout(timer);
  current = undefined;
  lane.cancel();
  work.value = undefined;
};

const run = async (asked: CostQuestion): Promise<void> => {
  const mine = {};
  current = mine;
  work.value = 0;
  const told = proxy((share: number) => {
    if (current === mine) work.value = share;
  });
  try {
    let table: CostTable | undefined;
    const onTable = proxy((made: CostTable) => {
      table = made;
      // The middle player's stands first; it is not that of all who may be meant, and is marked so by the work still shown.
      if (current === mine) shown.value = { question: asked, table: made };
    });
    await lane.latest(async (engine) => {
      await engine.costTable(asked.likely, { usual: asked.usual, mix: GREENS[asked.greens] }, told, onTable);
      return true;
    });
    if (table === undefined || current !== mine) return;
    current = undefined;
    const found = { question: asked, table };
    kept.set(keyOf(asked), found);
    const [oldest] = kept.keys();
    if (kept.size > MOST_TABLES && oldest !== undefined) kept.delete(oldest);
    show(found);
  } catch (cause) {
    if (current !== mine) return;
    current = undefined;
    work.value = undefined;
    failure.value = `The engine could not answer: ${cause instanceof Error ? cause.message : String(cause)}. Change an error below to try again.`;
  }
};

export const stopWork = (): void => {
  halt();
  stopped.value = true;
};

export const resumeWork = (): void => {
  stopped.value = false;
  void run(question.peek());
};

/** Starts following the question; returns the function that stops. */
export const followCosts = (): (() => void) => {
  const stop = effect(() => {
    const asked = question.value;
    halt();
    stopped.value = false;
    const found = kept.get(keyOf(asked));
    if (found !== undefined) {
      show(found);
      return;
    }
    behind.value = true;
    timer = setTimeout(() => void run(asked), shown.peek() === undefined ? 0 : PAUSE);
  });
  return () => {
    stop();
    halt();
  };
};
