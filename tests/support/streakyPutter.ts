/**
 * Golfers who hole as published tables say, day by day, and write it down as people do: for testing the player's curve. Answers for:
 * whole rounds of theirs, and the share they hole in the long run. Shares no code and no form with the curve: the shares of tables as
 * exp(-exp(y)), y a cubic through the rows over the root of the distance, where the curve has log odds of engine players over its logarithm.
 */
import { TOUR_HOLED } from '../../sim/player/published.ts';
import { seededRandom } from '../../sim/random.ts';
import { feetToMetres } from '../../sim/units.ts';
import { normals } from './normals.ts';

type Row = readonly [feet: number, holed: number];

/**
 * Account of Broadie's figures for golfers averaging 90 (3 to 20 ft, second-hand: sim/player/published.ts); nearer ones are
 * ours, with the tour record's slopes of ln(-ln p) over ln x times 0.72, which is what they are from 3 to 5 ft; farther ones are ours.
 */
const AVERAGING_90: readonly Row[] = [
  [0.3, 0.998],
  [1, 0.99],
  [2, 0.957],
  [3, 0.84],
  [5, 0.5],
  [8, 0.27],
  [10, 0.2],
  [20, 0.06],
  [35, 0.025],
  [60, 0.01],
];

export interface Putter {
  /** Holed by distance, rising distances. */
  readonly table: readonly Row[];
  /** SD of a day, log odds: all putts of a round share it. */
  readonly daySd: number;
  /** How people of one table differ from it, in y: in all, and per root of a foot beyond 3 ft. */
  readonly levelSd?: number;
  readonly tiltSd?: number;
}

/** Golfers of a table, a little apart from it and from one another. */
export const PUTTERS = {
  // The last two rows, from 69 ft on, are thin and rise.
  tour: {
    table: TOUR_HOLED.slice(0, -2).map(({ feet, tries, holed }): Row => [feet, holed / tries]),
    levelSd: 0.1,
    tiltSd: 0.03,
  },
  'averaging 90': { table: AVERAGING_90, levelSd: 0.1, tiltSd: 0.03 },
} as const;

/** What is written down of one putt. */
export interface NotedPutt {
  readonly day: string;
  readonly feet: number;
  readonly holed: boolean;
}

export interface PutterRecord {
  readonly putts: readonly NotedPutt[];
  /** Share holed in the long run, over all days. */
  readonly truth: (feet: number) => number;
}

/** As the curve takes them. */
export const talliesOfNoted = ({ putts }: PutterRecord) =>
  putts.map(({ day, feet, holed }) => ({
    day,
    distance: feetToMetres(feet),
    tries: 1,
    holed: holed ? 1 : 0,
  }));

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
const logit = (p: number): number => Math.log(p / (1 - p));

/** A record of so many rounds. The same seed gives the same record. */
export function putterRecord(putter: Putter, rounds: number, seed: string): PutterRecord {
  const random = seededRandom(`putter ${seed}`);
  const normal = normals(`putter ${seed}`);
  const level = (putter.levelSd ?? 0) * normal();
  const tilt = (putter.tiltSd ?? 0) * normal();
  const rows = putter.table.map(([feet, holed]) => [Math.sqrt(feet), Math.log(-Math.log(holed))]);
  const usual = (feet: number): number => {
    const root = Math.sqrt(Math.max(0.05, feet));
    const own = through(rows, root) + level + tilt * (root - Math.sqrt(3));
    return Math.min(0.9999, Math.max(0.002, Math.exp(-Math.exp(own))));
  };
  const onDay = (feet: number, day: number): number => logistic(logit(usual(feet)) + day);
  const putts: NotedPutt[] = [];
  for (let round = 0; round < rounds; round++) {
    const day = putter.daySd * normal();
    const holes = random() < 0.25 ? 9 : 18;
    for (let hole = 0; hole < holes; hole++) {
      // A chip one time in three, else an approach: 18 ft give or take a factor two.
      let feet = random() < 0.33 ? 2 + 10 * random() : 18 * Math.exp(0.7 * normal());
      feet = Math.min(75, feet);
      for (let stroke = 1; stroke < 7; stroke++) {
        const holed = random() < onDay(feet, day);
        // Picked up or given: a tap-in that nobody writes down.
        const noted = !(feet < 1.5 && random() < 0.3);
        if (noted) putts.push({ day: `day-${round}`, feet: asPaced(feet), holed });
        if (holed) break;
        feet = Math.max(0.3, Math.abs(0.7 + 0.09 * feet * normal()));
      }
    }
  }
  const truth = (feet: number): number => {
    // The mean over days, normal ones, from 5 SDs below to 5 above.
    let [sum, weights] = [0, 0];
    for (let z = -5; z <= 5; z += 0.25) {
      const weight = Math.exp((-z * z) / 2);
      sum += weight * onDay(feet, putter.daySd * z);
      weights += weight;
    }
    return sum / weights;
  };
  return { putts, truth };
}

/** A cubic between two rows with the slopes of the parabolas through each row and its neighbours; straight beyond the ends. */
function through(rows: readonly (readonly number[])[], x: number): number {
  const chord = (i: number): number => (rows[i + 1][1] - rows[i][1]) / (rows[i + 1][0] - rows[i][0]);
  const last = rows.length - 1;
  const slope = (i: number): number => {
    if (i === 0) return chord(0);
    if (i === last) return chord(last - 1);
    const [before, after] = [rows[i][0] - rows[i - 1][0], rows[i + 1][0] - rows[i][0]];
    return (after * chord(i - 1) + before * chord(i)) / (before + after);
  };
  if (x <= rows[0][0]) return rows[0][1] + slope(0) * (x - rows[0][0]);
  if (x >= rows[last][0]) return rows[last][1] + slope(last) * (x - rows[last][0]);
  const i = rows.findIndex(([at]) => at > x) - 1;
  const wide = rows[i + 1][0] - rows[i][0];
  const t = (x - rows[i][0]) / wide;
  return (
    rows[i][1] * (1 + 2 * t) * (1 - t) ** 2 +
    rows[i + 1][1] * t * t * (3 - 2 * t) +
    wide * (slope(i) * t * (1 - t) ** 2 - slope(i + 1) * t * t * (1 - t))
  );
}

/** Half feet near the hole, whole feet to 15, then paced out: every third foot. */
function asPaced(feet: number): number {
  if (feet < 4) return Math.max(0.5, Math.round(2 * feet) / 2);
  return feet < 15 ? Math.round(feet) : 3 * Math.round(feet / 3);
}
