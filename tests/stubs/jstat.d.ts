/**
 * Types of the part of jstat 1.9.6 (an independent statistics library) that tests use as an oracle. The package has none.
 * Import the default: `import jStat from 'jstat'`.
 */

interface Continuous {
  pdf(x: number, a: number, b: number): number;
  cdf(x: number, a: number, b: number): number;
  inv(p: number, a: number, b: number): number;
  mean(a: number, b: number): number;
  variance(a: number, b: number): number;
}

declare const jStat: {
  /** Parameters: alpha, beta. The quantile is good to about 6e-8. */
  readonly beta: Continuous;
  /** Parameters: mean, standard deviation. */
  readonly normal: Continuous;
  /** Parameters: shape, scale. */
  readonly gamma: Continuous;
  readonly binomial: {
    pdf(k: number, n: number, p: number): number;
    cdf(k: number, n: number, p: number): number;
  };
  readonly chisquare: {
    pdf(x: number, degrees: number): number;
    cdf(x: number, degrees: number): number;
    inv(p: number, degrees: number): number;
  };
  readonly studentt: {
    pdf(x: number, degrees: number): number;
    cdf(x: number, degrees: number): number;
    inv(p: number, degrees: number): number;
  };
  betafn(a: number, b: number): number;
  betaln(a: number, b: number): number;
  ibeta(x: number, a: number, b: number): number;
  ibetainv(p: number, a: number, b: number): number;
  gammaln(x: number): number;
  erf(x: number): number;
  erfc(x: number): number;
  erfcinv(p: number): number;
};

export default jStat;
