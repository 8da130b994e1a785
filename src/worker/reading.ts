/** The reading screen's worker: draws putts and works out what an answer costs. A switch that calls sim. */
import { expose } from 'comlink';
import {
  chooseNext,
  comparePaces,
  holedShare,
  type Judged,
  makePaceSet,
  makeReadSet,
  makeSlopeSet,
  type NextPutts,
  type Player,
  type Putt,
  type PuttsByPace,
  prepareNextPutts,
  puttOfQuestion,
  type Question,
  type ReadDrill,
  type SeenRead,
} from '../../sim/index.ts';

export interface AimCost {
  /** Chances of holing from the person's aim and from the true one, without any error of reading, 0 to 1. */
  readonly holedAtAim: number;
  readonly holedAtTrue: number;
}

export interface ReadingWorker {
  /** Throws when the drill holds no putt that can be asked. */
  makeSet(drill: ReadDrill, seed: string): Question[];
  makePaceSet(seed: string): Question[];
  makeSlopeSet(seed: string): Question[];
  /** @param answers of adaptive sets @param earlier other reads, both oldest first */
  chooseNext(answers: readonly SeenRead[], earlier: readonly SeenRead[], seed: string): Judged;
  /** @param pace m past @param aim m, positive left */
  costOf(putt: Putt, pace: number, player: Player, aim: number): AimCost;
  /** Expected putts at the two paces of a question. */
  puttsOf(question: Question, player: Player): PuttsByPace;
}

/** Tables of next putts by green and player, newest last: a set has two greens, and there may be an earlier set to catch up with. */
const tables = new Map<string, NextPutts>();
const MOST_TABLES = 4;

const tableOf = (question: Question, putt: Putt, player: Player): NextPutts => {
  const key = JSON.stringify([question.ground, question.greenSpeed, player]);
  const table = tables.get(key) ?? prepareNextPutts(putt, player);
  tables.delete(key);
  tables.set(key, table);
  for (const [oldest] of tables) if (tables.size > MOST_TABLES) tables.delete(oldest);
  return table;
};

const worker: ReadingWorker = {
  makeSet: makeReadSet,
  makePaceSet,
  makeSlopeSet,
  chooseNext: (answers, earlier, seed) => chooseNext(answers, { earlier }, seed),
  costOf: (putt, pace, player, aim) => ({
    holedAtAim: holedShare(putt, pace, player, aim),
    holedAtTrue: holedShare(putt, pace, player),
  }),
  puttsOf(question, player) {
    const putt = puttOfQuestion(question);
    const paces = [question.pace, question.firmPace ?? question.pace];
    const [die, firm] = comparePaces(putt, paces, player, tableOf(question, putt, player)).rows;
    if (die?.odds === undefined || firm?.odds === undefined)
      throw new Error('Got a pace without a line, expected both to have one: draw another putt.');
    return { die: die.odds.expectedPutts, firm: firm.odds.expectedPutts };
  },
};

expose(worker);
