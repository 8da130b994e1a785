/**
 * The putt in conditions a little other than thought. Answers for: what "a foot faster" and "half a percent steeper" are.
 * Leaves out: what they do to the odds (the engine).
 */
import {
  type FieldSurface,
  feetToMetres,
  fieldSurface,
  type Point,
  type Putt,
  planeSurface,
  type Surface,
  sampleSurface,
} from '../../sim/index.ts';
import type { CaseName } from './messages.ts';

/** Doubt about a green speed, m (1 ft), and about a slope (0.5%). */
const SPEED_STEP = feetToMetres(1);
const SLOPE_STEP = 0.005;

/** The last tilted fields: the engine prepares each new one for 10 ms or more, and asks for the same again and again. */
const tilted = new WeakMap<FieldSurface, { hole: Point; step: number; surface: FieldSurface }[]>();
const MOST_TILTED = 4;

const tiltField = (surface: FieldSurface, hole: Point, step: number): FieldSurface => {
  const known = tilted.get(surface) ?? [];
  const found = known.find((one) => one.step === step && one.hole.x === hole.x && one.hole.y === hole.y);
  if (found) return found.surface;
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  sampleSurface(surface, hole.x, hole.y, ground);
  const size = Math.hypot(ground.gradientX, ground.gradientY);
  // On level ground there is no fall line; any direction will do as "steeper".
  const tiltX = size > 0 ? (step * ground.gradientX) / size : step;
  const tiltY = size > 0 ? (step * ground.gradientY) / size : 0;
  const { origin, spacing, columns, rows } = surface;
  const heights = surface.heights.slice();
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1)
      heights[row * columns + column] += spacing * (column * tiltX + row * tiltY);
  const made = fieldSurface({ origin, spacing, columns, rows, heights });
  tilted.set(surface, [...known, { hole, step, surface: made }].slice(-MOST_TILTED));
  return made;
};

/** The same ground, steeper by `step` (rise over run) along its own fall line, a field along the fall line at the hole. */
const steeper = ({ surface, hole }: Putt, step: number): Surface => {
  if (surface.kind === 'field') return tiltField(surface, hole, step);
  const slope = surface.slope + step;
  return slope >= 0
    ? planeSurface({ slope, downhill: surface.downhill })
    : planeSurface({ slope: -slope, downhill: surface.downhill + Math.PI });
};

/** The putt in a changed condition. */
export const changedPutt = (putt: Putt, change: CaseName): Putt => {
  switch (change) {
    case 'slower':
      return { ...putt, greenSpeed: putt.greenSpeed - SPEED_STEP };
    case 'faster':
      return { ...putt, greenSpeed: putt.greenSpeed + SPEED_STEP };
    case 'gentler':
      return { ...putt, surface: steeper(putt, -SLOPE_STEP) };
    case 'steeper':
      return { ...putt, surface: steeper(putt, SLOPE_STEP) };
  }
};
