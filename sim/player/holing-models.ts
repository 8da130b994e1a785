/**
 * Two published models of holing, and their fits: a check of our fitting, and a yardstick for what one or two error numbers
 * can say of a holing table. Sources: Gelman & Nolan, Teaching Statistics 24(3), 2002 (angle only); Gelman, "Model building
 * and expansion for golf putting", 2019 (angle and distance). Both read. Level ground, no read error, a hole that is R - r
 * wide and takes a ball of any speed up to 3 ft past.
 * Leaves out: our own engine, whose fit is benchmarks/ business.
 */
import { BALL_RADIUS, HOLE_RADIUS } from '../constants.ts';
import { type Found, findLeast } from '../maths/nelder-mead.ts';
import { shareBelow } from '../maths/normal.ts';
import { degreesToRadians, metresToFeet } from '../units.ts';
import type { HoledRow } from './published.ts';

/** The model aims this far past, feet, and holes what would stop up to TOO_FAR past (Gelman 2019). */
const OVERSHOT = 1;
const TOO_FAR = 3;
/** Widest angle, as a sine, that still drops at one foot. */
const WIDTH = metresToFeet(HOLE_RADIUS - BALL_RADIUS);

/**
 * Share holed when only the start line errs: 2 Phi(asin((R - r)/x)/sigma) - 1.
 * @param feet ball to hole
 * @param angleSd radians
 */
export const holedByAngle = (feet: number, angleSd: number): number =>
  // As near as the hole is wide no start line misses.
  feet <= WIDTH ? 1 : 2 * shareBelow(Math.asin(WIDTH / feet) / angleSd) - 1;

/**
 * Share that reaches the hole and would not run TOO_FAR past, whatever the line.
 * @param feet ball to hole
 * @param distanceSd share of the distance meant, which is 1 ft past
 */
export function holedByDistance(feet: number, distanceSd: number): number {
  const spread = (feet + OVERSHOT) * distanceSd;
  return shareBelow((TOO_FAR - OVERSHOT) / spread) - shareBelow(-OVERSHOT / spread);
}

/**
 * Share holed when start line and distance err.
 * @param feet ball to hole
 * @param angleSd radians
 * @param distanceSd share of the distance meant, which is 1 ft past
 */
export const holedByAngleAndDistance = (feet: number, angleSd: number, distanceSd: number): number =>
  holedByAngle(feet, angleSd) * holedByDistance(feet, distanceSd);

export interface AngleFit {
  readonly status: Found['status'];
  readonly angleSdDeg: number;
  /** Standard error from the curvature of the likelihood, degrees. */
  readonly standardErrorDeg: number;
}

/** Binomial likelihood, up to a constant: minus its logarithm. */
const binomialMisfit = (rows: readonly HoledRow[], shareAt: (feet: number) => number): number =>
  rows.reduce((sum, { feet, tries, holed }) => {
    const share = shareAt(feet);
    return sum - holed * Math.log(share) - (tries > holed ? (tries - holed) * Math.log(1 - share) : 0);
  }, 0);

/** The angle-only model by binomial likelihood. */
export function fitAngle(rows: readonly HoledRow[]): AngleFit {
  const misfit = (degrees: number): number =>
    degrees > 0
      ? binomialMisfit(rows, (feet) => holedByAngle(feet, degreesToRadians(degrees)))
      : Number.POSITIVE_INFINITY;
  const { status, at } = findLeast({
    misfit: ([degrees]) => misfit(degrees),
    start: [1],
    steps: [0.3],
    tolerance: 1e-6,
    mostTries: 200,
  });
  const [best] = at;
  const step = 0.01 * best;
  const bend = (misfit(best + step) - 2 * misfit(best) + misfit(best - step)) / step ** 2;
  return {
    status,
    angleSdDeg: best,
    standardErrorDeg: bend > 0 ? 1 / Math.sqrt(bend) : Number.POSITIVE_INFINITY,
  };
}

export interface AngleDistanceFit {
  readonly status: Found['status'];
  readonly angleSdDeg: number;
  readonly distanceSd: number;
  /** SD of what the model misses in the shares, beyond chance. */
  readonly shareSd: number;
}

/**
 * Angle and distance with an error of the model itself: each share is normal about the model's, with variance
 * p (1 - p)/n + shareSd^2, so that the largest bins do not decide alone (Gelman 2019).
 */
export function fitAngleAndDistance(rows: readonly HoledRow[]): AngleDistanceFit {
  const misfit = ([degrees, distanceSd, shareSd]: readonly number[]): number => {
    if (!(degrees > 0 && distanceSd > 0 && shareSd > 0)) return Number.POSITIVE_INFINITY;
    return rows.reduce((sum, { feet, tries, holed }) => {
      const share = holedByAngleAndDistance(feet, degreesToRadians(degrees), distanceSd);
      const variance = (share * (1 - share)) / tries + shareSd ** 2;
      return sum + (holed / tries - share) ** 2 / (2 * variance) + Math.log(variance) / 2;
    }, 0);
  };
  const { status, at } = findLeast({
    misfit,
    start: [1.2, 0.1, 0.01],
    steps: [0.2, 0.02, 0.005],
    tolerance: 1e-5,
    mostTries: 2000,
  });
  return { status, angleSdDeg: at[0], distanceSd: at[1], shareSd: at[2] };
}
