/**
 * A player's errors as the page kept them before slopes were misread: one spread of reading, a share of the break. Answers for: taking them
 * over, and what the person is told of it once. Leaves out: where they were kept (settings.ts). Never changed again: what it reads is
 * on people's devices as it was.
 */
import { degreesToRadians, type Player, presetOf } from '../../sim/index.ts';
import type { Chosen } from './chosen.ts';
import { PLAYER_RANGES, withinRanges } from './playerRanges.ts';

interface OlderPlayer {
  readonly lineSd: number;
  readonly paceSd: number;
  readonly readSd: number;
  readonly readBias: number;
  readonly paceBias: number;
}

/** Ends of the sliders at that time: what lies outside was not written by this page. */
const OLDER_RANGES: Readonly<Record<keyof OlderPlayer, readonly [number, number]>> = {
  lineSd: [degreesToRadians(0.1), degreesToRadians(4)],
  paceSd: [0.01, 0.3],
  readSd: [0, 0.8],
  readBias: [-0.6, 0.6],
  paceBias: [-0.2, 0.2],
};

/** The presets of that time as they were: start line in degrees, pace, read; without habits. */
const OLDER_PRESETS: readonly (readonly [id: string, lineSdDeg: number, paceSd: number, readSd: number])[] = [
  ['tour', 1, 0.093, 0.3],
  ['scratch', 1.17, 0.1, 0.4],
  // Three eighths of the way from scratch to the next.
  ['handicap-6', 1.3275, 0.10825, 0.45625],
  ['averaging-90', 1.59, 0.122, 0.55],
  ['tour-like', 0.8, 0.08, 0.12],
  ['tour-like-line-only', 1.02, 0.08, 0],
  ['low-handicap', 1, 0.106, 0.2],
];
/** Closer than any slider could set, radians and shares. */
const SAME = 1e-9;

/** What was set, when it is what the page would have written. */
export const olderPlayerOf = (found: unknown): OlderPlayer | undefined => {
  if (typeof found !== 'object' || found === null) return undefined;
  const errors = found as Record<string, unknown>;
  for (const [name, [low, high]] of Object.entries(OLDER_RANGES)) {
    const value = errors[name];
    if (typeof value !== 'number' || !(value >= low && value <= high)) return undefined;
  }
  return found as OlderPlayer;
};

const olderPresetOf = ({ lineSd, paceSd, readSd, readBias, paceBias }: OlderPlayer): string | undefined =>
  OLDER_PRESETS.find(([, line, pace, read]) =>
    [lineSd - degreesToRadians(line), paceSd - pace, readSd - read, readBias, paceBias].every(
      (difference) => Math.abs(difference) < SAME,
    ),
  )?.[0];

/**
 * Mean slope of the greens presets were fitted on, rise over run: a share of the break of a putt there is that share of its slope (the
 * break goes with the slope, near enough).
 */
const MEAN_SLOPE = 0.016;
/** Shares of distance for a slope misread by 1: k e / a on the level at a green speed of 10 ft is 6.4% for 0.5% (MODEL.md, section 3). */
const DISTANCE_PER_SLOPE = 12.8;
/** Of the spread of pace, what the stroke keeps at least (ours): the rest cannot all have been reading. */
const STROKE_LEAST = 0.5;
const TO_SLOPE_STEP = 1e4;
const TO_PACE_STEP = 1e3;

/**
 * The same player in the new form, as nearly as numbers allow: reading moves out of the pace, where it was hidden, into slope and green speed.
 * @param speedSd of a player of about that kind: the old form has no such number
 */
export const translated = (
  { lineSd, paceSd, readSd, readBias, paceBias }: OlderPlayer,
  speedSd: number,
): Player => {
  const slopeSd = Math.round(readSd * MEAN_SLOPE * TO_SLOPE_STEP) / TO_SLOPE_STEP;
  const reading = Math.hypot(DISTANCE_PER_SLOPE * slopeSd, speedSd);
  const stroke = Math.sqrt(Math.max(paceSd ** 2 - reading ** 2, (STROKE_LEAST * paceSd) ** 2));
  return withinRanges({
    lineSd,
    paceSd: Math.max(PLAYER_RANGES.paceSd.min, Math.round(stroke * TO_PACE_STEP) / TO_PACE_STEP),
    paceBias,
    slopeSd,
    speedSd,
    readBias,
  });
};

/** Older errors as they are chosen now: the same preset, or set by hand. @param fallback whose misreading of green speed stands in */
export const chosenOf = (older: OlderPlayer, fallback: Player): Chosen => {
  const id = olderPresetOf(older);
  const preset = id === undefined ? undefined : presetOf(id);
  return preset === undefined
    ? { origin: { kind: 'byHand' }, player: translated(older, fallback.speedSd) }
    : { origin: { kind: 'preset', id: preset.id }, player: preset.player };
};
