/**
 * An answer that is worked out in a worker and kept in step with its question: newest question first, what is shown marked as behind until
 * its own answer is there, first answers that sharpen, progress, stop and go on, failure in one sentence, answers kept by their question.
 * Leaves out: questions, words for progress.
 */
import { batch, effect, type ReadonlySignal, signal } from '@preact/signals';
import { createLane, type Lane, type LaneOptions } from '../worker/client.ts';

/** How one piece of work tells of itself; what it tells after another was wanted is not heard. */
export interface JobRun<Found> {
  readonly lane: Lane;
  /** @param share of the work done, 0 to 1 */
  readonly told: (share: number) => void;
  /** An answer that is not the last yet: shown, and still behind. */
  readonly first: (found: Found) => void;
}

export interface JobOptions<Question, Found> extends LaneOptions {
  /** Same key, same answer. */
  readonly keyOf: (question: Question) => string;
  /** Works it out. @returns undefined: there is nothing to show */
  readonly ask: (question: Question, run: JobRun<Found>) => Promise<Found | undefined>;
  /** Answers kept for when their question comes again. */
  readonly most: number;
  /** Questions that are not to be asked: their answer stands elsewhere. */
  readonly isKnown?: (question: Question) => boolean;
  /** Quiet time before work on a changed question starts, ms: a slider on its way should not start work at every step. Default none. */
  readonly pause?: number;
  /** What to do when the engine fails, a sentence. */
  readonly mend: string;
}

export interface Shown<Question, Found> {
  readonly question: Question;
  readonly found: Found;
}

export interface Job<Question, Found> {
  /** The last answer, whatever it is of; undefined only before the first. */
  readonly shown: ReadonlySignal<Shown<Question, Found> | undefined>;
  /** The question has moved on since, or a better answer is on its way. */
  readonly behind: ReadonlySignal<boolean>;
  /** Share of the work done, 0 to 1; undefined: nothing is being worked out. */
  readonly work: ReadonlySignal<number | undefined>;
  readonly stopped: ReadonlySignal<boolean>;
  readonly failure: ReadonlySignal<string | undefined>;
  stop(): void;
  resume(): void;
  /** Starts following a question (undefined: none yet); returns the function that stops. */
  follow(): () => void;
}

export const createJob = <Question, Found>(
  asked: ReadonlySignal<Question | undefined>,
  { keyOf, ask, most, isKnown = () => false, pause = 0, mend, ...lanes }: JobOptions<Question, Found>,
): Job<Question, Found> => {
  const shown = signal<Shown<Question, Found> | undefined>(undefined);
  const behind = signal(true);
  const work = signal<number | undefined>(undefined);
  const stopped = signal(false);
  const failure = signal<string | undefined>(undefined);
  const lane = createLane(lanes);
  const kept = new Map<string, Shown<Question, Found>>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** The work that is wanted. */
  let current: object | undefined;

  const show = (found: Shown<Question, Found>): void =>
    batch(() => {
      shown.value = found;
      behind.value = false;
    });

  const halt = (): void => {
    clearTimeout(timer);
    current = undefined;
    work.value = undefined;
  };
  const end = (): void => {
    halt();
    lane.cancel();
  };

  const run = async (question: Question): Promise<void> => {
    const mine = {};
    current = mine;
    batch(() => {
      work.value = 0;
      failure.value = undefined;
    });
    const whileMine =
      <Told>(hear: (told: Told) => void) =>
      (told: Told): void => {
        if (current === mine) hear(told);
      };
    try {
      const found = await ask(question, {
        lane,
        told: whileMine((share: number) => {
          work.value = share;
        }),
        first: whileMine((one: Found) => {
          shown.value = { question, found: one };
        }),
      });
      if (current !== mine) return;
      current = undefined;
      batch(() => {
        work.value = undefined;
        if (found === undefined) return;
        const answer = { question, found };
        kept.set(keyOf(question), answer);
        const [oldest] = kept.keys();
        if (kept.size > most && oldest !== undefined) kept.delete(oldest);
        show(answer);
      });
    } catch (cause) {
      if (current !== mine) return;
      current = undefined;
      batch(() => {
        work.value = undefined;
        failure.value = `The engine could not answer: ${cause instanceof Error ? cause.message : String(cause)}. ${mend}`;
      });
    }
  };

  return {
    shown,
    behind,
    work,
    stopped,
    failure,
    stop() {
      end();
      stopped.value = true;
    },
    resume() {
      stopped.value = false;
      const question = asked.peek();
      if (question !== undefined) void run(question);
    },
    follow() {
      const leave = effect(() => {
        const question = asked.value;
        batch(() => {
          // Short work is left to end: its worker is soon free for the next, and a new one would take longer.
          if (lanes.interrupt) end();
          else halt();
          stopped.value = false;
          failure.value = undefined;
        });
        if (question === undefined) return;
        const found = kept.get(keyOf(question));
        if (found !== undefined) {
          show(found);
          return;
        }
        behind.value = true;
        if (isKnown(question)) return;
        timer = setTimeout(() => void run(question), shown.peek() === undefined ? 0 : pause);
      });
      return () => {
        leave();
        end();
      };
    },
  };
};
