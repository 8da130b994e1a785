/**
 * The putts for which the oracle's odds are stored (tests/sim/odds/oracle-values.json): what is asked, how it becomes a
 * putt, and the shape of the stored file. Leaves out: the answers.
 */
import { generateGreen } from '../../sim/surface/generated.ts';
import { pinSpots } from '../../sim/surface/pins.ts';
import { planeSurface } from '../../sim/surface/plane.ts';
import type { CaptureName, Player, Putt } from '../../sim/types.ts';
import { clockToBearing, degreesToRadians, feetToMetres } from '../../sim/units.ts';
import type { OracleOdds } from './oracle.ts';

/** Errors in the units people say them in; shares, but for the line. */
export interface PlayerNumbers {
  readonly lineSdDeg: number;
  readonly paceSd: number;
  readonly paceBias: number;
  readonly slopeSd: number;
  readonly speedSd: number;
  readonly readBias: number;
}

export interface OracleCase {
  readonly name: string;
  readonly ground:
    | { readonly kind: 'plane'; readonly slope: number; readonly downhillDeg: number; readonly clock: number }
    | {
        readonly kind: 'green';
        readonly seed: number;
        readonly tier: boolean;
        /** Bearing hole -> ball, degrees from +x. */
        readonly bearingDeg: number;
      };
  readonly lengthM: number;
  readonly greenSpeedFt: number;
  readonly paceM: number;
  readonly capture: CaptureName;
  readonly player: PlayerNumbers;
}

export interface StoredValues {
  readonly what: string;
  readonly cases: readonly {
    readonly case: OracleCase;
    readonly seed: string;
    readonly stepS: number;
    readonly rolls: number;
    readonly playedOut: number;
    /** Sum of the field's heights, m: tells a changed green from a changed answer. 0 for a plane. */
    readonly heightSum: number;
    readonly odds: OracleOdds;
  }[];
}

export const playerOf = ({ lineSdDeg, ...rest }: PlayerNumbers): Player => ({
  lineSd: degreesToRadians(lineSdDeg),
  ...rest,
});

/** A plane's hole lies off the origin, a green's on the first pin spot of seed 1. */
export function puttOf({ ground, lengthM, greenSpeedFt, capture }: OracleCase): Putt {
  const rest = { greenSpeed: feetToMetres(greenSpeedFt), capture };
  if (ground.kind === 'plane') {
    const downhill = degreesToRadians(ground.downhillDeg);
    const bearing = clockToBearing(ground.clock, downhill);
    const hole = { x: 1.5, y: -2 };
    return {
      surface: planeSurface({ slope: ground.slope, downhill }),
      ball: { x: hole.x + lengthM * Math.cos(bearing), y: hole.y + lengthM * Math.sin(bearing) },
      hole,
      ...rest,
    };
  }
  const surface = generateGreen({ seed: ground.seed, tier: ground.tier });
  const hole = pinSpots(surface, 1, 1)[0];
  const bearing = degreesToRadians(ground.bearingDeg);
  return {
    surface,
    ball: { x: hole.x + lengthM * Math.cos(bearing), y: hole.y + lengthM * Math.sin(bearing) },
    hole,
    ...rest,
  };
}

export const heightSumOf = ({ surface }: Putt): number =>
  surface.kind === 'field' ? surface.heights.reduce((sum, height) => sum + height, 0) : 0;

const player = (
  [lineSdDeg, paceSd, slopeSd, speedSd]: readonly [number, number, number, number],
  { readBias = 0, paceBias = 0 } = {},
): PlayerNumbers => ({ lineSdDeg, paceSd, paceBias, slopeSd, speedSd, readBias });

const TOUR = player([0.75, 0.06, 0.0045, 0.03]);
const STEADY = player([0.9, 0.07, 0.004, 0.04]);
const LINE_ONLY = player([1.02, 0.08, 0, 0]);
const READS_BADLY = player([0.6, 0.05, 0.009, 0.08]);
const WEEKEND = player([1.4, 0.1, 0.006, 0.06]);
const TOO_LITTLE = player([1, 0.07, 0.004, 0.05], { readBias: -0.3, paceBias: 0.05 });
const TOO_MUCH = player([0.9, 0.07, 0.004, 0.04], { readBias: 0.2, paceBias: -0.06 });
const BEGINNER = player([2, 0.14, 0.009, 0.08]);

const plane = (
  name: string,
  [slope, downhillDeg, clock]: readonly [number, number, number],
  [lengthM, greenSpeedFt, paceM]: readonly [number, number, number],
  capture: CaptureName,
  player: PlayerNumbers,
): OracleCase => ({
  name,
  ground: { kind: 'plane', slope, downhillDeg, clock },
  lengthM,
  greenSpeedFt,
  paceM,
  capture,
  player,
});

const green = (
  name: string,
  [seed, bearingDeg, tier]: readonly [number, number, boolean],
  [lengthM, greenSpeedFt, paceM]: readonly [number, number, number],
  player: PlayerNumbers,
  capture: CaptureName = 'simple',
): OracleCase => ({
  name,
  ground: { kind: 'green', seed, tier, bearingDeg },
  lengthM,
  greenSpeedFt,
  paceM,
  capture,
  player,
});

/**
 * Slopes 0-4%, lengths 0.6-15 m, all round the clock, green speeds 8.5-12 ft, soft to very firm, every rule; rim, the one
 * offered first, on half. Among them those where errors of sight are anything but small: fast ground, downhill, read badly.
 */
export const CASES: readonly OracleCase[] = [
  plane('level 1.5 m, die', [0, 0, 0], [1.5, 10, 0.15], 'simple', LINE_ONLY),
  plane('level 1.8 m, firm, rim', [0, 0, 0], [1.8, 10, 0.75], 'rim', STEADY),
  plane('pin-high 3 m on 2%, die', [0.02, 200, 3], [3.048, 10, 0.15], 'simple', STEADY),
  plane('pin-high 3 m on 2%, firm, rim', [0.02, 200, 3], [3.048, 10, 0.75], 'rim', STEADY),
  plane('fast, down across 3%, die', [0.03, 75, 1.5], [4.5, 11, 0.15], 'simple', WEEKEND),
  plane('uphill on 3%, firm, free fall', [0.03, 300, 5], [2.4, 9, 0.75], 'freeFall', STEADY),
  plane('steep 4% from the right, firm, rim', [0.04, 10, 9], [1.8, 8.5, 0.75], 'rim', WEEKEND),
  plane('9 m on a quick 1%, rim', [0.01, 130, 10.5], [9, 12, 0.381], 'rim', TOUR),
  plane('15 m lag on 1.5%', [0.015, 250, 4], [15, 10, 0.5], 'simple', WEEKEND),
  plane('tap of 0.6 m across 3%, free fall', [0.03, 160, 3], [0.6, 10, 0.3], 'freeFall', WEEKEND),
  plane('charged 6 m on 2.5%, biased', [0.025, 45, 8], [6, 11, 1.5], 'simple', TOO_LITTLE),
  plane('straight down 2%, die, rim', [0.02, 320, 0], [3.6, 9, 0.15], 'rim', TOO_LITTLE),
  plane('big breaker on 3.5%, reads too much', [0.035, 100, 2], [4, 10, 0.15], 'simple', TOO_MUCH),
  // Their leaves lie where a table of next putts was once wrong: short ones on steep ground, which no window was found for.
  plane('soft 5 m up 3.8%, free fall', [0.038, 17, 6.1], [5, 9.9, 0.2], 'freeFall', WEEKEND),
  plane('soft 3 m down 4%, beginner', [0.04, 17, 1.1], [3, 10.9, 0.2], 'simple', BEGINNER),
  plane('down 3% at 11 ft, reads badly, rim', [0.03, 220, 0.4], [3, 11, 0.3], 'rim', READS_BADLY),
  plane('long, fast, down across 2%, rim', [0.02, 340, 10.6], [10, 11.5, 0.3], 'rim', TOUR),
  plane('1.2 m across 4%, reads badly, rim', [0.04, 100, 3], [1.2, 10, 0.3], 'rim', READS_BADLY),
  plane('down across 3% from 2.5 m, rim', [0.03, 75, 1.5], [2.5, 11, 0.6], 'rim', WEEKEND),
  plane('charged 3.5 m up 2.5%, rim', [0.025, 45, 6.5], [3.5, 9, 1.2], 'rim', TOO_LITTLE),
  green('4 m on a green', [3, 60, false], [4, 10, 0.3], STEADY),
  green('7 m on another green, firm, rim', [5, 200, false], [7, 10.5, 0.75], WEEKEND, 'rim'),
  green('6 m over a tier, reads too much, rim', [21, 110, true], [6, 9.5, 0.381], TOO_MUCH, 'rim'),
  // What drops forks here: soft and firm balls of one start do, those between do not.
  green('7.4 m across a swale, forked', [3, -22.7176, false], [7.4207, 10, 0.45], STEADY),
  green('3 m on a green, reads badly, rim', [5, 300, false], [3, 10.5, 0.4], READS_BADLY, 'rim'),
];
