/** The closed-form roller against things outside it: the stepped roller on the same plane given as a grid. */
import { describe, expect, it } from 'vitest';
import { fieldSurface, planeSurface } from '../../../sim/index.ts';
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
