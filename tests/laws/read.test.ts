/** Laws of the read: symmetries of the ground are symmetries of the line, and break grows with what makes it. Seeds fixed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feetToMetres, type Line, type Putt, planeSurface, readPutt } from '../../sim/index.ts';

interface Setting {
  readonly slope: number;
  readonly downhill: number;
  readonly feet: number;
  readonly length: number;
  /** Bearing hole -> ball, radians. */
  readonly bearing: number;
  readonly pace: number;
}

const puttOf = ({ slope, downhill, feet, length, bearing }: Setting): Putt => ({
  surface: planeSurface({ slope, downhill }),
  greenSpeed: feetToMetres(feet),
  ball: { x: 1 + length * Math.cos(bearing), y: 2 + length * Math.sin(bearing) },
  hole: { x: 1, y: 2 },
  capture: 'simple',
});

const lineOf = (setting: Setting): Line => {
  const read = readPutt(puttOf(setting), setting.pace);
  if (read.status !== 'ok') throw new Error(`expected a line, got: ${read.reason}`);
  return read;
};
const aimOf = (setting: Setting): number => {
  const { aimOffset } = lineOf(setting);
  if (aimOffset === undefined) throw new Error('expected an aim beside the hole');
  return aimOffset;
};

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
/** Ordinary putts, all of which have a line: the slope holds a ball with room to spare. */
const setting: fc.Arbitrary<Setting> = fc.record({
  slope: between(0, 0.04),
  downhill: between(-Math.PI, Math.PI),
  feet: between(7, 11),
  length: between(1, 8),
  bearing: between(-Math.PI, Math.PI),
  pace: between(0.1, 1),
});

/** Aims, m, and speeds, m/s: a tenth of the 0.5 mm the aim must be good to, as two solutions are compared. */
const SAME = 5e-5;

const expectSame = (found: number, wanted: number): void =>
  expect(Math.abs(found - wanted)).toBeLessThan(SAME);

describe('the line to the hole', () => {
  it('turns with the ground', () => {
    fc.assert(
      fc.property(setting, between(-Math.PI, Math.PI), (given, turn) => {
        const turned = { ...given, downhill: given.downhill + turn, bearing: given.bearing + turn };
        expectSame(aimOf(turned), aimOf(given));
        expectSame(lineOf(turned).speed, lineOf(given).speed);
        expectSame(lineOf(turned).curveHeight, lineOf(given).curveHeight);
      }),
      { seed: 201, numRuns: 100 },
    );
  });

  it('mirrors with the ground: as much break to the other side', () => {
    fc.assert(
      fc.property(setting, (given) => {
        const mirrored = { ...given, downhill: -given.downhill, bearing: -given.bearing };
        expectSame(aimOf(mirrored), -aimOf(given));
        expectSame(lineOf(mirrored).speed, lineOf(given).speed);
        expectSame(lineOf(mirrored).curveHeight, -lineOf(given).curveHeight);
      }),
      { seed: 202, numRuns: 100 },
    );
  });

  it('is straight up or down the fall line', () => {
    fc.assert(
      fc.property(setting, fc.constantFrom(0, Math.PI), (given, side) => {
        const straight = lineOf({ ...given, bearing: given.downhill + side });
        expectSame(straight.start, 0);
        expectSame(straight.curveHeight, 0);
      }),
      { seed: 203, numRuns: 100 },
    );
  });

  it('crosses to the low side from the high side: pin-high it is aimed uphill', () => {
    fc.assert(
      fc.property(setting, (given) => {
        fc.pre(given.slope > 0.002);
        // Ball a quarter turn counter-clockwise from downhill: facing the hole, downhill is to the left.
        expect(aimOf({ ...given, bearing: given.downhill + Math.PI / 2 })).toBeLessThan(0);
        expect(aimOf({ ...given, bearing: given.downhill - Math.PI / 2 })).toBeGreaterThan(0);
      }),
      { seed: 204, numRuns: 60 },
    );
  });

  it('never needs less break pin-high when the slope is steeper', () => {
    fc.assert(
      fc.property(setting, between(0, 0.01), (given, more) => {
        const pinHigh = { ...given, bearing: given.downhill + Math.PI / 2 };
        const steeper = { ...pinHigh, slope: pinHigh.slope + more };
        expect(Math.abs(aimOf(steeper))).toBeGreaterThan(Math.abs(aimOf(pinHigh)) - SAME);
      }),
      { seed: 205, numRuns: 100 },
    );
  });

  it('never needs less break pin-high when the green is faster', () => {
    fc.assert(
      fc.property(setting, between(0, 2), (given, more) => {
        const pinHigh = { ...given, bearing: given.downhill + Math.PI / 2 };
        const faster = { ...pinHigh, feet: pinHigh.feet + more };
        expect(Math.abs(aimOf(faster))).toBeGreaterThan(Math.abs(aimOf(pinHigh)) - SAME);
      }),
      { seed: 206, numRuns: 100 },
    );
  });

  it('never needs more break pin-high when hit firmer', () => {
    fc.assert(
      fc.property(setting, between(0, 0.5), (given, more) => {
        const pinHigh = { ...given, bearing: given.downhill + Math.PI / 2 };
        expect(Math.abs(aimOf({ ...pinHigh, pace: pinHigh.pace + more }))).toBeLessThan(
          Math.abs(aimOf(pinHigh)) + SAME,
        );
      }),
      { seed: 207, numRuns: 100 },
    );
  });
});
