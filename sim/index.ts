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
  playerWithShare,
  READING_SHARE,
  scratchPaceSd,
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
  startAngleOf,
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
export { checkPutt } from './check.ts';
export * from './constants.ts';
export { FEWEST_TO_CONCLUDE } from './evidence/caution.ts';
export type { CurveGrid, CurvePrior } from './evidence/curve-grid.ts';
export { curvePriorOf } from './evidence/curve-prior.ts';
export {
  type BandTally,
  bandIndex,
  bandsOf,
  type Counted,
  type DistanceBand,
  distanceBands,
  FEET_BANDS,
  isInBand,
  METRE_BANDS,
} from './evidence/distance-bands.ts';
export {
  type ErrorRange,
  type ErrorsFit,
  type FitErrorsOptions,
  type FittedBiasVerdict,
  type FittedError,
  type FittedErrors,
  type FittedReadBias,
  fitErrors,
} from './evidence/fit/fit-errors.ts';
export { Grounds } from './evidence/fit/grounds.ts';
export type { FitRecord } from './evidence/fit/outcomes.ts';
export { defaultPrior, ERRORS, type ErrorName, type ErrorsPrior } from './evidence/fit/prior.ts';
export { type ErrorPair, TAPS, type Tap, type TapGain, type TellApart } from './evidence/fit/tell-apart.ts';
export type { PaceShare } from './evidence/fit/words.ts';
export {
  chanceAtLeast,
  chanceAtMost,
  type ExpectedHits,
  hitCounts,
  mixedHitCounts,
  summarizeHits,
  twoSidedChance,
} from './evidence/hit-counts.ts';
export { type HoledBin, type HoledBins, type HoledTally, talliesOf } from './evidence/holed-bins.ts';
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
export { type Estimate, meanInterval, type WeightedMean } from './evidence/mean-interval.ts';
export {
  LEAN_KINDS,
  type LeanKind,
  leansOf,
  type MissLeans,
  type MissLeansOptions,
  publishedShortOfMisses,
} from './evidence/miss-leans.ts';
export { type MorePutts, type MorePuttsQuestion, morePutts, type TestDesign } from './evidence/more-putts.ts';
export type { OwnPart } from './evidence/own-part.ts';
export { type HoleEnd, type PlayedHole, playedHoles, type StruckPutt } from './evidence/played-holes.ts';
export { type Proportion, proportionInterval } from './evidence/proportion.ts';
export { type ChosenPutts, choosePutts, type PuttFilter, type PuttRecord } from './evidence/putt-filter.ts';
export { type AimPair, type BiasVerdict, type ReadingBias, readingBias } from './evidence/reading-bias.ts';
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
} from './evidence/record.ts';
export { FIRST_PUTT_BANDS, ROUND_BANDS, type RoundBand, TAP_IN } from './evidence/round-bands.ts';
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
export { type ShareDifference, shareDifference } from './evidence/share-difference.ts';
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
export {
  type ApproachOptions,
  type ApproachSide,
  type ApproachSides,
  approachSides,
} from './odds/approach.ts';
export { comparePaces, holedShare, puttOdds } from './odds/compare.ts';
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
export { type NextPuttsOptions, prepareNextPutts } from './odds/next-putts.ts';
export { type HolingOut, holingOutAt, type NextPutts } from './odds/polar-table.ts';
export { type Misses, sampleMisses } from './odds/sample.ts';
export { type GreenQuestion, playPlaces, wholeGreen } from './odds/whole-green.ts';
export { HANDICAPS, type HandicapPlayer, playerOfHandicap } from './player/handicap.ts';
export {
  type AngleDistanceFit,
  type AngleFit,
  fitAngle,
  fitAngleAndDistance,
  holedByAngle,
  holedByAngleAndDistance,
  shareBelow,
} from './player/holing-models.ts';
export { type Found, findLeast, type Search } from './player/nelder-mead.ts';
export { EARLIER_PRESETS, PRESETS, presetOf, RECORD_PRESETS } from './player/presets.ts';
export * from './player/published.ts';
export { seededRandom } from './random.ts';
export { readPutt } from './read/line.ts';
export { rollBall } from './roll/roll.ts';
export { type FieldOptions, fieldSurface } from './surface/field.ts';
export { type GreenOptions, generateGreen } from './surface/generated.ts';
export { pinSpots } from './surface/pins.ts';
export { planeSurface } from './surface/plane.ts';
export { sampleSurface, surfaceBounds } from './surface/sample.ts';
export type { DrillGroup, Range, ReadDrill } from './training/drill.ts';
export { makeReadSet, puttOfQuestion, type Question, surfaceOfGround } from './training/question.ts';
export { type AimScore, type ReadVerdict, scoreAim } from './training/scoring.ts';
export {
  type KindSummary,
  type ReadAnswer,
  type ReadKind,
  type ReadSummary,
  summarizeReads,
} from './training/summary.ts';
export * from './types.ts';
export * from './units.ts';
