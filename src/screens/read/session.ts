/**
 * One person's reading practice: which stage, which set, which aim; every committed answer kept at once.
 * Answers for: the order of things and for losing nothing. Leaves out: drawing, words, statistics. What it needs of the
 * world (clock, seeds, storage, odds) is handed in, so that tests can stand in for it.
 */
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import {
  type AimScore,
  type Line,
  type Player,
  type Putt,
  puttOfQuestion,
  type Question,
  type ReadDrill,
  type Roll,
  readPutt,
  rollBall,
  scoreAim,
} from '../../../sim/index.ts';
import { localDay } from '../../store/day.ts';
import { mergeSets } from '../../store/gate.ts';
import type { ReadStore } from '../../store/readSets.ts';
import { isFinished, type KeptAnswer, type KeptSet } from '../../store/schema.ts';
import type { AimCost } from '../../worker/reading.ts';

export interface Asked {
  readonly set: KeptSet;
  readonly question: Question;
  readonly putt: Putt;
}

/** What is shown only after the commitment. */
export interface Revealed {
  readonly line: Line;
  readonly roll: Roll;
  readonly score: AimScore;
  readonly aim: number;
}

export type Stage =
  | { readonly kind: 'choosing' }
  | ({ readonly kind: 'asking' } & Asked)
  | ({ readonly kind: 'revealed'; readonly revealed: Revealed } & Asked)
  | { readonly kind: 'summary'; readonly set: KeptSet };

export interface OpenedReadStore {
  readonly store: ReadStore;
  /** A sentence for the person when sets will not outlive the visit. */
  readonly problem: string | undefined;
}

export interface World {
  openStore(): Promise<OpenedReadStore>;
  /** ms since 1970 */
  now(): number;
  newId(): string;
  newSeed(): string;
  /** Rejects when the drill holds no putt that can be asked. */
  makeSet(drill: ReadDrill, seed: string): Promise<readonly Question[]>;
  /** Rejects when it cannot be worked out: the answer stands without it. */
  costOf(putt: Putt, pace: number, player: Player, aim: number): Promise<AimCost>;
  player(): Player;
}

export interface Session {
  readonly stage: Signal<Stage>;
  /** m, positive left: the aim being chosen. */
  readonly aim: Signal<number>;
  readonly sets: Signal<readonly KeptSet[]>;
  readonly unreadable: Signal<number>;
  /** false until the records have been looked at. */
  readonly ready: Signal<boolean>;
  readonly storageProblem: Signal<string | undefined>;
  readonly costProblem: Signal<boolean>;
  /** Whether everything committed is on the device (or in memory, where the device refuses and the page says so). */
  readonly saved: ReadonlySignal<boolean>;
  /** The id of the drill whose putts are being drawn. */
  readonly making: Signal<string | undefined>;
  readonly makingProblem: Signal<string | undefined>;
  open(): Promise<void>;
  /** Settles when the first putt is asked; does nothing while another set is being drawn. */
  start(drill: ReadDrill): Promise<void>;
  resume(set: KeptSet): void;
  commit(): void;
  next(): void;
  leave(): void;
  look(set: KeptSet): void;
}

export const answerTo = (set: KeptSet, question: Question): KeptAnswer | undefined =>
  set.answers.find(({ number }) => number === question.number);

export const createSession = (world: World): Session => {
  const stage = signal<Stage>({ kind: 'choosing' });
  const aim = signal(0);
  const sets = signal<readonly KeptSet[]>([]);
  const unreadable = signal(0);
  const ready = signal(false);
  const storageProblem = signal<string | undefined>(undefined);
  const costProblem = signal(false);
  /** Writes the device has not confirmed yet, and the one it refused. */
  const pending = signal(0);
  const refused = signal(false);
  const saved = computed(() => pending.value === 0 && !refused.value);
  const making = signal<string | undefined>(undefined);
  const makingProblem = signal<string | undefined>(undefined);
  let opening: Promise<ReadStore> | undefined;
  /** What open() found wrong with the store, for as long as the visit lasts. */
  let lasting: string | undefined;

  /** Puts a newer version of a set wherever the page holds an older one. */
  const spread = (set: KeptSet): void => {
    const known = sets.peek().some(({ id }) => id === set.id);
    sets.value = known ? sets.peek().map((one) => (one.id === set.id ? set : one)) : [set, ...sets.peek()];
    const now = stage.peek();
    if (now.kind !== 'choosing' && now.set.id === set.id) stage.value = { ...now, set };
  };

  const openStore = (): Promise<ReadStore> => {
    opening ??= (async () => {
      const opened = await world.openStore();
      lasting = opened.problem;
      try {
        const found = await opened.store.list();
        // Begun before the records were open: keep() is waiting to add it.
        const begun = sets.peek().filter(({ id }) => !found.sets.some((one) => one.id === id));
        sets.value = [...begun, ...found.sets];
        unreadable.value = found.unreadable;
      } catch {
        lasting = 'Your earlier sets could not be read: load the page again to try once more.';
      }
      storageProblem.value = lasting;
      ready.value = true;
      return opened.store;
    })();
    return opening;
  };

  const keep = async (set: KeptSet): Promise<void> => {
    spread(set);
    pending.value += 1;
    try {
      const store = await openStore();
      const kept = await store.keep(set);
      // The page may have moved on while the device was writing.
      const newer = sets.peek().find(({ id }) => id === kept.id);
      spread(newer === undefined ? kept : mergeSets(kept, newer));
      storageProblem.value = lasting;
      refused.value = false;
    } catch {
      refused.value = true;
      storageProblem.value =
        'The last answer could not be saved on this device (full or forbidden storage). It is kept on this page and saved again with the next one: free some space before you close the page.';
    } finally {
      pending.value -= 1;
    }
  };

  const ask = (set: KeptSet): void => {
    const question = set.questions.find((one) => answerTo(set, one) === undefined);
    aim.value = 0;
    stage.value =
      question === undefined
        ? { kind: 'summary', set }
        : { kind: 'asking', set, question, putt: puttOfQuestion(question) };
  };

  // One at a time: a newer question must not take the place of an older one's cost.
  let costs = Promise.resolve();
  const workOutCost = ({ set, question, putt }: Asked, answer: KeptAnswer): void => {
    costs = costs.then(async () => {
      try {
        const cost = await world.costOf(putt, question.pace, world.player(), answer.aim);
        const newest = sets.peek().find(({ id }) => id === set.id) ?? set;
        const answers = newest.answers.map((one) =>
          one.number === answer.number ? { ...one, ...cost } : one,
        );
        costProblem.value = false;
        await keep({ ...newest, answers });
      } catch {
        costProblem.value = true;
      }
    });
  };

  return {
    stage,
    aim,
    sets,
    unreadable,
    ready,
    storageProblem,
    costProblem,
    saved,
    making,
    makingProblem,
    async open() {
      await openStore();
    },
    async start(drill) {
      if (making.peek() !== undefined) return;
      making.value = drill.id;
      makingProblem.value = undefined;
      const seed = world.newSeed();
      let questions: readonly Question[];
      try {
        questions = await world.makeSet(drill, seed);
      } catch {
        makingProblem.value = `No putts could be drawn for “${drill.name}”: try again, or choose another drill.`;
        return;
      } finally {
        making.value = undefined;
      }
      // The person has gone elsewhere while the putts were drawn.
      if (stage.peek().kind !== 'choosing') return;
      const now = world.now();
      const set: KeptSet = {
        id: world.newId(),
        drillId: drill.id,
        drillName: drill.name,
        seed,
        startedAt: now,
        day: localDay(now),
        questions: [...questions],
        answers: [],
      };
      // Not kept yet: a set looked at and left without an answer is no record.
      ask(set);
    },
    resume: ask,
    commit() {
      const now = stage.peek();
      if (now.kind !== 'asking') return;
      const { question, putt } = now;
      const read = readPutt(putt, question.pace);
      // makeReadSet asks only putts with a line.
      if (read.status !== 'ok') throw new Error(read.reason);
      const chosen = aim.peek();
      const answer: KeptAnswer = { number: question.number, aim: chosen, answeredAt: world.now() };
      const set = { ...now.set, answers: [...now.set.answers, answer] };
      const revealed = {
        line: read,
        roll: rollBall(putt, Math.atan2(chosen, question.length), read.speed),
        score: scoreAim(question.trueAim, chosen),
        aim: chosen,
      };
      stage.value = { kind: 'revealed', set, question, putt, revealed };
      void keep(set);
      workOutCost({ set, question, putt }, answer);
    },
    next() {
      const now = stage.peek();
      if (now.kind === 'revealed') ask(now.set);
    },
    leave() {
      stage.value = { kind: 'choosing' };
    },
    look(set) {
      stage.value =
        isFinished(set) || set.answers.length > 0 ? { kind: 'summary', set } : { kind: 'choosing' };
    },
  };
};
