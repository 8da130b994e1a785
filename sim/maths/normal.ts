/**
 * The normal distribution and the sums that stand for its integrals. Answers for: the normal density and distribution, quick and
 * exact, one drawn number, and Gauss-Legendre points. Leaves out: what is integrated.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.2.17 (error below 7.5e-8, a hundred-thousandth of a
 * point of holed %) and table 25.4 (Gauss-Legendre).
 */

export const INVERSE_ROOT_TWO_PI = 0.3989422804014327;

/** Standard normal density. */
export const normalDensity = (z: number): number => INVERSE_ROOT_TWO_PI * Math.exp((-z * z) / 2);

/** Share of a standard normal below z; +-Infinity allowed. */
export function normalCdf(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    t === 0
      ? 0
      : 0.3989422804014327 *
        Math.exp((-z * z) / 2) *
        t *
        (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z < 0 ? tail : 1 - tail;
}

/**
 * Share of a standard normal below z. Power series of the error function up to 3, its continued fraction beyond (Abramowitz &
 * Stegun 7.1.6 and 26.2.14, memory): good to 1e-12, which a likelihood of a million putts needs and odds do not.
 */
export function shareBelow(z: number): number {
  if (!Number.isFinite(z)) return z > 0 ? 1 : 0;
  const size = Math.abs(z);
  const density = Math.exp((-size * size) / 2) / Math.sqrt(2 * Math.PI);
  let upper: number;
  if (size < 3) {
    let term = size;
    let sum = size;
    for (let k = 3; term > 1e-17 * sum; k += 2) {
      term *= (size * size) / k;
      sum += term;
    }
    upper = 0.5 - density * sum;
  } else {
    let fraction = size;
    for (let k = 40; k >= 1; k--) fraction = size + k / fraction;
    upper = density / fraction;
  }
  return z < 0 ? upper : 1 - upper;
}

/** A standard normal number from two uniform ones (Box & Muller, Ann. Math. Statist. 29, 610, 1958). */
export const drawNormal = (random: () => number): number =>
  // 1 - u keeps the logarithm finite.
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Gauss-Legendre: nodes on [-1, 1] and weights that sum to 2. */
export const GAUSS_3 = {
  nodes: [-0.774596669241483, 0, 0.774596669241483],
  weights: [0.555555555555556, 0.888888888888889, 0.555555555555556],
};
export const GAUSS_5 = {
  nodes: [-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664],
  weights: [0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189],
};

/** Farthest of the normal points, SD (what lies beyond is 6e-5 of all), and how far apart they are unless asked for closer. */
const FARTHEST = 4;
export const APART = 0.5;

/**
 * A normal error as equally spaced points: for a smooth integrand as good as many more (the trapezoid rule on a bell curve).
 * @param sd 0: the one point 0 @param apart SD from point to point
 */
export function normalPoints(
  sd: number,
  apart = APART,
): readonly { readonly value: number; readonly share: number }[] {
  if (sd === 0) return [{ value: 0, share: 1 }];
  const steps = Math.ceil(FARTHEST / apart);
  const scores = Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * apart);
  const total = scores.reduce((sum, z) => sum + normalDensity(z), 0);
  return scores.map((z) => ({ value: sd * z, share: normalDensity(z) / total }));
}
