/** What is shown of a question once it is answered, worked out from question and answer alone: the same on the day and later. */
import {
  type AimScore,
  isHit,
  type Line,
  type PaceChoice,
  type Putt,
  puttOfQuestion,
  type Question,
  type Read,
  type Roll,
  readPutt,
  rollBall,
  type Slopes,
  scoreAim,
  slopesOf,
} from '../../../sim/index.ts';
import type { KeptAnswer } from '../../store/schema.ts';

export interface RevealedAim {
  readonly kind: 'aim';
  readonly line: Line;
  readonly roll: Roll;
  /** The roll of the true line with the hole open, x, y, t triples. */
  truePath(): Float64Array;
  readonly score: AimScore;
  readonly aim: number;
  /** undefined: a question of before there were hits. */
  readonly hit: boolean | undefined;
}
export interface RevealedPaces {
  readonly kind: 'paces';
  readonly chosen: PaceChoice;
  readonly die: Line;
  readonly firm: Line;
}
export interface RevealedSlope {
  readonly kind: 'slope';
  readonly line: Line;
  readonly truth: Slopes;
  readonly guess: Slopes;
}
export type Revealed = RevealedAim | RevealedPaces | RevealedSlope;

/** Only putts with a line are asked. */
const lineOf = (read: Read): Line => {
  if (read.status !== 'ok') throw new Error(read.reason);
  return read;
};

export const revealOf = (
  question: Question,
  answer: KeptAnswer,
  putt: Putt = puttOfQuestion(question),
): Revealed => {
  const line = lineOf(readPutt(putt, question.pace));
  if (answer.kind === 'aim') {
    const { aim } = answer;
    return {
      kind: 'aim',
      line,
      roll: rollBall(putt, Math.atan2(aim, question.length), line.speed),
      truePath: () => rollBall(putt, line.start, line.speed).path,
      score: scoreAim(question.trueAim, aim),
      aim,
      hit: isHit(question, aim),
    };
  }
  if (answer.kind === 'paces')
    return {
      kind: 'paces',
      chosen: answer.chosen,
      die: line,
      firm: lineOf(readPutt(putt, question.firmPace ?? question.pace)),
    };
  return {
    kind: 'slope',
    line,
    truth: slopesOf(question),
    guess: { total: answer.total, along: answer.along },
  };
};
