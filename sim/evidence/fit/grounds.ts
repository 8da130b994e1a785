/**
 * The ground that recorded putts may have had: what was not written down is a spread of planes. Answers for: which slopes,
 * directions and green speeds stand for it at a length, and the lines and strokes on each, worked out once and kept. Leaves out: which of
 * them a putt's words speak for (words.ts).
 *
 * The mix of MODEL.md section 3: planes of 0.5 to 3%, spread evenly, from all round the hole, green speeds of 8.5 to 10.5 ft
 * unless the round's own is known; and a share of level ground, so that putts called level and straight have something to be.
 * It is summed over a lattice (Kronecker's, by powers of the plastic number: evenly spread in three dimensions for any number of points),
 * begun elsewhere for each length, so that its errors do not add up over a record. One half of the clock: the other is its
 * mirror image, and high is high on both.
 */
import { CLUB_MIX, type Mix } from '../../benchmarks/mix.ts';
import { BENCHMARK_CAPTURE, ballAt, greenOf } from '../../benchmarks/putts.ts';
import { seededRandom } from '../../random.ts';
import { LineWalk } from '../../read/line.ts';
import { startOf } from '../../roll/roll.ts';
import { type GroundStrokes, groundStrokes } from './ground-strokes.ts';
import { BY_ACROSS, ENERGY, LINE_NUMBERS, MeantLines } from './meant-lines.ts';

/** Share of putts on level ground (ours): of ordinary words "level and straight" are said of some putts in twenty. */
const LEVEL_SHARE = 0.04;
/** Lengths are told apart to this share, as they are paced; and green speeds. */
const LENGTH_STEP = 0.06;
const SPEED_STEP = 0.06;
/**
 * Points of the lattice by length, m: short putts break little and tell less. With 32 the grounds that words leave are so few that a wider
 * spread of strokes fits a record better than the true one, and half of an under-read is lost (met).
 */
const POINTS: readonly (readonly [upTo: number, points: number])[] = [
  [0.9, 24],
  [1.8, 48],
  [Number.POSITIVE_INFINITY, 72],
];
/** Points for many putts from one place: its ground is one, and told by what dropped, not by words. */
const POINTS_OF_SET = 24;
/** The one real root of x^4 = x + 1 (Roberts 2018, memory): its powers fill a cube evenly. */
const PLASTIC = 1.2207440846057596;
/** Where the lattice of the next length begins: the golden ratio spreads such beginnings evenly. */
const GOLDEN = 0.6180339887498949;

/** A start as wide as this, radians, is aimed far from the hole whatever its tangent. */
const WIDEST = 1.4;
/** Pace by which a putt is said to break, m past (17 in). */
const SAID_AT = 0.43;
/** Strokes rolled on all grounds of a length together, and the fewest and most on one. */
const STROKES = 24000;
const FEWEST = 88;
const MOST = 4096;

/** One plane with the ball on it. */
export interface Ground {
  /** Of all putts of its length. */
  readonly share: number;
  /** Rise over run, and rise to the hole per metre. */
  readonly slope: number;
  readonly rise: number;
  /** m */
  readonly length: number;
  /** Rise across the putt per metre, to the high side, 0 or more. */
  readonly across: number;
  /** How far beside the hole the line of an ordinary pace is aimed, m, 0 or more; and how that goes with the slope across. */
  readonly aimOffset: number;
  readonly aimByAcross: number;
  readonly lines: MeantLines;
  /** Rolled when first asked for. */
  readonly strokes: () => GroundStrokes;
}

/** What to put down of a putt's ground before its words are heard. */
export interface GroundQuestion {
  /** m */
  readonly length: number;
  /** Stimpmeter reading, m; missing: the mix. */
  readonly greenSpeed?: number | undefined;
  readonly level: boolean;
  /** The length itself, not its class: for many putts from one place. */
  readonly exact: boolean;
}

const classOf = (value: number, step: number): number => Math.round(Math.log(value) / step);
const fraction = (value: number): number => value - Math.floor(value);
const between = ([low, high]: readonly [number, number], share: number): number => low + share * (high - low);

/** Keeps every ground it has made: fits of many records share one. */
export class Grounds {
  private readonly kept = new Map<string, readonly Ground[]>();

  constructor(private readonly mix: Mix = CLUB_MIX) {}

  /** Planes that may have been it; their shares sum to 1. */
  of({ length, greenSpeed, level, exact }: GroundQuestion): readonly Ground[] {
    const nearest = classOf(length, LENGTH_STEP);
    const taken = exact ? length : Math.exp(nearest * LENGTH_STEP);
    const speed = greenSpeed === undefined ? undefined : classOf(greenSpeed, SPEED_STEP);
    const key = `${taken} ${speed} ${level}`;
    const known = this.kept.get(key);
    if (known !== undefined) return known;
    const speedAt = (share: number): number =>
      speed === undefined ? between(this.mix.greenSpeeds, share) : Math.exp(speed * SPEED_STEP);
    const [, ofPutt] = POINTS.find(([upTo]) => taken < upTo) ?? POINTS[POINTS.length - 1];
    const points = exact ? POINTS_OF_SET : ofPutt;
    const count = Math.round(Math.max(FEWEST, Math.min(MOST, STROKES / (level ? 1 : ofPutt))));
    const spots = [{ slope: 0, turned: 0, greenSpeed: speedAt(0.5), share: level ? 1 : LEVEL_SHARE }];
    for (let k = 0; k < points && !level; k++) {
      const at = (power: number): number => fraction((k + 0.5) / PLASTIC ** power + nearest * GOLDEN * power);
      spots.push({
        slope: between(this.mix.slopes, at(1)),
        turned: Math.PI * at(2),
        greenSpeed: speedAt(at(3)),
        share: (1 - LEVEL_SHARE) / points,
      });
    }
    const random = seededRandom(key);
    const made = spots.flatMap((spot) => groundOf({ ...spot, length: taken, count, random }) ?? []);
    this.kept.set(key, made);
    return made;
  }
}

const numbers = new Float64Array(LINE_NUMBERS);

/** @returns undefined where a ball has no line */
function groundOf(spot: {
  readonly length: number;
  readonly slope: number;
  readonly turned: number;
  readonly greenSpeed: number;
  readonly share: number;
  readonly count: number;
  readonly random: () => number;
}): Ground | undefined {
  const { length, slope, turned, greenSpeed, share, count, random } = spot;
  const begins = [random(), random(), random()] as const;
  const putt = ballAt(greenOf(slope, greenSpeed, BENCHMARK_CAPTURE), length, turned);
  const walk = new LineWalk(putt);
  const line = walk.reason === undefined ? walk.lineAt(SAID_AT) : undefined;
  if (line === undefined) return undefined;
  const start = startOf(putt, line.heading);
  const high = start < 0 ? -1 : 1;
  const rise = slope * Math.cos(turned);
  const across = slope * Math.abs(Math.sin(turned));
  const lines = new MeantLines({ length, rise, across, greenSpeed });
  const angle = Math.min(Math.abs(start), WIDEST);
  lines.at(0, SAID_AT, numbers);
  const turn = (numbers[BY_ACROSS + 1] - angle * numbers[BY_ACROSS]) / numbers[ENERGY];
  let strokes: GroundStrokes | undefined;
  return {
    share,
    slope,
    rise,
    across,
    length,
    aimOffset: length * Math.tan(angle),
    aimByAcross: length * turn * (1 + Math.tan(angle) ** 2),
    lines,
    strokes: () => {
      strokes ??= groundStrokes(walk, high, count, begins);
      return strokes;
    },
  };
}
