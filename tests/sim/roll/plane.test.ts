/** The closed-form roller against things outside it: the stepped roller on the same plane given as a grid. */
import { describe, expect, it } from 'vitest';
import { feetToMetres, fieldSurface, planeSurface } from '../../../sim/index.ts';
import { fieldRoller } from '../../../sim/roll/field.ts';
import { planeRoller } from '../../../sim/roll/plane.ts';
import { newPass } from '../../../sim/roll/roller.ts';

const SLOPE = 0.02;
const GREEN_SPEED = 3.048;
const BALL = { x: 0, y: -3 };
const HOLE = { x: 0, y: 0 };
const COLUMNS = 81;

const onPlane = planeRoller(planeSurface({ slope: SLOPE, downhill: -Math.PI / 2 }), GREEN_SPEED, BALL, HOLE);
const onGrid = fieldRoller(
  fieldSurface({
    origin: { x: -4, y: -5 },
    spacing: 0.1,
    columns: COLUMNS,
    rows: COLUMNS,
    heights: Float64Array.from(
      { length: COLUMNS * COLUMNS },
      (_, i) => SLOPE * (Math.floor(i / COLUMNS) * 0.1 - 5),
    ),
  }),
  GREEN_SPEED,
  BALL,
  HOLE,
);

describe('an uphill ball that stops short', () => {
  // Regression: its hook downhill at the very end was once taken for a pass by the hole, more than a metre wide.
  it.each([-0.05, -0.03, 0.03, 0.05])('started %f rad off is judged by the line it was on', (off) => {
    const plane = onPlane.pass(Math.PI / 2 + off, 1.6, newPass());
    const grid = onGrid.pass(Math.PI / 2 + off, 1.6, newPass());
    expect(plane.missSpeed).toBe(0);
    expect(grid.missSpeed).toBe(0);
    // Only the side: each takes the ball's last direction at a slightly different moment (roller.ts asks no more).
    expect(Math.sign(plane.miss)).toBe(-Math.sign(off));
    expect(Math.sign(grid.miss)).toBe(-Math.sign(off));
  });
});

describe('the path of a ball that never stops', () => {
  // Regression: its points were spread over two minutes of roll, so that the last one lay kilometres beyond the one before.
  it.each([0, 1.2, 3])(
    'is drawn in even, small steps for 60 m, struck %d radians from downhill',
    (heading) => {
      const roller = planeRoller(
        { kind: 'plane', slope: 0.1, downhill: 0 },
        feetToMetres(10),
        { x: 0, y: 0 },
        { x: 5, y: 0 },
      );
      const path = roller.trace(heading, 2);
      let way = 0;
      for (let i = 3; i < path.length; i += 3) {
        const step = Math.hypot(path[i] - path[i - 3], path[i + 1] - path[i - 2]);
        way += step;
        // 60 m in at most 1000 points are 6 cm each.
        expect(step).toBeLessThan(0.0601);
        expect(path[i + 2]).toBeGreaterThan(path[i - 1]);
      }
      expect(Math.abs(way - 60)).toBeLessThan(0.1);
    },
  );
});
