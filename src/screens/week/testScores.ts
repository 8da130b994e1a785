/**
 * Which kept scores of the tested drill are the test, and which its repetition. Pure. Answers for: like with like (version, ground), and
 * each score counting once at most. Leaves out: judging them (sim/training/what-moved.ts), words.
 * The test: the plan's own score of it, and every other up to its day. The repetition: the plan's own, and every other from the day on which
 * it was due, or done. What lies between is practice for the test, and counts as neither.
 */
import type { GroundKind, PuttingDrill } from '../../../sim/index.ts';
import { likeScores } from '../../state/likeScores.ts';
import { drillOf } from '../../state/plans/names.ts';
import { testedIn } from '../../state/plans/plan.ts';
import type { Plan } from '../../store/planSchema.ts';
import { AGAIN, scoreId } from '../../store/planScores.ts';
import type { KeptResult } from '../../store/recordSchema.ts';

export interface TestScores {
  readonly drill: PuttingDrill;
  readonly ground: GroundKind;
  readonly test: readonly KeptResult[];
  readonly again: readonly KeptResult[];
  /** Neither. */
  readonly between: readonly KeptResult[];
}

/** @param results of all drills @returns undefined when the plan has no test of a drill that is known */
export const testScores = (plan: Plan, results: readonly KeptResult[]): TestScores | undefined => {
  const tested = testedIn(plan);
  const drill = tested && drillOf(tested.item);
  if (plan.test === undefined || tested === undefined || drill === undefined) return undefined;
  const { ground } = tested.session;
  const like = likeScores(drill, results, ground);
  const [own, ownAgain] = [scoreId(plan.id, tested.item.id), scoreId(plan.id, AGAIN)];
  const testDay = like.find(({ id }) => id === own)?.day ?? tested.item.doneOn ?? tested.session.day;
  const againDay = plan.test.again?.day ?? plan.test.againOn;
  const placeOf = ({ id, day }: KeptResult): 'test' | 'again' | 'between' =>
    id === own || (id !== ownAgain && day <= testDay)
      ? 'test'
      : id === ownAgain || day >= againDay
        ? 'again'
        : 'between';
  const of = (place: 'test' | 'again' | 'between'): KeptResult[] =>
    like.filter((one) => placeOf(one) === place);
  return { drill, ground, test: of('test'), again: of('again'), between: of('between') };
};
