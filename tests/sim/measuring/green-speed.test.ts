/**
 * Green speed and slope from rolls: the rules of thumb in feet, Brede's published mean, the engine's own rolls measured as a person
 * would, and coverage by simulation.
 */
import { describe, expect, it } from 'vitest';
import {
  feetToMetres,
  GRAVITY,
  halfWidth,
  type MeasuredSpeed,
  measureGreenSpeed,
  metresToFeet,
  type RampRoll,
  rampHeightFor,
  rampSlowings,
  rampSpeed,
  STIMP_SPEED,
  STOPWATCH,
  speedBehind,
  type TimedRoll,
  timedSlowings,
} from '../../../sim/index.ts';
import { normals } from '../../support/normals.ts';
import { coverage, type GroundUnderTest, rollOnGround } from './people.ts';

const measured = (found: MeasuredSpeed | undefined): MeasuredSpeed => {
  if (found === undefined) throw new Error('there were rolls');
  return found;
};
const timed = (rolls: readonly TimedRoll[]): MeasuredSpeed =>
  measured(measureGreenSpeed(timedSlowings(rolls)));
const slopeOf = ({ slope }: MeasuredSpeed) => {
  if (slope === undefined) throw new Error('there were rolls both ways');
  return slope;
};
const WAYS = ['there', 'back'] as const;

describe('a timed last stretch', () => {
  it.each([
    [8, 2.5],
    [10, 3],
    [6, 3.5],
    [12, 2.8],
  ])('of %f ft in %f s reads 9.0 t^2/d ft', (feet, seconds) => {
    const { greenSpeed } = timed([{ way: 'there', distance: feetToMetres(feet), seconds }]);
    // v_s^2/4 with 6.00 ft/s is 9.0 exactly; our v_s is that speed (1.8288 m/s) rounded to 1.83.
    expect(metresToFeet(greenSpeed.value) / ((9 * seconds ** 2) / feet)).toBeCloseTo((1.83 / 1.8288) ** 2, 9);
  });

  it('is worth more the longer it takes: twice the time, half the margin', () => {
    const one = timed([{ way: 'there', distance: 1, seconds: 2 }]);
    const long = timed([{ way: 'there', distance: 4, seconds: 4 }]);
    expect(long.greenSpeed.value).toBeCloseTo(one.greenSpeed.value, 12);
    const share = ({ greenSpeed }: MeasuredSpeed): number => Math.log(greenSpeed.high / greenSpeed.value);
    expect(share(long)).toBeCloseTo(share(one) / 2, 12);
  });
});

describe('rolls both ways', () => {
  /** A timed roll that reads so many feet: any stretch will do. */
  const reading = (way: 'there' | 'back', feet: number): TimedRoll => {
    const seconds = 3;
    return { way, distance: (STIMP_SPEED ** 2 * seconds ** 2) / (4 * feetToMetres(feet)), seconds };
  };

  it('that read 14 and 9 ft give 10.96 ft, Brede’s own example', () => {
    // Brede 1990, 1991 (read): 2 x 14 x 9/(14 + 9).
    const { greenSpeed, readings } = timed([reading('there', 9), reading('back', 14)]);
    expect(metresToFeet(greenSpeed.value)).toBeCloseTo(10.96, 2);
    expect(metresToFeet(readings.there ?? 0)).toBeCloseTo(9, 10);
    expect(metresToFeet(readings.back ?? 0)).toBeCloseTo(14, 10);
  });

  it.each([
    [9, 14],
    [8, 8],
    [12, 10],
  ])('that read %f and %f ft lie on a slope of 0.39 (1/there - 1/back)', (there, back) => {
    const slope = slopeOf(timed([reading('there', there), reading('back', back)]));
    // The factor in full: v_s^2/(4 (5/7) g) with 6.00 ft/s and 32.174 ft/s^2 is 0.3916.
    expect(slope.value).toBeCloseTo(0.3916 * (1 / there - 1 / back), 4);
  });

  it.each([
    [8, 0.01],
    [10, 0],
    [10, 0.02],
    [12, 0.03],
  ])('find the %f ft and the slope of %f that the engine rolled on', (feet, slope) => {
    const ground: GroundUnderTest = { greenSpeed: feetToMetres(feet), slope, turn: 0 };
    const rolls = WAYS.map((way) => ({
      way,
      ...rollOnGround(ground, { speed: 2.2, back: way === 'back', mark: 1 }),
    }));
    const found = timed(rolls);
    // The person's mark lies between points 2.5 cm apart on the engine's path: a millisecond or so of three seconds.
    expect(metresToFeet(found.greenSpeed.value)).toBeCloseTo(feet, 2);
    expect(slopeOf(found).value).toBeCloseTo(slope, 4);
  });

  it('along a line that runs 30 degrees off the fall find the slope along it, and read a little fast', () => {
    const ground: GroundUnderTest = { greenSpeed: 3.048, slope: 0.01, turn: Math.PI / 6 };
    const off = (kind: 'timed' | 'ramp'): MeasuredSpeed => {
      const height = rampHeightFor(STIMP_SPEED);
      if (kind === 'timed')
        return timed(
          WAYS.map((way) => ({
            way,
            ...rollOnGround(ground, { speed: 2.2, back: way === 'back', mark: 1 }),
          })),
        );
      const rolls = WAYS.map((way) => ({
        way,
        ...rollOnGround(ground, { speed: STIMP_SPEED, back: way === 'back' }),
      }));
      return measured(measureGreenSpeed(rampSlowings(rolls, height)));
    };
    // MODEL.md section 6 says how much: 0.07 ft timed, 0.02 ft off a ramp at 10 ft and 1%.
    const byWatch = metresToFeet(off('timed').greenSpeed.value);
    expect(byWatch).toBeGreaterThan(10.02);
    expect(byWatch).toBeLessThan(10.15);
    const byRamp = metresToFeet(off('ramp').greenSpeed.value);
    expect(byRamp).toBeGreaterThan(10.005);
    expect(byRamp).toBeLessThan(10.03);
    // Along the line 1% x cos 30.
    expect(Math.abs(slopeOf(off('ramp')).value - 0.00866)).toBeLessThan(0.0001);
  });
});

describe('rolls one way only', () => {
  it('give no slope, and say what a tilt would hide', () => {
    const ground: GroundUnderTest = { greenSpeed: 3.048, slope: 0.01, turn: 0 };
    const up = timed([{ way: 'there', ...rollOnGround(ground, { speed: 2.2, mark: 1 }) }]);
    expect(up.slope).toBeUndefined();
    expect(speedBehind(up.greenSpeed.value, 0.01)).toBeCloseTo(3.048, 3);
    // A ball on 8% at 10 ft does not stop (7.8% holds it, MODEL.md section 1): the climb alone slows that much.
    expect(speedBehind(3.048, 0.08)).toBe(Number.POSITIVE_INFINITY);
  });

  it('are nothing without rolls', () => {
    expect(measureGreenSpeed([])).toBeUndefined();
  });
});

describe('a ramp', () => {
  it('sends a ball off at sqrt(10 g h/7), and at the device’s speed from 24 cm', () => {
    // A solid sphere that rolls down h without slipping: any mechanics text.
    expect(rampSpeed(0.2)).toBeCloseTo(Math.sqrt((10 * GRAVITY * 0.2) / 7), 12);
    expect(rampHeightFor(STIMP_SPEED)).toBeCloseTo(0.239, 3);
    expect(rampSpeed(rampHeightFor(1.4))).toBeCloseTo(1.4, 12);
  });

  it('of any height finds the engine’s green speed', () => {
    for (const height of [0.1, rampHeightFor(STIMP_SPEED), 0.4]) {
      const ground: GroundUnderTest = { greenSpeed: feetToMetres(9), slope: 0.015, turn: 0 };
      const rolls: RampRoll[] = WAYS.map((way) => ({
        way,
        ...rollOnGround(ground, { speed: rampSpeed(height), back: way === 'back' }),
      }));
      const found = measured(measureGreenSpeed(rampSlowings(rolls, height)));
      // Nothing is read off a path here: as exact as the engine's rest.
      expect(metresToFeet(found.greenSpeed.value)).toBeCloseTo(9, 8);
      expect(slopeOf(found).value).toBeCloseTo(0.015, 8);
    }
  });

  it('at the device’s height reads the distance itself', () => {
    const rolls: RampRoll[] = [{ way: 'there', distance: 2.9 }];
    const found = measured(measureGreenSpeed(rampSlowings(rolls, rampHeightFor(STIMP_SPEED))));
    expect(found.greenSpeed.value).toBeCloseTo(2.9, 12);
  });
});

describe('the margin', () => {
  /** Rolls on 10 ft, 1% up the one way, by somebody whose watch and green scatter as told. */
  const person = (seed: string, perWay: number, spread: number, common: number) => {
    const normal = normals(seed);
    return (): TimedRoll[] => {
      const late = common * normal();
      return WAYS.flatMap((way) => {
        const slowing = 0.5494 + (way === 'there' ? 1 : -1) * (5 / 7) * GRAVITY * 0.01;
        return Array.from({ length: perWay }, () => {
          const distance = 2.2 + 0.8 * Math.abs(normal());
          return { way, distance, seconds: Math.sqrt((2 * distance) / slowing) + late + spread * normal() };
        });
      });
    };
  };
  const truth = STIMP_SPEED ** 2 / (2 * 0.5494);

  it.each([
    // Scatter as expected: the factor is Student's for 4 degrees, and a normal error stays within that 99.4% of the time, ...
    [1, STOPWATCH.spread, 0.999],
    // ... less and less so as the rolls speak for themselves.
    [2, STOPWATCH.spread, 0.99],
    [5, STOPWATCH.spread, 0.98],
    [5, 0.15, 0.98],
    [1, 0.12, 0.999],
  ])(
    'with %i rolls each way and a thumb that spreads %f s holds the truth 19 times in 20',
    (perWay, spread, most) => {
      const rolls = person(`cover ${perWay} ${spread}`, perWay, spread, STOPWATCH.common);
      const sets = Array.from({ length: 1200 }, () => timed(rolls()));
      // Counting error 0.6 points.
      const speed = coverage(sets.length, truth, (run) => sets[run].greenSpeed);
      expect(speed).toBeGreaterThan(0.93);
      expect(speed).toBeLessThan(most);
      const slope = coverage(sets.length, 0.01, (run) => slopeOf(sets[run]));
      expect(slope).toBeGreaterThan(0.93);
      expect(slope).toBeLessThan(most);
    },
  );

  it('shrinks with more rolls, as foretold, but never below what the watch leaves', () => {
    const rolls = person('shrink', 40, 0.1, 0);
    const many = rolls();
    const some = timed([...many.slice(0, 3), ...many.slice(40, 43)]);
    expect(some.marginWithTwoMore).toBeLessThan(halfWidth(some.greenSpeed));
    expect(some.marginAtBest).toBeLessThan(some.marginWithTwoMore);
    const all = timed(many);
    expect(halfWidth(all.greenSpeed)).toBeLessThan(some.marginWithTwoMore);
    expect(halfWidth(all.greenSpeed)).toBeGreaterThan(all.marginAtBest);
    // 0.05 s too long in 3 s is 3.3% of the reading; two standard deviations of that, of 10 ft, are 0.65 ft.
    expect(metresToFeet(all.marginAtBest)).toBeGreaterThan(0.5);
    expect(metresToFeet(all.marginAtBest)).toBeLessThan(0.75);
  });

  it('widens when the rolls disagree', () => {
    const roll = (seconds: number): TimedRoll => ({ way: 'there', distance: 2.5, seconds });
    const calm = timed([3, 3.05, 2.95, 3].map(roll));
    const wild = timed([3, 3.6, 2.4, 3].map(roll));
    expect(wild.scatter).toBeGreaterThan(2);
    expect(calm.scatter).toBeLessThan(1);
    expect(halfWidth(wild.greenSpeed)).toBeGreaterThan(2 * halfWidth(calm.greenSpeed));
  });
});
