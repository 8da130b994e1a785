/** Start line from gates: Jeffreys' interval of a share turned into angles, brute force for several gates, coverage. */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  degreesToRadians,
  type GateRun,
  gateAngle,
  proportionInterval,
  startLine,
  tellingWidth,
} from '../../../sim/index.ts';
import { normals } from '../../support/normals.ts';

const NARROW = { width: 0.06, distance: 0.6 };
const WIDE = { width: 0.1, distance: 0.6 };

const found = (gates: readonly GateRun[]) => {
  const line = startLine(gates);
  if (line === undefined) throw new Error('there were tries');
  return line;
};
/** The z that this share of a standard normal lies within, by jstat. */
const within = (share: number): number => jStat.normal.inv((1 + share) / 2, 0, 1);

describe('the angle a gate leaves', () => {
  it('is what is left of its width beside the ball, seen from the ball', () => {
    // 60 mm less a ball of 42.67 mm leaves 8.665 mm to either side: 0.827 degrees at 60 cm.
    expect(gateAngle(NARROW)).toBeCloseTo(Math.atan(0.008665 / 0.6), 12);
  });
  it.each([0.03, 0.04267, Number.NaN])('is refused for a gate of %f m, which no ball passes', (width) => {
    expect(() => gateAngle({ width, distance: 0.6 })).toThrow(/expected one wider than a ball/);
  });
});

describe('one gate', () => {
  it.each([
    [2, 10],
    [5, 10],
    [17, 20],
    [60, 100],
  ])('with %i of %i passes gives the interval of that share, turned into angles', (passes, tries) => {
    const line = found([{ ...NARROW, passes, tries }]);
    const share = proportionInterval(passes, tries);
    const angle = gateAngle(NARROW);
    // Two ways to one interval: ours is summed over 2500 places.
    expect(line.low / (angle / within(share.high))).toBeCloseTo(1, 3);
    expect(line.high / (angle / within(share.low))).toBeCloseTo(1, 3);
    expect((line.value ?? 0) / (angle / within(passes / tries))).toBeCloseTo(1, 6);
  });

  it('that lets all or none through has one end, where that would happen once in forty', () => {
    const all = found([{ ...NARROW, passes: 10, tries: 10 }]);
    expect(all).toMatchObject({ value: undefined, low: 0, passes: 10, tries: 10 });
    // p^10 = 0.025.
    expect(all.high / (gateAngle(NARROW) / within(0.025 ** 0.1))).toBeCloseTo(1, 6);
    const none = found([{ ...NARROW, passes: 0, tries: 10 }]);
    expect(none).toMatchObject({ value: undefined, high: Number.POSITIVE_INFINITY });
    expect(none.low / (gateAngle(NARROW) / within(1 - 0.025 ** 0.1))).toBeCloseTo(1, 6);
  });

  it('that stops all but one, or one, has one end like the interval of the share', () => {
    expect(found([{ ...NARROW, passes: 9, tries: 10 }]).low).toBe(0);
    expect(proportionInterval(9, 10).high).toBe(1);
    expect(found([{ ...NARROW, passes: 1, tries: 10 }]).high).toBe(Number.POSITIVE_INFINITY);
  });

  it('without tries says nothing', () => {
    expect(startLine([])).toBeUndefined();
    expect(startLine([{ ...NARROW, passes: 0, tries: 0 }])).toBeUndefined();
  });
});

describe('several gates', () => {
  const gates: GateRun[] = [
    { ...NARROW, passes: 6, tries: 12 },
    { ...WIDE, passes: 11, tries: 12 },
  ];

  it('have the likelihood and the posterior that brute force over a fine grid has', () => {
    // Independent of ours: jstat's normal distribution, its own grid (even in the spread), Fisher information by differences.
    const shareAt = (gate: GateRun, sd: number): number =>
      2 * jStat.normal.cdf(gateAngle(gate) / sd, 0, 1) - 1;
    const step = degreesToRadians(0.002);
    const sds = Array.from({ length: 6000 }, (_, i) => degreesToRadians(0.5) + i * step);
    const heights = sds.map((sd) => {
      let likelihood = 1;
      let information = 0;
      for (const gate of gates) {
        const share = shareAt(gate, sd);
        const slope = (shareAt(gate, sd * 1.001) - shareAt(gate, sd * 0.999)) / (0.002 * sd);
        likelihood *= share ** gate.passes * (1 - share) ** (gate.tries - gate.passes);
        information += (gate.tries * slope ** 2) / (share * (1 - share));
      }
      return { likelihood, density: likelihood * Math.sqrt(information) };
    });
    const total = heights.reduce((sum, { density }) => sum + density, 0);
    let sum = 0;
    const below = heights.map(({ density }) => {
      sum += density;
      return sum;
    });
    const quantile = (share: number): number => sds[below.findIndex((one) => one >= share * total)];
    const line = found(gates);
    // jstat's normal is good to about 1e-7; the grid to half a step, 0.001 degrees of about one; below half a degree is nothing.
    expect(line.low).toBeCloseTo(quantile(0.025), 4);
    expect(line.high).toBeCloseTo(quantile(0.975), 4);
    const most = Math.max(...heights.map(({ likelihood }) => likelihood));
    expect(line.value).toBeCloseTo(sds[heights.findIndex(({ likelihood }) => likelihood === most)], 4);
  });

  it('know more together than either alone', () => {
    const width = (of: readonly GateRun[]): number => Math.log(found(of).high / found(of).low);
    const both: GateRun[] = [
      { ...NARROW, passes: 6, tries: 12 },
      { ...WIDE, passes: 9, tries: 12 },
    ];
    expect(width(both)).toBeLessThan(width([both[0]]));
    expect(width(both)).toBeLessThan(width([both[1]]));
  });

  it('far apart in width still have finite figures', () => {
    const line = found([
      { width: 0.045, distance: 1.5, passes: 1, tries: 10 },
      { width: 0.4, distance: 0.5, passes: 9, tries: 10 },
    ]);
    for (const figure of [line.value, line.low, line.high]) expect(figure).toSatisfy(Number.isFinite);
    expect(line.low).toBeLessThan(line.value ?? 0);
    expect(line.high).toBeGreaterThan(line.value ?? 0);
  });

  it.each([0.5, 0.9, 1.6])('hold a spread of %f degrees 19 times in 20', (degrees) => {
    const sd = degreesToRadians(degrees);
    const normal = normals(`gates ${degrees}`);
    const known = new Map<string, { low: number; high: number }>();
    const runs = 4000;
    let covered = 0;
    for (let run = 0; run < runs; run++) {
      const passes = [NARROW, WIDE].map((gate) => {
        let count = 0;
        for (let ball = 0; ball < 10; ball++) if (Math.abs(sd * normal()) < gateAngle(gate)) count++;
        return count;
      });
      const key = passes.join(' ');
      const line =
        known.get(key) ?? found([NARROW, WIDE].map((gate, i) => ({ ...gate, passes: passes[i], tries: 10 })));
      known.set(key, line);
      if (line.low <= sd && sd <= line.high) covered++;
    }
    // Counts are whole: like the interval of a share, from 90% at unlucky spreads to nearly all at lucky ones (MODEL.md section 5).
    expect(covered / runs).toBeGreaterThan(0.92);
    expect(covered / runs).toBeLessThan(0.99);
  });

  it('and one alone finds a spread over many balls', () => {
    const normal = normals('many');
    const sd = degreesToRadians(1.1);
    let passes = 0;
    for (let ball = 0; ball < 5000; ball++) if (Math.abs(sd * normal()) < gateAngle(NARROW)) passes++;
    const line = found([{ ...NARROW, passes, tries: 5000 }]);
    // Standard error 1.2% here; four of them.
    expect(Math.abs((line.value ?? 0) / sd - 1)).toBeLessThan(0.06);
  });
});

describe('the gate that tells most', () => {
  it.each([0.5, 1, 2])('of a spread of %f degrees is the one whose record moves most with it', (degrees) => {
    const sd = degreesToRadians(degrees);
    const distance = 0.6;
    /** Fisher information of ln sd of one ball, by jstat and differences. */
    const informationOf = (width: number): number => {
      const share = (of: number): number =>
        2 * jStat.normal.cdf(gateAngle({ width, distance }) / of, 0, 1) - 1;
      const slope = (share(sd * 1.001) - share(sd * 0.999)) / 0.002;
      return slope ** 2 / (share(sd) * (1 - share(sd)));
    };
    const best = informationOf(tellingWidth(sd, distance));
    // Flat near its top: within 0.1% of the best of any width, and clearly above gates half as roomy or twice.
    for (let room = 0.4; room < 2.5; room += 0.05) {
      const width = 0.04267 + room * (tellingWidth(sd, distance) - 0.04267);
      expect(informationOf(width)).toBeLessThan(best * 1.001);
    }
    for (const room of [0.5, 2]) {
      const width = 0.04267 + room * (tellingWidth(sd, distance) - 0.04267);
      expect(informationOf(width)).toBeLessThan(best * 0.8);
    }
  });
});
