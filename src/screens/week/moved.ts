/** What the record says since a plan began, beside the time before. Answers for: which records belong to which. Leaves out: judging (sim). */
import {
  type Benchmark,
  choosePutts,
  type DrillResult,
  type Moved,
  type SeenRead,
  strokesGained,
  type WeekPeriod,
  whatMoved,
} from '../../../sim/index.ts';
import { localDay } from '../../store/day.ts';
import type { AllRecords } from '../../store/records.ts';
import { answeredOf, type KeptSet } from '../../store/schema.ts';
import { reviewRecord } from '../review/record.ts';
import { drillOf } from './names.ts';
import { testedIn } from './plan.ts';
import type { Plan } from './schema.ts';

export interface MovedQuestion {
  readonly plan: Plan;
  readonly records: AllRecords;
  readonly readSets: readonly KeptSet[];
  readonly benchmark: Benchmark;
}

/** Rounds and reads of the plan's first day count as since. */
export function movedSince({ plan, records, readSets, benchmark }: MovedQuestion): Moved[] {
  const record = reviewRecord(records);
  const chosen = choosePutts(record, { kind: 'rounds' });
  const gained = strokesGained(benchmark, chosen.holes);
  const reads = readSets.flatMap((set) => answeredOf(set, 'aim'));
  const tested = testedIn(plan);
  const drill = tested && drillOf(tested.item);

  const scores = (score: number | undefined): DrillResult[] =>
    drill === undefined || tested === undefined || score === undefined
      ? []
      : [{ drillId: drill.id, version: drill.version, ground: tested.session.ground, score }];
  const during = (since: boolean): WeekPeriod => {
    const isIn = (day: string): boolean => day >= plan.start === since;
    const dayOf = (roundId: string): string => record.roundOf.get(roundId)?.day ?? '';
    const rounds = gained.rounds.filter(({ roundId }) => isIn(dayOf(roundId)));
    return {
      rounds: { values: rounds.map(({ per18 }) => per18), weights: rounds.map(({ holes }) => holes) },
      putts: chosen.struck
        .filter(({ putt }) => isIn(dayOf(putt.roundId)))
        .map(({ putt }) => ({ holed: putt.holed, benchmarkShare: benchmark.holedAt(putt.distance) })),
      reads: reads.filter(({ answeredAt }) => isIn(localDay(answeredAt))) satisfies readonly SeenRead[],
      tests: scores(since ? plan.test?.again?.score : tested?.item.score),
    };
  };
  const expected = tested?.item.expected;
  const test =
    drill !== undefined && expected !== undefined && 'sd' in expected
      ? { drill, expectedSd: expected.sd }
      : undefined;
  return whatMoved(test, during(false), during(true));
}
