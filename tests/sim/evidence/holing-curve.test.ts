/** The player's curve: Bayes' rule counted out plainly, coverage by people who hole as published tables say, laws. */
import { describe, expect, it } from 'vitest';
import {
  BENCHMARKS,
  type CurveFamily,
  curveFamilyOf,
  curveShareAt,
  curveWithout,
  feetToMetres,
  type HoledTally,
  type HolingCurve,
  holingCurve,
  ownShareAt,
  playedHoles,
  playerShares,
  puttingBenchmarkOf,
  seededRandom,
  TOUR_HOLED,
  talliesOf,
} from '../../../sim/index.ts';
import { normals } from '../../support/normals.ts';
import { madeRecord } from '../../support/recordedPutts.ts';
import { sized } from '../../support/size.ts';
import { PUTTERS, putterRecord, talliesOfNoted } from '../../support/streakyPutter.ts';

function familyOf(id: string): CurveFamily {
  const benchmark = puttingBenchmarkOf(id);
  if (!benchmark) throw new Error('it is there');
  return curveFamilyOf(benchmark);
}
const family = familyOf('scratch-modelled');
const FEET = [3, 6, 10, 20];
const FEET_ASKED = [3, 5, 10, 20];
const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, one) => sum + one, 0) / values.length;
const widthAt = (curve: HolingCurve, feet: number): number => {
  const { low, high } = curveShareAt(curve, feetToMetres(feet));
  return high - low;
};

/** Putts of scratch players by the account of Broadie's figures (3, 5, 8, 10, 20 ft), straight between them over the logarithm of feet. */
const SCRATCH = [
  [1, 0.997],
  [3, 0.93],
  [5, 0.66],
  [8, 0.41],
  [10, 0.33],
  [20, 0.14],
  [60, 0.02],
];
const scratchHoles = (feet: number): number => {
  const i = Math.max(
    1,
    SCRATCH.findIndex(([at]) => at >= feet),
  );
  const [[x0, y0], [x1, y1]] = [SCRATCH[i - 1], SCRATCH[i]];
  return y0 + ((y1 - y0) * Math.log(Math.max(1, feet) / x0)) / Math.log(x1 / x0);
};
/** So many putts, twenty a day; distances as in a round: a few tap-ins, many short, some long. */
const puttsBy = (seed: string, count: number, feetOf?: () => number): HoledTally[] => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    const feet = feetOf?.() ?? 1.5 + 38 * random() ** 2.5;
    const holed = random() < scratchHoles(feet) ? 1 : 0;
    return { day: `day ${Math.floor(i / 20)}`, distance: feetToMetres(feet), tries: 1, holed };
  });
};

/**
 * Mean and 95% interval at some distances by Bayes' rule: players and days drawn from what is thought beforehand, each weighed by the
 * chance of the record, putt by putt. No peaks, no curvatures.
 */
function plainShares(tallies: readonly HoledTally[], distances: readonly number[]) {
  const normal = normals('plain');
  const days = [...new Set(tallies.map(({ day }) => day))];
  const seen = tallies.map(({ distance, holed, day }) => ({
    height: family.heightAt(distance),
    ways: family.waysAt(distance),
    holed,
    day: days.indexOf(day),
  }));
  const placed = (distance: number) => ({
    height: family.heightAt(distance),
    ways: family.waysAt(distance),
  });
  const asked = distances.map(placed);
  const everywhere = Array.from({ length: 40 }, (_, i) => placed(0.1 * 300 ** (i / 39)));
  const draws: { weight: number; shares: number[] }[] = [];
  for (let draw = 0; draw < 60_000; draw++) {
    const b = Array.from({ length: family.ways }, normal);
    // Half-normal, as MODEL.md has it.
    const daySd = 0.3 * Math.abs(normal());
    const shifts = days.map(() => daySd * normal());
    const missed = (of: (typeof asked)[number], shift: number): number =>
      1 / (1 + Math.exp(-(of.height + of.ways.reduce((sum, way, i) => sum + way * b[i], 0) + shift)));
    // Nobody holes a point more from farther off.
    let nearer = 1;
    let rises = false;
    for (const of of everywhere) {
      const share = 1 - missed(of, 0);
      rises ||= share > nearer + 0.01;
      nearer = Math.min(nearer, share);
    }
    if (rises) continue;
    let weight = 1;
    for (const one of seen) {
      const m = missed(one, shifts[one.day]);
      weight *= one.holed ? 1 - m : m;
    }
    // The long run: a few even shares of days.
    const shares = asked.map((of) =>
      meanOf([-1.53, -0.89, -0.49, -0.16, 0.16, 0.49, 0.89, 1.53].map((z) => 1 - missed(of, daySd * z))),
    );
    draws.push({ weight, shares });
  }
  const total = draws.reduce((sum, { weight }) => sum + weight, 0);
  return distances.map((_, k) => {
    const sorted = [...draws].sort((a, c) => a.shares[k] - c.shares[k]);
    const quantile = (part: number): number => {
      let sum = 0;
      for (const { weight, shares } of sorted) {
        sum += weight / total;
        if (sum >= part) return shares[k];
      }
      return 1;
    };
    const mean = draws.reduce((sum, { weight, shares }) => sum + (weight / total) * shares[k], 0);
    return { mean, low: quantile(0.025), high: quantile(0.975) };
  });
}

describe('a curve', () => {
  it.each([0, 6, 30])('of %i putts is Bayes’ rule counted out', (count) => {
    const tallies = puttsBy(`plain ${count}`, count);
    const curve = holingCurve(tallies, family);
    const feet = [3, 10, 30];
    for (const [k, plain] of plainShares(tallies, feet.map(feetToMetres)).entries()) {
      const ours = curveShareAt(curve, feetToMetres(feet[k]));
      // Normal about the peak on the scale of log odds, where nearly all drop a little off: two points of the mean, six of the lower
      // end, which lies 20 to 60 points below it; a point is chance of the 60,000 draws.
      expect(Math.abs(ours.mean - plain.mean), `${feet[k]} ft`).toBeLessThan(0.025);
      expect(Math.abs(ours.low - plain.low), `${feet[k]} ft low`).toBeLessThan(0.065);
      expect(Math.abs(ours.high - plain.high), `${feet[k]} ft high`).toBeLessThan(0.025);
    }
  });

  it('of no putts is the benchmark’s own, with a wide band, and says that it leans on it', () => {
    for (const benchmark of BENCHMARKS) {
      const curve = holingCurve([], curveFamilyOf(benchmark));
      expect(curve.effective).toEqual({ putts: 0, ownShare: 0, leansOn: 'benchmark' });
      expect(curve.family.name).toBe(benchmark.name);
      for (const feet of [3, 6, 10, 20, 40]) {
        const { low, high } = curveShareAt(curve, feetToMetres(feet));
        const theirs = benchmark.holedAt(feetToMetres(feet));
        expect(low).toBeLessThan(theirs);
        expect(high).toBeGreaterThan(theirs);
      }
    }
  });

  it('of the tour’s whole record is the tour’s table, whatever the benchmark', () => {
    // A thousand days of the published shares, spread evenly.
    const tallies = TOUR_HOLED.flatMap(({ feet, tries, holed }, row) =>
      Array.from({ length: 10 }, (_, day) => {
        const count = Math.round(tries / 100);
        return {
          day: `day ${10 * row + day}`,
          distance: feetToMetres(feet),
          tries: count,
          holed: Math.round((holed / tries) * count),
        };
      }),
    );
    for (const id of ['tour-record', 'scratch-modelled', 'averaging-90-modelled'])
      for (const { feet, tries, holed } of TOUR_HOLED.filter(({ feet: at }) => at > 2 && at < 50)) {
        const { mean } = curveShareAt(holingCurve(tallies, familyOf(id)), feetToMetres(feet));
        // Four ways and a bend too many in the table: a point and a quarter at worst; two numbers missed it by a point as well.
        expect(Math.abs(mean - holed / tries), `${id} ${feet} ft`).toBeLessThan(0.0125);
      }
  });

  it('one way from the tour’s is the one of golfers averaging 90', () => {
    const [tour, ninety] = ['tour-modelled', 'averaging-90-modelled'].map(familyOf);
    for (const feet of [2, 3, 5, 10, 20, 40]) {
      const metres = feetToMetres(feet);
      // One SD of the level is 1.3 such ways.
      expect(tour.heightAt(metres) + tour.waysAt(metres)[0] / 1.3).toBeCloseTo(ninety.heightAt(metres), 9);
    }
  });

  it('falls with distance, and so do the ends of its band', () => {
    const curve = holingCurve(puttsBy('falls', 50), family);
    let before = { mean: 1, low: 1, high: 1 };
    for (let distance = 0.5; distance < 20; distance += 0.5) {
      const now = curveShareAt(curve, distance);
      for (const end of ['mean', 'low', 'high'] as const) expect(now[end]).toBeLessThanOrEqual(before[end]);
      expect(now.low).toBeLessThan(now.mean);
      expect(now.high).toBeGreaterThan(now.mean);
      before = now;
    }
  });

  it('is not thrown by one careless tap-in', () => {
    const putts = puttsBy('tap-in', 60);
    const steady = curveShareAt(holingCurve(putts, family), feetToMetres(10));
    const careless = [...putts, { day: 'day 1', distance: feetToMetres(0.8), tries: 1, holed: 0 }];
    const after = curveShareAt(holingCurve(careless, family), feetToMetres(10));
    // One putt of sixty, however odd: less than a quarter of the half-width of the band (about 15 points).
    expect(Math.abs(steady.mean - after.mean)).toBeLessThan(0.035);
  });

  it('without a round is the curve that never saw it', () => {
    const holes = playedHoles(madeRecord(5, 'without').putts);
    const all = talliesOf(holes.flatMap(({ putts }) => putts));
    const never = holingCurve(
      talliesOf(holes.filter(({ roundId }) => roundId !== 'round-2').flatMap(({ putts }) => putts)),
      family,
    );
    const without = curveWithout(holingCurve(all, family), 'round-2');
    expect(without.effective).toEqual(never.effective);
    expect(without.effective.putts).toBeLessThan(all.length);
    for (const feet of FEET)
      expect(curveShareAt(without, feetToMetres(feet))).toEqual(curveShareAt(never, feetToMetres(feet)));
  });

  it('counts practice sets as so many putts of one day', () => {
    const struck = playedHoles(madeRecord(4, 'sets').putts).flatMap(({ putts }) => putts);
    const set = { id: 's', day: '2024-01-01', recordedAt: 0, distance: 2, ground: 'grass' as const };
    const together = talliesOf(struck, [{ ...set, attempts: 30, holed: 18 }]);
    const single = [
      ...talliesOf(struck),
      ...Array.from({ length: 30 }, (_, i) => ({
        day: '2024-01-01',
        distance: 2,
        tries: 1,
        holed: i % 5 < 3 ? 1 : 0,
      })),
    ];
    const [a, b] = [together, single].map((tallies) => holingCurve(tallies, family));
    expect(b.effective.putts).toBe(a.effective.putts);
    // Sums in another order.
    for (const feet of FEET)
      expect(curveShareAt(a, feetToMetres(feet)).mean).toBeCloseTo(
        curveShareAt(b, feetToMetres(feet)).mean,
        9,
      );
  });
});

describe('days', () => {
  it('that differ make the band wider, those that do not make it narrower', () => {
    const record = (holedOn: (day: number) => number): HoledTally[] =>
      Array.from({ length: 20 }, (_, day) => ({
        day: `day ${day}`,
        distance: feetToMetres(8),
        tries: 20,
        holed: holedOn(day),
      }));
    const [alike, apart] = [() => 10, (day: number) => (day % 2 ? 7 : 13)].map((holedOn) =>
      holingCurve(record(holedOn), family),
    );
    // By hand: 35 and 65% in turn are an SD of a day of 15 points, so that the mean of twenty days is good to 1.96 x 15 / sqrt(20) = 6.6
    // points either way; 400 putts alone to 4.9. A point for what is thought of days beforehand.
    expect(Math.abs(widthAt(apart, 8) / 2 - 0.066)).toBeLessThan(0.01);
    expect(Math.abs(widthAt(alike, 8) / 2 - 0.049)).toBeLessThan(0.01);
  });
});

describe('how sure a curve is', () => {
  it.each([
    ['tour', 0],
    ['tour', 0.3],
    ['averaging 90', 0],
    ['averaging 90', 0.3],
  ] as const)(
    'covers the truth of golfers who hole like the published %s, days differing by %d',
    (name, daySd) => {
      const golfers = sized(40, 120);
      const held = FEET_ASKED.map(() => 0);
      for (let golfer = 0; golfer < golfers; golfer++) {
        const record = putterRecord({ ...PUTTERS[name], daySd }, 12, `${name} ${daySd} ${golfer}`);
        const curve = holingCurve(talliesOfNoted(record), familyOf('tour-record'));
        for (const [k, feet] of FEET_ASKED.entries()) {
          const { low, high } = curveShareAt(curve, feetToMetres(feet));
          if (record.truth(feet) >= low && record.truth(feet) <= high) held[k]++;
        }
      }
      // 92% or more, less two counting errors of so many (2.5 points each of 120); the long version is tests/bench/curve-coverage.ts.
      const least = 0.92 - 2 * Math.sqrt((0.92 * 0.08) / golfers);
      for (const [k, feet] of FEET_ASKED.entries())
        expect(held[k] / golfers, `${feet} ft`).toBeGreaterThanOrEqual(least);
    },
  );

  it('grows with putts: narrower bands on average, and a larger part of one’s own', () => {
    const means = [0, 15, 60, 240].map((putts) => {
      const curves = Array.from({ length: 10 }, (_, run) =>
        holingCurve(puttsBy(`grows ${run}`, putts), family),
      );
      return {
        width: meanOf(curves.map((curve) => widthAt(curve, 8))),
        own: meanOf(curves.map(({ effective }) => effective.ownShare)),
      };
    });
    for (let i = 1; i < means.length; i++) {
      expect(means[i].width).toBeLessThan(means[i - 1].width);
      expect(means[i].own).toBeGreaterThan(means[i - 1].own);
    }
  });

  it('knows that short putts tell little of long ones', () => {
    const short = holingCurve(
      puttsBy('short', 400, () => 3),
      family,
    );
    expect(ownShareAt(short, feetToMetres(3))).toBeGreaterThan(0.9);
    expect(ownShareAt(short, feetToMetres(60))).toBeLessThan(ownShareAt(short, feetToMetres(3)) - 0.2);
  });

  it('says so in one word', () => {
    const words = [0, 2, 12, 400].map(
      (putts) => holingCurve(puttsBy('word', putts), family).effective.leansOn,
    );
    expect(words).toEqual(['benchmark', 'benchmark', 'both', 'record']);
  });
});

describe('players who could have made the record', () => {
  const curve = holingCurve(puttsBy('players', 40), family);
  const distances = [1, 2, 4, 9];

  it('hole on average what the curve says, and more or less on a day than its band holds', () => {
    const { weights, shares } = playerShares(curve, distances, 400, 3);
    expect(weights).toHaveLength(400);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    for (const [k, distance] of distances.entries()) {
      const { mean, low, high } = curveShareAt(curve, distance);
      const theirs = shares.map((player) => player[k]);
      // 400 days of at most 8 points each, three standard errors.
      expect(Math.abs(meanOf(theirs) - mean)).toBeLessThan(0.012);
      const outside = theirs.filter((share) => share < low || share > high).length / 400;
      // 5% of the players, and days of theirs: the band is some 20 points wide either way, a day 5.
      expect(outside).toBeGreaterThan(0.03);
      expect(outside).toBeLessThan(0.15);
    }
  });

  it('are the same players at every distance, and the same for the same seed', () => {
    const { shares } = playerShares(curve, distances, 100, 'seed');
    expect(playerShares(curve, distances, 100, 'seed').shares).toEqual(shares);
    const [alone] = [playerShares(curve, [4], 100, 'seed').shares.map(([share]) => share)];
    expect(alone).toEqual(shares.map((player) => player[2]));
    for (const player of shares)
      for (let k = 1; k < distances.length; k++) expect(player[k]).toBeLessThanOrEqual(player[k - 1]);
  });
});
