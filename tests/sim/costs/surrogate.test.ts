/** The quadratic, the intervals and the cubics over length against closed forms. */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { chanceAbove, intervalOf } from '../../../sim/costs/intervals.ts';
import { addWeights } from '../../../sim/costs/round-costs.ts';
import { type Axis, playersFor, surrogateOf } from '../../../sim/costs/surrogate.ts';
import { type Player, seededRandom } from '../../../sim/index.ts';
import { PLAYER_ERRORS as ERRORS } from '../../../sim/player/errors.ts';

const MIDDLE: Player = {
  lineSd: 0.02,
  paceSd: 0.1,
  paceBias: 0.01,
  slopeSd: 0.1,
  speedSd: 0.4,
  readBias: -0.1,
};
const AXES: readonly Axis[] = ERRORS.map((error, i) => ({
  error,
  below: -0.004 * (i + 1),
  above: 0.003 * (i + 2),
}));

describe('the surrogate', () => {
  it('is exact for any quadratic, and plays no more players than that has coefficients', () => {
    const random = seededRandom('quadratic');
    const numbers = Array.from({ length: 60 }, () => random() - 0.5);
    const quadratic = (player: Player): number => {
      const x = ERRORS.map((error) => player[error]);
      let k = 0;
      let sum = numbers[k++];
      for (let i = 0; i < 6; i++) {
        sum += numbers[k++] * x[i];
        for (let j = 0; j <= i; j++) sum += numbers[k++] * x[i] * x[j];
      }
      return sum;
    };
    let played = 0;
    const surrogate = surrogateOf(MIDDLE, AXES, (player) => {
      played++;
      return Float64Array.of(quadratic(player), 2 * quadratic(player));
    });
    expect(played).toBe(playersFor(6));
    expect(played).toBe(28);
    for (let tried = 0; tried < 20; tried++) {
      const player = { ...MIDDLE };
      for (const error of ERRORS) player[error] += 0.2 * (random() - 0.5);
      expect(surrogate.valueAt(player, 0)).toBeCloseTo(quadratic(player), 9);
      expect(surrogate.valueAt(player, 1)).toBeCloseTo(2 * quadratic(player), 9);
    }
  });
});

describe('intervals over likely players', () => {
  it('are the central 95% of what they are given: those of a normal distribution (jstat), weighted or not', () => {
    const normal = Float64Array.from({ length: 20_000 }, (_, i) =>
      jStat.normal.inv((i + 0.5) / 20_000, 0.3, 0.1),
    );
    const even = intervalOf(normal, new Float64Array(normal.length).fill(2));
    // Steps between neighbours at the tails are 0.0001 SD.
    expect(even.value).toBeCloseTo(0.3, 6);
    expect(even.low).toBeCloseTo(jStat.normal.inv(0.025, 0.3, 0.1), 3);
    expect(even.high).toBeCloseTo(jStat.normal.inv(0.975, 0.3, 0.1), 3);
    // Evenly spaced values weighted by the density are the same distribution.
    const spaced = Float64Array.from({ length: 4001 }, (_, i) => -0.2 + i * 0.00025);
    const weighted = intervalOf(
      spaced,
      spaced.map((value) => jStat.normal.pdf(value, 0.3, 0.1)),
    );
    expect(weighted.low).toBeCloseTo(even.low, 3);
    expect(weighted.high).toBeCloseTo(even.high, 3);
  });

  it('of one player are his value, and a tie is half a chance', () => {
    expect(intervalOf(Float64Array.of(0.5), Float64Array.of(4))).toEqual({ value: 0.5, low: 0.5, high: 0.5 });
    expect(chanceAbove(Float64Array.of(1, 0, -1), Float64Array.of(1, 1, 2))).toBeCloseTo(1.5 / 4, 12);
  });
});

describe('lengths between those of the table', () => {
  const LENGTHS = [0.5, 1, 1.5, 2.5, 4, 6, 9];
  const read = (length: number, of: (length: number) => number): number => {
    const weights = new Float64Array(LENGTHS.length + 1);
    addWeights(LENGTHS, length, 1, weights);
    return LENGTHS.reduce((sum, at, i) => sum + weights[i] * of(at), weights[LENGTHS.length]);
  };

  it('are exact for cubics in the logarithm of length', () => {
    const cubic = (length: number): number => {
      const x = Math.log(length);
      return 1.3 + 0.4 * x - 0.2 * x * x + 0.05 * x ** 3;
    };
    for (const length of [0.6, 1.2, 2, 3.3, 5, 8.9])
      expect(read(length, cubic)).toBeCloseTo(cubic(length), 9);
  });

  it('come to one putt at the lip, and count as the farthest beyond it', () => {
    expect(read(0, () => 1.4)).toBeCloseTo(1, 12);
    expect(read(0.25, () => 1.4)).toBeCloseTo(1.2, 12);
    expect(read(20, (length) => length)).toBeCloseTo(9, 9);
  });
});
