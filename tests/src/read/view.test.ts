/** The map's frame, what it shows when, and the typed aim. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { puttOfQuestion } from '../../../sim/index.ts';
import { makeCamera } from '../../../src/scene/camera.ts';
import { aimFieldText, aimSteps, parseAim } from '../../../src/screens/read/aimText.ts';
import type { Asked } from '../../../src/screens/read/asked.ts';
import { contourStep, mapModel, spotsOf } from '../../../src/screens/read/mapModel.ts';
import { revealOf } from '../../../src/screens/read/reveal.ts';
import { aimAt, aimSpot, fitView } from '../../../src/screens/read/view.ts';
import { sampleQuestion } from '../../support/sampleQuestion.ts';
import { answer, set as sampleSet } from '../../support/sampleSet.ts';

const coordinate = fc.double({ min: -20, max: 20, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const paces = fc.double({ min: 0.05, max: 1.5, noNaN: true });
const offsets = fc.double({ min: -10, max: 10, noNaN: true });
const room = { width: 800, height: 700 };
const apart = (one: { x: number; y: number }, two: { x: number; y: number }): number =>
  Math.hypot(one.x - two.x, one.y - two.y);

describe('the frame of the map', () => {
  it('puts the hole straight above the ball, both on the page, wherever they lie on the green', () => {
    fc.assert(
      fc.property(point, point, paces, (ball, hole, pace) => {
        if (apart(ball, hole) < 0.5) return;
        const { toPixel } = makeCamera(fitView({ ball, hole, pace, spots: [], room }), room);
        const low = toPixel(ball);
        const high = toPixel(hole);
        // A thousandth of a pixel: rounding of a rotation.
        expect(Math.abs(low.x - high.x)).toBeLessThan(1e-3);
        expect(low.y).toBeGreaterThan(high.y);
        expect(low.y).toBeLessThan(room.height);
        expect(high.y).toBeGreaterThan(0);
      }),
      { seed: 41 },
    );
  });

  it('has the person’s own aim in it, however far off', () => {
    fc.assert(
      fc.property(point, point, paces, offsets, (ball, hole, pace, aim) => {
        if (apart(ball, hole) < 0.5) return;
        const spot = aimSpot(ball, hole, aim);
        const { toPixel } = makeCamera(fitView({ ball, hole, pace, spots: [spot], room }), room);
        const { x, y } = toPixel(spot);
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(room.width);
        expect(y).toBeGreaterThan(0);
      }),
      { seed: 42 },
    );
  });

  it('takes a place to the left of the hole on the page as a positive aim, and only its distance across', () => {
    const ball = { x: 0, y: -4 };
    const hole = { x: 0, y: 0 };
    expect(aimAt(ball, hole, { x: -0.2, y: -1.7 })).toBeCloseTo(0.2, 12);
    expect(aimAt(ball, hole, { x: 0.1, y: 3 })).toBeCloseTo(-0.1, 12);
    const { toPixel } = makeCamera(fitView({ ball, hole, pace: 0.3, spots: [], room }), room);
    expect(toPixel(aimSpot(ball, hole, 0.2)).x).toBeLessThan(toPixel(hole).x);
  });

  it('comes back from a spot to the aim it was made of', () => {
    fc.assert(
      fc.property(point, point, offsets, (ball, hole, aim) => {
        if (apart(ball, hole) < 0.5) return;
        expect(aimAt(ball, hole, aimSpot(ball, hole, aim))).toBeCloseTo(aim, 9);
      }),
      { seed: 44 },
    );
  });
});

describe('what the map shows', () => {
  const question = sampleQuestion();
  const putt = puttOfQuestion(question);
  const set = sampleSet({ size: 1, questions: [question] });
  const asked: Asked = { set, question, putt };
  const revealed = revealOf(question, answer(1, 0), putt);
  const viewport = fitView({ ...question, spots: [], room });
  const model = (changes: Partial<Parameters<typeof mapModel>[0]> = {}) =>
    mapModel({
      asked,
      aim: 0,
      revealed: undefined,
      viewport,
      theme: 'light',
      units: 'imperial',
      slopeGiven: false,
      ...changes,
    });

  it('has no line, height or contour interval before the commitment, and lets one move the aim alone', () => {
    const now = model();
    expect(now.lines).toEqual([]);
    expect(now.showHeights).toBe(false);
    expect(now.contourStep?.words).toBeUndefined();
    expect(now.draggable).toEqual(['aim']);
    expect(now.description).not.toMatch(/true|%/);
  });

  it('frames the question by what the person was told and chose alone', () => {
    // The same putt on ground that falls the other way: nothing the view is made of may differ.
    const mirrored = { ...asked, question: sampleQuestion({ trueAim: -question.trueAim }) };
    expect(spotsOf(mirrored, 0.1, undefined)).toEqual(spotsOf(asked, 0.1, undefined));
  });

  it('has both lines and nothing to move after it', () => {
    const now = model({ revealed });
    expect(now.lines.map(({ style }) => style)).toEqual(['true', 'yours']);
    expect(now.draggable).toEqual([]);
    expect(now.aim).toBeUndefined();
    expect(now.contourStep?.words).toBe('0.4 in');
    expect(now.description).toMatch(/The true aim is .+ left/);
  });

  it('keeps the height between contours the same for putts of a length, a round number of the person’s units', () => {
    // 1 in = 25.4 mm exactly.
    expect(contourStep(3, 'imperial', false)).toEqual({ step: 0.4 * 0.0254 });
    expect(contourStep(3, 'metric', true)).toEqual({ step: 0.01, words: '1 cm' });
    expect(contourStep(14, 'metric', true)).toEqual({ step: 0.02, words: '2 cm' });
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
