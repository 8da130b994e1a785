/** The map's frame, its ink and the typed aim. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planeSurface } from '../../../sim/index.ts';
import { aimFieldText, aimSteps, parseAim } from '../../../src/screens/read/aimText.ts';
import { contourStep, drawGround } from '../../../src/screens/read/ground.ts';
import { aimThrough, makeView } from '../../../src/screens/read/view.ts';

const coordinate = fc.double({ min: -20, max: 20, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const size = { width: 800, height: 700 };

describe('the frame of the map', () => {
  it('puts the ball below the hole, both on the page, wherever they lie on the green', () => {
    fc.assert(
      fc.property(point, point, fc.double({ min: 0.05, max: 1.5, noNaN: true }), (ball, hole, pace) => {
        if (Math.hypot(ball.x - hole.x, ball.y - hole.y) < 0.5) return;
        const view = makeView({ ball, hole, pace, ...size });
        const low = view.toPixels(ball);
        const high = view.toPixels(hole);
        // A thousandth of a pixel: rounding of a rotation.
        expect(Math.abs(low.x - high.x)).toBeLessThan(1e-3);
        expect(low.y).toBeGreaterThan(high.y);
        expect(low.y).toBeLessThan(size.height);
        expect(high.y).toBeGreaterThan(0);
      }),
      { seed: 41 },
    );
  });

  it('comes back from pixels to the ground it started from', () => {
    fc.assert(
      fc.property(point, (place) => {
        const view = makeView({ ball: { x: 1, y: 2 }, hole: { x: 4, y: -1 }, pace: 0.3, ...size });
        const { x, y } = view.toPixels(place);
        const { across, along } = view.unplace(x, y);
        const back = view.toGround(across, along);
        expect(back.x).toBeCloseTo(place.x, 9);
        expect(back.y).toBeCloseTo(place.y, 9);
      }),
      { seed: 42 },
    );
  });

  it('takes a touch half way as the line through it: left on the page is a positive aim', () => {
    const view = makeView({ ball: { x: 0, y: -4 }, hole: { x: 0, y: 0 }, pace: 0.3, ...size });
    expect(aimThrough(view, -0.2, 2)).toBeCloseTo(0.4, 12);
    expect(aimThrough(view, 0.1, 4)).toBeCloseTo(-0.1, 12);
    expect(Math.abs(aimThrough(view, -50, 4))).toBe(view.half);
  });

  it('gives nothing away: the frame is the same whichever way the ground falls', () => {
    const options = { ball: { x: 0, y: -4 }, hole: { x: 0, y: 0 }, pace: 0.3, ...size };
    // The view takes no surface at all; equal putts have equal scales.
    expect(makeView(options).scale).toBe(makeView({ ...options, ball: { x: 4, y: 0 } }).scale);
  });
});

describe('the ink', () => {
  const view = makeView({ ball: { x: 0, y: -4 }, hole: { x: 0, y: 0 }, pace: 0.3, ...size });

  it('draws as many contours as the plane rises steps across the map', () => {
    // Falls to the right by 3%: contours stand upright, so one row of cells shows each once.
    const { contours, indexContours } = drawGround(planeSurface({ slope: 0.03, downhill: 0 }), view);
    const xs = new Set(
      [...`${contours}${indexContours}`.matchAll(/M([\d.-]+) /g)].map(([, x]) => Math.round(Number(x) / 4)),
    );
    const expected = (size.width / view.scale) * (0.03 / contourStep(view.length));
    // One more or less by where the levels fall at the edges; pixels rounded to 4 may split one in two at most rarely.
    expect(Math.abs(xs.size - expected)).toBeLessThanOrEqual(1.5);
  });

  it('points its strokes down the slope', () => {
    const { hachures } = drawGround(planeSurface({ slope: 0.02, downhill: 0 }), view);
    const first = /^M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)L/.exec(hachures);
    if (first === null) throw new Error('no hachures');
    // From the thick end to the tip: to the right, where the plane falls.
    expect(Number(first[3])).toBeGreaterThan(Number(first[1]));
  });

  it('draws nothing on level ground', () => {
    expect(drawGround(planeSurface({ slope: 0, downhill: 0 }), view)).toEqual({
      contours: '',
      indexContours: '',
      hachures: '',
    });
  });
});

describe('a typed aim', () => {
  it.each([
    ['12', 0.3048, undefined],
    ['12.5 in left', 0.3175, 'left'],
    ['30 cm r', 0.3, 'right'],
    ['0', 0, undefined],
    ['4,5"', 0.1143, undefined],
  ] as const)('“%s” is understood', (text, metres, side) => {
    const parsed = parseAim(text, 'imperial');
    if (!parsed.ok) throw new Error(parsed.problem);
    expect(parsed.size).toBeCloseTo(metres, 12);
    expect(parsed.side).toBe(side);
  });

  it.each(['', '-3', 'a cup', '3 ft', '1e9', '12 12', '99999', 'NaN', 'left'])(
    '“%s” is turned down with a sentence',
    (text) => {
      expect(parseAim(text, 'imperial')).toMatchObject({
        ok: false,
        problem: expect.stringMatching(/^Got .+, expected .+\. Type /),
      });
    },
  );

  it('is never an endless or negative number, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('imperial' as const, 'metric' as const), (text, units) => {
        const parsed = parseAim(text, units);
        if (parsed.ok) expect(parsed.size).toBeGreaterThanOrEqual(0);
        else expect(parsed.problem).toMatch(/^Got /);
      }),
      { seed: 43, numRuns: 1000 },
    );
  });

  it('shows what keys chose and reads it back the same', () => {
    for (const units of ['imperial', 'metric'] as const) {
      const { step, fine } = aimSteps(units);
      const aim = 5 * step - fine;
      const parsed = parseAim(aimFieldText(aim, units), units);
      expect(parsed.ok && parsed.size).toBeCloseTo(aim, 12);
    }
  });
});
