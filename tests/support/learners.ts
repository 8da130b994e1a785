/** Simulated players of the reading screen: a read is off by a share of the break, and the hand by half an inch. */
import { chooseNext } from '../../sim/training/choose-next.ts';
import type { Judged } from '../../sim/training/putt-question.ts';
import type { SeenRead } from '../../sim/training/reader-model.ts';
import { normals } from './normals.ts';

/** Share of the break by which a read is off. @param normal a standard normal number, anew at each call */
export type Eye = (question: Judged, normal: () => number) => number;

/** What a hand adds to any aim, m (about half an inch). */
export const HAND = 0.012;

export const aimOf = (question: Judged, eye: Eye, normal: () => number): number =>
  question.trueAim * (1 + eye(question, normal)) + HAND * normal();

/** Answers of such a player to the questions chosen for them. */
export const practise = (eye: Eye, answers: number, seed: string): SeenRead[] => {
  const normal = normals(`learner ${seed}`);
  const seen: SeenRead[] = [];
  while (seen.length < answers) {
    const question = chooseNext(seen, {}, seed);
    seen.push({ question, aim: aimOf(question, eye, normal) });
  }
  return seen;
};
