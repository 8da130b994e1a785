/**
 * How strokes lie about the one meant: a t distribution, in start and energy at once. Answers for: its density by table, and the scale
 * that makes a spread half the width which holds 68%. Leaves out: the spreads (player-strokes.ts).
 *
 * A bell curve is its limit for many degrees of freedom; with few there is now and then a stroke far off, which widens the spread of
 * a fitted bell curve but says nothing of the others. 68%: the share within one SD of a bell curve, so that a spread is an SD where
 * errors are normal.
 */

/** Table of the density by squared distance. */
const REACH = 40;
const STEPS = 16;

export class Tails {
  private readonly table = new Float64Array(REACH * STEPS + 2);
  private degrees = Number.NaN;
  private power = 0;
  /** (spread / scale)^2. */
  squared = 1;

  /** @param degrees of freedom, above 2 */
  set(degrees: number): void {
    if (degrees === this.degrees) return;
    this.degrees = degrees;
    this.power = -(degrees + 2) / 2;
    const n = degrees;
    // Cornish & Fisher's expansion at the normal 84%: within 0.001 from three degrees on.
    const factor = 1 + 0.5 / n + 0.25 / n ** 2 + 0.0625 / n ** 3;
    this.squared = factor * factor;
    for (let i = 0; i < this.table.length; i++) this.table[i] = this.exact(i / STEPS);
  }

  private exact(square: number): number {
    return (this.squared * (1 + (square * this.squared) / this.degrees) ** this.power) / (2 * Math.PI);
  }

  /** Density of (start, energy), each in spreads, at this squared distance in spreads. */
  of(square: number): number {
    if (!(square < REACH)) return this.exact(square);
    const at = square * STEPS;
    const i = at | 0;
    return this.table[i] + (at - i) * (this.table[i + 1] - this.table[i]);
  }
}
