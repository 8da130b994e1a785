/**
 * One person's reading practice: which stage, which set, which answer; every committed answer kept at once.
 * Answers for: the order of things, and when the truth is shown. Leaves out: keeping (keeping.ts), what an answer cost
 * (workOut.ts), what is shown (reveal.ts), drawing, words, statistics. What it needs of the world (clock, seeds, storage, odds) is handed in, so that tests can stand in for it.
 */
import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { type Judged, type PaceChoice, type Question, SET_SIZE, type Slopes } from '../../../sim/index.ts';
import { type FixedOffer, isAdaptive, type Offer, taskOf } from '../../state/readOffers.ts';
import { localDay } from '../../store/day.ts';
import { mergeSets } from '../../store/readSetMerge.ts';
import type { KeptAnswer, KeptSet } from '../../store/schema.ts';
import { answerTo, askedOf, type Feedback, type Seen, type Stage, seenIn } from './asked.ts';
import { createKeeping, type OpenedReadStore } from './keeping.ts';
import { revealOf } from './reveal.ts';
import { type CostWorld, createWorkingOut } from './workOut.ts';

export interface World extends CostWorld {
  openStore(): Promise<OpenedReadStore>;
  /** ms since 1970 */
  now(): number;
  newId(): string;
  newSeed(): string;
  /** Rejects when the drill holds no putt that can be asked. */
  makeSet(offer: FixedOffer, seed: string): Promise<readonly Question[]>;
  chooseNext(seen: Seen, seed: string): Promise<Judged>;
}

export interface Session {
  readonly stage: Signal<Stage>;
  /** m, positive left: the aim being chosen. */
  readonly aim: Signal<number>;
  /** The slopes being chosen. */
  readonly guess: Signal<Slopes>;
  /** For the next set that is started. */
  readonly feedback: Signal<Feedback>;
  readonly sets: Signal<readonly KeptSet[]>;
  readonly unreadable: Signal<number>;
  readonly ready: Signal<boolean>;
  readonly storageProblem: Signal<string | undefined>;
  readonly costProblem: ReadonlySignal<boolean>;
  readonly saved: ReadonlySignal<boolean>;
  /** The id of the set whose putts are being drawn. */
  readonly making: Signal<string | undefined>;
  readonly makingProblem: Signal<string | undefined>;
  open(): Promise<void>;
  /** Settles when the first putt is asked; does nothing while another set is being drawn. */
  start(offer: Offer): Promise<void>;
  resume(set: KeptSet): void;
  /** Commits to the aim, to a pace, to the slopes: what the question asks for. */
  commit(): void;
  choose(chosen: PaceChoice): void;
  estimate(): void;
  next(): void;
  /** From looking at the answers of a set one by one to its summary. */
  toSummary(): void;
  leave(): void;
  look(set: KeptSet): void;
}

/** Where the slope sliders begin: gentle, and level along the line, as neither steep nor flat ground is. */
const FIRST_GUESS: Slopes = { total: 0.02, along: 0 };

export const createSession = (world: World): Session => {
  const stage = signal<Stage>({ kind: 'choosing' });
  const aim = signal(0);
  const guess = signal(FIRST_GUESS);
  const feedback = signal<Feedback>('each');
  const making = signal<string | undefined>(undefined);
  const makingProblem = signal<string | undefined>(undefined);
  const keeping = createKeeping(world.openStore, (set) => {
    const now = stage.peek();
    // The putt being asked may be known to this page alone: it is kept with its answer.
    if (now.kind !== 'choosing' && now.set.id === set.id)
      stage.value = { ...now, set: mergeSets(set, now.set) };
  });
  const { sets, keep, newest } = keeping;
  const { costProblem, begin: beginWork, workOut, catchUp } = createWorkingOut(world, keeping);

  /** The next question of a set that grows, asked for once and kept until it comes. */
  let drawn: { readonly key: string; readonly set: Promise<KeptSet> } | undefined;
  const grow = (set: KeptSet): Promise<KeptSet> => {
    const number = set.questions.length + 1;
    const key = `${set.id} ${number}`;
    if (drawn?.key !== key) {
      const all = sets.peek().some(({ id }) => id === set.id) ? sets.peek() : [set, ...sets.peek()];
      const found = world.chooseNext(
        seenIn(all.map((one) => (one.id === set.id ? set : one))),
        `${set.seed} ${number}`,
      );
      const grown = found.then(
        (question): KeptSet => ({
          ...set,
          questions: [...set.questions, { ...question, number, group: number - 1 }],
        }),
      );
      grown.catch(() => undefined);
      drawn = { key, set: grown };
    }
    return drawn.set;
  };

  const show = (set: KeptSet, question: Question): void => {
    aim.value = 0;
    guess.value = FIRST_GUESS;
    const asked = askedOf(set, question);
    stage.value = { kind: 'asking', ...asked };
    if (set.kind === 'paces') beginWork(asked);
  };

  /** Asks the next question, or shows what came of the set; `asker` is the stage that wants it. */
  const ask = async (set: KeptSet, asker: Stage): Promise<void> => {
    const waiting = set.questions.find((one) => answerTo(set, one) === undefined);
    if (waiting !== undefined) return show(set, waiting);
    if (set.questions.length >= set.size) return end(set);
    making.value = set.drillId;
    try {
      const grown = await grow(set);
      const now = stage.peek();
      // The person has gone elsewhere while the putt was drawn.
      if (now.kind !== asker.kind || ('set' in now && now.set.id !== set.id)) return;
      // Answers may have got their cost meanwhile.
      show({ ...newest(set), questions: grown.questions }, grown.questions[grown.questions.length - 1]);
    } catch {
      drawn = undefined;
      makingProblem.value = `No putt could be drawn for “${set.drillName}”: try again, or choose another drill.`;
    } finally {
      making.value = undefined;
    }
  };

  const reveal = (set: KeptSet, question: Question, answer: KeptAnswer): void => {
    const asked = askedOf(set, question);
    stage.value = { kind: 'revealed', ...asked, revealed: revealOf(question, answer, asked.putt) };
  };
  const toSummary = (set: KeptSet): void => {
    stage.value = { kind: 'summary', set };
  };
  /** The last question is answered: the summary, or the answers one by one where none has been shown yet. */
  const end = (done: KeptSet): void => {
    const now = stage.peek();
    const set = newest(done);
    const [first] = set.questions;
    const answer = answerTo(set, first);
    if (set.feedback === 'end' && now.kind === 'asking' && answer !== undefined) reveal(set, first, answer);
    else toSummary(set);
  };

  const answerWith = (given: KeptAnswer): void => {
    const now = stage.peek();
    // A second answer while the next putt is being drawn is none.
    if (now.kind !== 'asking' || now.set.kind !== given.kind || answerTo(now.set, now.question)) return;
    const set = { ...now.set, answers: [...now.set.answers, given] };
    const asked = { ...now, set };
    if (set.feedback === 'each') reveal(set, now.question, given);
    else stage.value = asked;
    void keep(set);
    if (set.questions.length < set.size && set.questions.length === set.answers.length) void grow(set);
    workOut(asked, given);
    if (set.feedback === 'end') void ask(set, asked);
  };
  const given = (): { readonly number: number; readonly answeredAt: number } => {
    const now = stage.peek();
    return { number: now.kind === 'asking' ? now.question.number : 0, answeredAt: world.now() };
  };

  const start = async (offer: Offer): Promise<void> => {
    if (making.peek() !== undefined) return;
    makingProblem.value = undefined;
    making.value = offer.id;
    const seed = world.newSeed();
    const begin = (questions: readonly Question[]): KeptSet => {
      const now = world.now();
      return {
        id: world.newId(),
        kind: taskOf(offer),
        feedback: feedback.peek(),
        size: isAdaptive(offer) ? SET_SIZE : questions.length,
        drillId: offer.id,
        drillName: offer.name,
        seed,
        startedAt: now,
        day: localDay(now),
        questions: [...questions],
        answers: [],
      };
    };
    const from = stage.peek();
    if (isAdaptive(offer)) {
      await keeping.open();
      return ask(begin([]), from);
    }
    let questions: readonly Question[];
    try {
      questions = await world.makeSet(offer as FixedOffer, seed);
    } catch {
      makingProblem.value = `No putts could be drawn for “${offer.name}”: try again, or choose another drill.`;
      return;
    } finally {
      making.value = undefined;
    }
    // The person has gone elsewhere while the putts were drawn.
    if (stage.peek().kind !== 'choosing') return;
    // Not kept yet: a set looked at and left without an answer is no record.
    await ask(begin(questions), from);
  };

  return {
    stage,
    aim,
    guess,
    feedback,
    sets,
    unreadable: keeping.unreadable,
    ready: keeping.ready,
    storageProblem: keeping.storageProblem,
    costProblem,
    saved: keeping.saved,
    making,
    makingProblem,
    async open() {
      await keeping.open();
    },
    start,
    resume(set) {
      catchUp(set);
      void ask(set, stage.peek());
    },
    commit: () => answerWith({ kind: 'aim', ...given(), aim: aim.peek() }),
    choose: (chosen) => answerWith({ kind: 'paces', ...given(), chosen }),
    estimate: () => answerWith({ kind: 'slope', ...given(), ...guess.peek() }),
    next() {
      const now = stage.peek();
      if (now.kind !== 'revealed') return;
      const { set, question } = now;
      if (set.feedback === 'each') {
        void ask(set, now);
        return;
      }
      const following = set.questions.find(({ number }) => number === question.number + 1);
      const answer = following && answerTo(set, following);
      if (following === undefined || answer === undefined) toSummary(set);
      else reveal(set, following, answer);
    },
    toSummary() {
      const now = stage.peek();
      if (now.kind === 'revealed') toSummary(now.set);
    },
    leave() {
      stage.value = { kind: 'choosing' };
    },
    look(set) {
      catchUp(set);
      stage.value = set.answers.length > 0 ? { kind: 'summary', set } : { kind: 'choosing' };
    },
  };
};
