/**
 * People who read greens day by day, sloppily: for testing intervals of the reading bias. Answers for: reads whose long-run bias is known.
 * Shares no code and no form with the estimate: days are even, not normal, steps; errors have long tails; some days are careless; the
 * hand adds inches; reads are few on some days and many on others.
 */
import { seededRandom } from '../../sim/random.ts';

export interface Reader {
  /** Mean share of the break by which reads are off, over all days. */
  readonly bias: number;
  /** SD of a read about its day, share. */
  readonly spread: number;
  /** SD of days, share. */
  readonly daySd: number;
}

export interface ReaderRead {
  readonly day: string;
  readonly trueAim: number;
  readonly aim: number;
}

/** Reads of so many days, 3 to 20 on each. */
export function readsBy({ bias, spread, daySd }: Reader, days: number, seed: string): ReaderRead[] {
  const random = seededRandom(`reader ${seed}`);
  const signed = (): number => 2 * random() - 1;
  // Laplace's: an exponential either way, SD 1; one in twenty of a normal size would be beyond 2, here one in seventeen, and farther.
  const longTailed = (): number => (Math.sign(signed()) * -Math.log(1 - random())) / Math.SQRT2;
  return Array.from({ length: days }, (_, day) => {
    // Evenly spread, SD 1: sqrt(3) either way.
    const ofDay = daySd * Math.sqrt(3) * signed();
    const care = 0.6 + 0.8 * random();
    return Array.from({ length: 3 + Math.floor(18 * random() ** 2) }, () => {
      const trueAim = signed() * (random() < 0.3 ? 0.9 : 0.25);
      const off = bias + ofDay + spread * care * longTailed();
      // To the next half inch, as a finger sets it.
      const aim = Math.round((trueAim * (1 + off) + 0.012 * signed()) / 0.0127) * 0.0127;
      return { day: `day-${day}`, trueAim, aim };
    });
  }).flat();
}
