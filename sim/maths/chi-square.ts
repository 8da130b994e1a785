/**
 * Quantiles of the chi-square distribution, on which the interval of a spread rests.
 *
 * Answers for: the value a chi-square variable stays below with a given chance. Leaves out: everything else.
 * Sources: P(chi^2 < x) is the regularized incomplete gamma function P(n/2, x/2); its series for small x and continued fraction
 * for large x (Abramowitz & Stegun 6.5.29 and 6.5.31; memory), checked against jstat and printed tables in tests.
 */
import { lastPlace } from './halving.ts';
import { logGamma } from './incomplete-beta.ts';

/** Relative change at which a sum or fraction counts as settled, and the most terms it may take. */
const SETTLED = 1e-15;
const MOST_TERMS = 1000;

/** P(a, x): share of a gamma distribution with shape a below x; a above 0, x 0 or more. */
function incompleteGamma(a: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < MOST_TERMS && term > SETTLED * sum; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return front * sum;
  }
  // Continued fraction of the other share, by the modified Lentz method; its denominators are positive here.
  let b = x + 1 - a;
  let c = Number.POSITIVE_INFINITY;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const step = -n * (n - a);
    b += 2;
    d = 1 / (step * d + b);
    c = b + step / c;
    fraction *= c * d;
    if (Math.abs(c * d - 1) < SETTLED) break;
  }
  return 1 - front * fraction;
}

/**
 * The value that a chi-square variable stays below with this chance.
 * @param share 0 < share < 1
 * @param degrees of freedom, above 0
 */
export function chiSquareQuantile(share: number, degrees: number): number {
  const below = (x: number): boolean => incompleteGamma(degrees / 2, x / 2) < share;
  let high = Math.max(1, 2 * degrees);
  while (below(high)) high *= 2;
  return lastPlace(below, 0, high);
}
