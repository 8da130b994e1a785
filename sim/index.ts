/** The engine's only door: everything the app, the command line and tests of behaviour may use. */
export {
  type BestPace,
  type BestPaceOptions,
  bestPaces,
  PLAIN_PACE,
} from './benchmarks/best-paces.ts';
export { playThirds, type Third, type Thirds, type ThirdsOptions } from './benchmarks/directions.ts';
export {
  type FitOptions,
  fitPlayer,
  type PlayerFit,
} from './benchmarks/fit.ts';
export {
  type ComparedFigure,
  compareWithRecord,
  MIX_OF,
  misfitOf,
} from './benchmarks/misfit.ts';
export {
  CLUB_MIX,
  type Fineness,
  type Mix,
  type MixOptions,
  type MixRow,
  playMix,
  TOUR_MIX,
} from './benchmarks/mix.ts';
export { BENCHMARKS, puttingBenchmarkOf } from './benchmarks/modelled.ts';
export {
  type Benchmark,
  type BenchmarkTable,
  benchmarkOf,
  type ShareRow,
} from './benchmarks/putting-benchmark.ts';
export { BENCHMARK_CAPTURE } from './benchmarks/putts.ts';
export { fallingRows, TOUR_RECORD } from './benchmarks/tour-record.ts';
export * from './constants.ts';
export {
  type CostOptions,
  type CostRow,
  type CostTable,
  costTable,
  costTables,
} from './costs/cost-table.ts';
export {
  type DieOrFirm,
  type DieOrFirmVerdict,
  dieOrFirmFor,
  differenceOn,
  inTellingOrder,
} from './costs/die-or-firm.ts';
export { type FirmerRow, type FirmerVerdict, type PaceFigures, WORTH } from './costs/firmer.ts';
export {
  type FirstPuttMix,
  firstPuttMix,
  HOLES_TO_STAND_ALONE,
  STATED_FIRST_PUTTS,
} from './costs/first-putts.ts';
export { FIRMER_LENGTHS, FIRMER_SLOPES } from './costs/ground.ts';
export type { Interval } from './costs/intervals.ts';
export { effectiveMembers, narrowed, narrowedPlayer, type Outside, outsideFamily } from './costs/narrowed.ts';
export { type Parted, type PartedBy, parted, readingShare, type TellingTest } from './costs/parted.ts';
export {
  type BandCost,
  COST_BANDS,
  type ComparedSteps,
  compareSteps,
  ENGINE_ERROR,
  METRE_COST_BANDS,
  type RoundCosts,
  type RoundQuestion,
  roundCosts,
  type StepCost,
} from './costs/round-costs.ts';
export { AREAS, type Area, afterStep, MAIN_STEPS, REACHABLE, STEPS, type StepId } from './costs/steps.ts';
export {
  type BesideBenchmark,
  besideBenchmark,
  meanOverPutts,
  type TriedFrom,
} from './evidence/beside-benchmark.ts';
export { FEWEST_TO_CONCLUDE } from './evidence/caution.ts';
export { type CurveFamily, curveFamilyOf } from './evidence/curve-family.ts';
export type { CurvePlayer } from './evidence/curve-players.ts';
export { type BandTally, distanceBands } from './evidence/distance-bands.ts';
export { firstLook } from './evidence/fit/first-look.ts';
export {
  type ErrorRange,
  type ErrorsFit,
  type FitErrorsOptions,
  type FittedBiasVerdict,
  type FittedError,
  type FittedErrors,
  type FittedPace,
  type FittedReadBias,
  fitErrors,
} from './evidence/fit/fit-errors.ts';
export { Grounds } from './evidence/fit/grounds.ts';
export { type GateCount, type MeasuredStrokes, strokesIn } from './evidence/fit/measured-strokes.ts';
export type { FitRecord } from './evidence/fit/outcomes.ts';
export { defaultPrior, ERRORS, type ErrorName, type ErrorsPrior } from './evidence/fit/prior.ts';
export { type ErrorPair, TAPS, type Tap, type TapGain, type TellApart } from './evidence/fit/tell-apart.ts';
export { type GainedFromBand, gainedByBand } from './evidence/gained-bands.ts';
export {
  type CurveShare,
  curveShareAt,
  curveWithout,
  type HolingCurve,
  holingCurve,
  ownShareAt,
  type PlayerShares,
  playerShares,
} from './evidence/holing-curve.ts';
export { judgeLean, type Lean, type LeanOptions, type LeanVerdict, type WayCounts } from './evidence/lean.ts';
export { type Leaves, leavesByBand, leavesOf } from './evidence/leaves.ts';
export {
  LEAN_KINDS,
  type LeanKind,
  leansOf,
  type MissLeans,
  type MissLeansOptions,
  publishedShortOfMisses,
} from './evidence/miss-leans.ts';
export { type MorePutts, type MorePuttsQuestion, morePutts, type TestDesign } from './evidence/more-putts.ts';
export { type OneOrThree, oneOrThree, threeBeatsOne } from './evidence/one-or-three.ts';
export type { OwnPart } from './evidence/own-part.ts';
export { type PuttsTaken, puttsTaken } from './evidence/putts-taken.ts';
export { type BiasVerdict, type DatedAim, type ReadingBias, readingBias } from './evidence/reading-bias.ts';
export {
  type BandCheck,
  type BandRecord,
  checkRound,
  type HoledBeside,
  type RoundCheck,
  type RoundCheckInput,
  type RoundVerdict,
} from './evidence/round-check.ts';
export type { FirstPutts, GainWithoutHoling, HoleGain } from './evidence/round-gain.ts';
export {
  type GainedInRound,
  gainedByPutt,
  gainedOnHole,
  meanPer18,
  type StrokesGained,
  strokesGained,
} from './evidence/strokes-gained.ts';
export {
  adjustedTrend,
  type JudgedPutt,
  type MeanTrend,
  meanTrend,
  type RoundValues,
  type ShareTrend,
  shareTrend,
  type TrendVerdict,
  type TwoPeriods,
} from './evidence/trend.ts';
export { type Found, findLeast, type Search } from './maths/nelder-mead.ts';
export { shareBelow } from './maths/normal.ts';
export { type MeasuredSpeed, measureGreenSpeed, readingOf, speedBehind } from './measuring/green-speed.ts';
export {
  fallByLevel,
  LEVEL_SPREAD,
  type LevelFall,
  type LevelPair,
  type LevelSlope,
  slopeByLevel,
} from './measuring/level.ts';
export { halfWidth, type Measured } from './measuring/measured.ts';
export {
  type MeasuredSpread,
  type PaceControl,
  type PaceRoll,
  paceControl,
} from './measuring/pace-control.ts';
export {
  type MeasuredGreen,
  type MeasuredPlayer,
  narrowingResults,
  strokesOfMeasured,
} from './measuring/results.ts';
export {
  type RampRoll,
  type RollWay,
  rampHeightFor,
  rampSlowings,
  rampSpeed,
  STOPWATCH,
  type TimedRoll,
  timedSlowings,
} from './measuring/rolls.ts';
export { type GateRun, gateAngle, type StartLine, startLine, tellingWidth } from './measuring/start-line.ts';
export { type StepLength, stepLength, type Walk } from './measuring/step-length.ts';
export {
  type ApproachOptions,
  type ApproachSide,
  type ApproachSides,
  approachSides,
} from './odds/approach.ts';
export { comparePaces, holedShare, puttOdds } from './odds/compare.ts';
export { type Gate, gateShare } from './odds/gate.ts';
export {
  emptyGreenMap,
  type GreenMap,
  type GreenMapOptions,
  mapValueAt,
  nodePoint,
  PLACE_STATUS,
  type PlaceValue,
  type PlaceValues,
  type PlayedPlaces,
} from './odds/green-map.ts';
export { filledIn, placesToPlay, withPlayed } from './odds/green-steps.ts';
export { heldTables } from './odds/held-policy.ts';
export { type NextPuttsOptions, prepareNextPutts } from './odds/next-putts.ts';
export { type HolingOut, holingOutAt, type NextPutts } from './odds/polar-table.ts';
export { type RestQuestion, type RestShares, restShares, type Zone } from './odds/rest-shares.ts';
export { type Misses, sampleMisses } from './odds/sample.ts';
export { type GreenQuestion, playPlaces, wholeGreen } from './odds/whole-green.ts';
export { playerBy } from './player/errors.ts';
export { FITTED_FAMILIES, FITTED_PLAYERS, playerOf } from './player/fitted.ts';
export { HANDICAPS, type HandicapPlayer, playerOfHandicap } from './player/handicap.ts';
export {
  type AngleDistanceFit,
  type AngleFit,
  fitAngle,
  fitAngleAndDistance,
  holedByAngle,
  holedByAngleAndDistance,
} from './player/holing-models.ts';
export {
  AS_GOOD_AS_NOBODY,
  type KnownPlayer,
  type Measurement,
  type Member,
  type PlayerOrigin,
  type Sitting,
  setByHand,
} from './player/known.ts';
export { EARLIER_IDS, familyOf, PRESETS, presetOf, RECORD_PRESETS } from './player/presets.ts';
export * from './player/published.ts';
export { seededRandom } from './random.ts';
export { readPutt } from './read/line.ts';
export { MEANT_KINDS, type MeantCounts, type MeantKind, missesAsMeant } from './record/as-meant.ts';
export {
  bandIndex,
  bandsOf,
  type DistanceBand,
  FEET_BANDS,
  FIRST_PUTT_BANDS,
  isInBand,
  METRE_BANDS,
  METRE_FIRST_PUTT_BANDS,
  METRE_ROUND_BANDS,
  METRE_TAP_IN,
  ROUND_BANDS,
  TAP_IN,
} from './record/bands.ts';
export { type HoleEnd, type PlayedHole, playedHoles, type StruckPutt } from './record/played-holes.ts';
export { type ChosenPutts, choosePutts, type PuttFilter, type PuttRecord } from './record/putt-filter.ts';
export type {
  MissCounts,
  MissReach,
  MissSide,
  PaceMeant,
  PracticeSet,
  PuttCircumstances,
  PuttKind,
  RecordedMiss,
  RecordedPutt,
  RecordedRound,
  SlopeFelt,
} from './record/record.ts';
export { type HoledTally, talliesOf } from './record/tallies.ts';
export { checkPutt } from './roll/check.ts';
export { rollBall } from './roll/roll.ts';
export {
  chanceAtLeast,
  chanceAtMost,
  type ExpectedHits,
  hitCounts,
  mixedHitCounts,
  summarizeHits,
  twoSidedChance,
} from './statistics/hit-counts.ts';
export { type Estimate, meanInterval, type WeightedMean } from './statistics/mean-interval.ts';
export { type Counted, type Proportion, proportionInterval } from './statistics/proportion.ts';
export { type ShareDifference, shareDifference } from './statistics/share-difference.ts';
export { type FieldOptions, fieldSurface } from './surface/field.ts';
export { type GreenOptions, generateGreen } from './surface/generated.ts';
export { pinSpots } from './surface/pins.ts';
export { planeSurface } from './surface/plane.ts';
export { sampleSurface, surfaceBounds } from './surface/sample.ts';
export { type ChooseOptions, chooseNext } from './training/choose-next.ts';
export {
  type CompareOptions,
  compareScores,
  type DrillResult,
  type ScoreChange,
  type Unlike,
} from './training/compare-scores.ts';
export { type DrillGroup, type Range, READ_TASKS, type ReadDrill, type ReadTask } from './training/drill.ts';
export { type DrillGround, drillProblem, type GroundKind } from './training/drill-ground.ts';
export {
  type DrillExpectation,
  type DrillScoreOptions,
  expectedScore,
  type NoExpectation,
  type StationExpectation,
} from './training/drill-score.ts';
export { type Aimed, difficultyOf, isHit } from './training/hit.ts';
export { judgeScores, type ScoresJudged, type ScoresVerdict } from './training/judge-scores.ts';
export {
  makePaceSet,
  type PaceAnswer,
  type PaceChoice,
  type PaceSummary,
  type PuttsByPace,
  paceCost,
  summarizePaces,
} from './training/pace-set.ts';
export {
  MARK_CHANCE,
  type PassMark,
  type Repetitions,
  TOLD_APART,
  TRAINING_STEP,
  withStep,
} from './training/pass-mark.ts';
export {
  FEWEST_READS,
  type Margin,
  type PeriodReading,
  type ReadingChange,
  type ReadingProgress,
  readingProgress,
} from './training/progress.ts';
export { type Judged, puttOfQuestion, type Question, surfaceOfGround } from './training/putt-question.ts';
export {
  ballsOf,
  DRILL_GROUNDS,
  type PuttingDrill,
  type Station,
  type StrokeScore,
  scoreRange,
  strokeOrder,
  strokesOf,
  type Tally,
  TRAINED,
  type Trained,
} from './training/putting-drill.ts';
export { makeReadSet, SET_SIZE } from './training/question.ts';
export type { DatedRead, SeenRead } from './training/reader-model.ts';
export { type AimScore, type ReadVerdict, scoreAim } from './training/scoring.ts';
export {
  makeSlopeSet,
  type SlopeErrors,
  type SlopeSummary,
  type Slopes,
  slopesNamed,
  slopesOf,
  summarizeSlopes,
} from './training/slope-set.ts';
export { WANTED_HITS } from './training/staircase.ts';
export {
  type KindSummary,
  type ReadAnswer,
  type ReadKind,
  type ReadSummary,
  summarizeReads,
} from './training/summary.ts';
export {
  type ErrorCost,
  errorCosts,
  type TimeShare,
  timeShares,
  WEEK_ERRORS,
  type WeekError,
} from './training/week-costs.ts';
export {
  drillsInstead,
  type ItemReason,
  minutesByError,
  planWeek,
  type ReadingSet,
  SESSION_MINUTES,
  suitsGround,
  TEST_AGAIN,
  type WeekItem,
  type WeekPlan,
  type WeekQuestion,
  type WeekSession,
  type WeekTest,
} from './training/week-plan.ts';
export {
  type Change,
  MOVED_TOPICS,
  type Moved,
  type MovedTopic,
  type TestedDrill,
  type WeekPeriod,
  whatMoved,
} from './training/what-moved.ts';
export * from './types.ts';
export * from './units.ts';
