/**
 * What the scores of one drill say: which are like one another, whether chance explains them, what changed from test to retest. Pure.
 * Answers for: comparing like with like, and saying what is not. Leaves out: figures (sim/training), words (screens/practice/words.ts).
 * The slope of the ground is not in a score's record: two greens of one speed count as alike.
 */
import {
  compareScores,
  type DrillExpectation,
  feetToMetres,
  type GroundKind,
  judgeScores,
  type PuttingDrill,
  type ScoreChange,
  type ScoresJudged,
  scoreRange,
} from '../../sim/index.ts';
import type { KeptResult } from '../store/recordSchema.ts';

/** Green speeds this near count as one, m: half a foot, what a Stimpmeter reading is good for (common practice, no source). */
const SAME_SPEED = feetToMetres(0.5);

/** Scores of this drill as it is now on one kind of ground, those it can give. */
export const likeScores = (
  drill: PuttingDrill,
  results: readonly KeptResult[],
  kind: GroundKind,
): KeptResult[] => {
  const { least, most } = scoreRange(drill);
  return results.filter(
    ({ drillId, version, ground, score }) =>
      drillId === drill.id && version === drill.version && ground === kind && score >= least && score <= most,
  );
};

export interface HistoryRow {
  readonly result: KeptResult;
  /** undefined: the expected score on the page is not that of this ground. */
  readonly passed: boolean | undefined;
}

export interface DrillHistory {
  /** All scores of the drill, newest first. */
  readonly rows: readonly HistoryRow[];
  /** Scores not compared with the others, and why. */
  readonly unlike: { readonly count: number; readonly reason: string } | undefined;
  /** Scores the drill cannot give. */
  readonly impossible: number;
  /** Of the scores on ground like that of the expected score. */
  readonly judged: ScoresJudged | undefined;
  /** Where the retest may begin, newest first: every like score but the oldest. */
  readonly retests: readonly KeptResult[];
  /** Where it begins; undefined with fewer than two scores alike. */
  readonly retest: KeptResult | undefined;
  readonly counts: { readonly before: number; readonly after: number };
  readonly change: ScoreChange | undefined;
}

export interface HistoryQuestion {
  readonly drill: PuttingDrill;
  /** Of all drills, newest first. */
  readonly results: readonly KeptResult[];
  /** The ground looked at. */
  readonly kind: GroundKind;
  readonly expectation: DrillExpectation | undefined;
  /** Id of the score with which the retest begins; left out, or not there: the newest. */
  readonly retestFrom?: string;
}

export const historyOf = ({
  drill,
  results,
  kind,
  expectation,
  retestFrom,
}: HistoryQuestion): DrillHistory => {
  const { least } = scoreRange(drill);
  const all = results.filter(({ drillId }) => drillId === drill.id);
  const alike = all.filter(({ version, ground }) => version === drill.version && ground === kind);
  const like = likeScores(drill, results, kind);
  const others = all.filter((one) => !alike.includes(one));

  const fits =
    expectation?.drillId === drill.id && expectation.version === drill.version ? expectation : undefined;
  const near = like.filter(
    ({ greenSpeed }) =>
      fits !== undefined &&
      fits.ground.kind === kind &&
      (greenSpeed === undefined || Math.abs(greenSpeed - fits.ground.greenSpeed) <= SAME_SPEED + 1e-9),
  );
  const judged =
    fits === undefined || near.length === 0
      ? undefined
      : judgeScores(
          near.map(({ score }) => score),
          fits,
        );

  // What a score would be that is written down now: the others are unlike this one.
  const now = { drillId: drill.id, version: drill.version, ground: kind, score: least };
  const unlike = others.length > 0 ? compareScores(drill, { before: others, after: [now] }) : undefined;

  const retests = like.slice(0, -1);
  const retest = retests.find(({ id }) => id === retestFrom) ?? retests[0];
  const split = retest === undefined ? 0 : like.indexOf(retest) + 1;
  const [after, before] = [like.slice(0, split), like.slice(split)];
  const change =
    retest === undefined ? undefined : compareScores(drill, { before, after }, { expectedSd: fits?.sd });
  return {
    rows: all.map((result) => ({ result, passed: judged?.passed[near.indexOf(result)] })),
    unlike: unlike?.status === 'unlike' ? { count: others.length, reason: unlike.reason } : undefined,
    impossible: alike.length - like.length,
    judged,
    retests,
    retest,
    counts: { before: before.length, after: after.length },
    change: change?.status === 'ok' ? change : undefined,
  };
};
