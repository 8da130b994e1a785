/**
 * What parts those of a family whom one choice suits from those whom the other suits, and which measurement would tell where a
 * player stands. Answers for: the error it turns on, and the test. Leaves out: what each choice costs (die-or-firm.ts, firmer.ts), words.
 *
 * Looked at is the share of reading in all that goes wrong, and start line beside pace (MODEL.md, section 5). A test tells the more, the
 * farther apart the two sides lie in what it measures, beside how they spread and how far off the test itself is.
 */
import { PLAIN_PACE } from '../benchmarks/best-paces.ts';
import { ballAt, greenOf } from '../benchmarks/putts.ts';
import type { Member } from '../player/known.ts';
import { Reading } from '../read/reading.ts';
import type { Player } from '../types.ts';
import { feetToMetres } from '../units.ts';
import { FIRMER_SLOPES, SLOPE_WEIGHTS } from './ground.ts';
import { momentsOf } from './likely.ts';

/** reading: what is seen wrong beside what is struck wrong; line: start line beside pace. */
export type PartedBy = 'reading' | 'line';
/** Balls through a gate: the start line alone. Balls to a target on known ground: the stroke's pace. A set of slopes to name: the slope as seen. */
export type TellingTest = 'gate' | 'ladder' | 'readingSet';

export interface Parted {
  readonly by: PartedBy;
  /** Who has more of it (more reading beside stroke, more line beside pace) is better off with... */
  readonly more: 'first' | 'second';
  /** The test that would tell most. */
  readonly test: TellingTest;
  /** How far the sides lie apart in that test, in SDs of its result. */
  readonly apart: number;
}

/** How start (radians) and distance (share) go with what is seen: mean squares over the mix, by slope squared and by green speed squared. */
interface Sensitivity {
  readonly startBySlope: number;
  readonly startBySpeed: number;
  readonly distanceBySlope: number;
  readonly distanceBySpeed: number;
}

/** Where it is looked at: 10 ft, 10 ft of green speed, 17 in past. */
const LENGTH = feetToMetres(10);
const GREEN_SPEED = feetToMetres(10);
const BEARINGS = [15, 45, 75, 105, 135, 165];
/** Steps of the derivatives: rise over run, and share of the green speed. */
const TILT = 0.0005;
const FASTER = 0.005;

let known: Sensitivity | undefined;

function sensitivity(): Sensitivity {
  if (known !== undefined) return known;
  const sums = { startBySlope: 0, startBySpeed: 0, distanceBySlope: 0, distanceBySpeed: 0 };
  FIRMER_SLOPES.forEach((slope, i) => {
    const green = greenOf(slope, GREEN_SPEED, 'simple');
    for (const degrees of BEARINGS) {
      const putt = ballAt(green, LENGTH, (degrees * Math.PI) / 180);
      const lines = new Reading(putt, { readBias: 0 }).linesFor(PLAIN_PACE);
      const share = SLOPE_WEIGHTS[i] / BEARINGS.length;
      const by = (along: number, across: number, speed: number, step: number): readonly [number, number] => {
        const up = lines?.({ along, across, speed: 1 + speed });
        const down = lines?.({ along: -along, across: -across, speed: 1 - speed });
        if (up === undefined || down === undefined) throw new Error('a putt of the mix has no line');
        return [(up.start - down.start) / (2 * step), Math.log(up.energy / down.energy) / (2 * step)];
      };
      for (const [start, distance] of [by(TILT, 0, 0, TILT), by(0, TILT, 0, TILT)]) {
        sums.startBySlope += share * start ** 2;
        sums.distanceBySlope += share * distance ** 2;
      }
      const [start, distance] = by(0, 0, FASTER, FASTER);
      sums.startBySpeed += share * start ** 2;
      sums.distanceBySpeed += share * distance ** 2;
    }
  });
  known = sums;
  return sums;
}

/** Share of the variance at 10 ft on the mix that is seen wrong, not struck wrong: mean of that of the start and that of the distance. 0 to 1. */
export function readingShare({ lineSd, paceSd, slopeSd, speedSd }: Player): number {
  const { startBySlope, startBySpeed, distanceBySlope, distanceBySpeed } = sensitivity();
  const shareOf = (seen: number, struck: number): number => (seen > 0 ? seen / (seen + struck) : 0);
  const start = startBySlope * slopeSd ** 2 + startBySpeed * speedSd ** 2;
  const distance = distanceBySlope * slopeSd ** 2 + distanceBySpeed * speedSd ** 2;
  return (shareOf(start, lineSd ** 2) + shareOf(distance, paceSd ** 2)) / 2;
}

/** A spread of nothing has no logarithm; the line in radians, the pace as a share, the slope as rise over run. */
const LEAST = 1e-5;
const logOf = (value: number): number => Math.log(Math.max(LEAST, value));

const PARTS: Readonly<Record<PartedBy, (player: Player) => number>> = {
  reading: readingShare,
  line: ({ lineSd, paceSd }) => logOf(lineSd) - logOf(paceSd),
};

/**
 * What each test measures and how far off it is, SD of the logarithm of a spread. Twenty balls through a gate that six in seven pass:
 * 1/sqrt(20 x 1.3), 1.3 the information of a ball (section 6). Twenty balls to targets, and ten slopes named along and in all: 1/sqrt(2 x 19).
 */
const TESTS: readonly { readonly test: TellingTest; readonly error: keyof Player; readonly off: number }[] = [
  { test: 'gate', error: 'lineSd', off: 0.2 },
  { test: 'ladder', error: 'paceSd', off: 0.16 },
  { test: 'readingSet', error: 'slopeSd', off: 0.16 },
];

/** Second less first, in SDs of what is within the sides and of what it is measured with. */
function apart(
  first: readonly Member[],
  second: readonly Member[],
  numberOf: (player: Player) => number,
  off = 0,
): number {
  const [one, other] = [momentsOf(first, numberOf), momentsOf(second, numberOf)];
  const spread = Math.sqrt((one.variance + other.variance) / 2 + off ** 2);
  const between = other.mean - one.mean;
  return between === 0 ? 0 : between / Math.max(spread, 1e-9);
}

/** @param first whom the first choice suits, at least one of some weight @param second whom the second */
export function parted(first: readonly Member[], second: readonly Member[]): Parted {
  const reading = apart(first, second, PARTS.reading);
  const line = apart(first, second, PARTS.line);
  const by: PartedBy = Math.abs(line) > Math.abs(reading) ? 'line' : 'reading';
  const [best] = TESTS.map(({ test, error, off }) => ({
    test,
    apart: Math.abs(apart(first, second, (player) => logOf(player[error]), off)),
  })).sort((one, other) => other.apart - one.apart);
  return { by, more: (by === 'line' ? line : reading) > 0 ? 'second' : 'first', ...best };
}
