/**
 * What the record says since a plan began, beside the time before. Answers for: which records belong to which. Leaves out: which scores are
 * the test and which its repetition (testScores.ts), judging (sim).
 */
import {
  type Benchmark,
  choosePutts,
  type DatedRead,
  type Moved,
  strokesGained,
  type WeekPeriod,
  whatMoved,
} from '../../../sim/index.ts';
import { testedIn } from '../../state/plans/plan.ts';
import { reviewRecord } from '../../state/reviewRecord.ts';
import { datedReads } from '../../store/datedReads.ts';
import type { Plan } from '../../store/planSchema.ts';
import type { KeptResult } from '../../store/recordSchema.ts';
import type { AllRecords } from '../../store/records.ts';
import type { KeptSet } from '../../store/schema.ts';
import { testScores } from './testScores.ts';

export interface MovedQuestion {
  readonly plan: Plan;
  readonly records: AllRecords;
  readonly readSets: readonly KeptSet[];
  /** Scores of drills, of the person's own. */
  readonly results: readonly KeptResult[];
  readonly benchmark: Benchmark;
}

/** Rounds and reads of the plan's first day count as since. */
export function movedSince({ plan, records, readSets, results, benchmark }: MovedQuestion): Moved[] {
  const record = reviewRecord(records);
  const chosen = choosePutts(record, { kind: 'rounds' });
  const gained = strokesGained(benchmark, chosen.holes);
  const reads = readSets.flatMap(datedReads);
  const scores = testScores(plan, results);

  const during = (since: boolean): WeekPeriod => {
    const isIn = (day: string): boolean => day >= plan.start === since;
    const dayOf = (roundId: string): string => record.roundOf.get(roundId)?.day ?? '';
    const rounds = gained.rounds.filter(({ roundId }) => isIn(dayOf(roundId)));
    return {
      rounds: { values: rounds.map(({ per18 }) => per18), weights: rounds.map(({ holes }) => holes) },
      putts: chosen.struck
        .filter(({ putt }) => isIn(dayOf(putt.roundId)))
        .map(({ putt }) => ({ holed: putt.holed, benchmarkShare: benchmark.holedAt(putt.distance) })),
      reads: reads.filter(({ day }) => isIn(day)) satisfies readonly DatedRead[],
      tests: (since ? scores?.again : scores?.test) ?? [],
    };
  };
  const expected = testedIn(plan)?.item.expected;
  const test =
    scores !== undefined && expected !== undefined && 'sd' in expected
      ? { drill: scores.drill, expectedSd: expected.sd }
      : undefined;
  return whatMoved(test, during(false), during(true));
}
