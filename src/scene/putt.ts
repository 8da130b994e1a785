/**
 * The putt drawn over the ground: clouds of misses, lines, aim spots, hole, ball, the person's own aim, labels.
 * Answers for: everything that moves while one drags; cheap to draw again each frame. Leaves out: the ground (ground.ts)
 * and the ball that rolls (`drawRoller`, used by animation).
 * Ways to tell the lines apart besides colour: die dashed with crosses, firm solid with rings, yours dash and dot.
 */
import type { Point } from '../../sim/index.ts';
import type { Camera, LineStyle, SceneLine, SceneModel } from './model.ts';
import type { Palette } from './palette.ts';
import { pathInPixels } from './path.ts';
import { dashed, type Picture, type Places, type Primitive } from './primitives.ts';
import { drawLabels, type LabelledPutt, type PuttDrawing } from './putt-labels.ts';
import { drawSides } from './sides.ts';
import { AIM_RADIUS, disc, OWN_AIM_RADIUS, radiusOf, ring, type Spot, spotMark } from './spots.ts';

/** Widths, pixels: a line on its way to the hole, beyond it, and the paper round it that lifts it off the ground. */
const LINE_WIDTH = 3;
const BEYOND_WIDTH = 1.4;
const CASING = 2.4;
/** Dash patterns, pixels drawn and left out; round ends add a line's width to what is drawn. */
const PATTERNS: Readonly<Record<LineStyle, readonly number[] | undefined>> = {
  die: [9, 8],
  firm: undefined,
  yours: [14, 7, 0.1, 7],
  true: undefined,
};
const DOTS_APART = 5.6;
const MARK = 3.4;
const FIRM_MARK = { shape: 'ring', radius: MARK - 0.4, width: 1.1 } as const;
/** Radius of the dot in the mark of a ball that lipped out, pixels. */
const LIP_DOT = 1.7;
/** Space between a thing that can be moved and the ring that says so, pixels. */
const GRIP = 6;
/** A straighter line than this has no apex worth a mark, pixels. */
const LEAST_APEX = 2;

export interface PuttRequest extends LabelledPutt {
  /** A ball is rolling or has rolled: the one at its first place is drawn as a trace. */
  readonly rolled: boolean;
}

export function drawPutt(request: PuttRequest): PuttDrawing {
  const { model, camera, palette, rolled } = request;
  const picture: Primitive[] = [];
  const hole = camera.toPixel(model.hole);
  const ball = model.ball && camera.toPixel(model.ball);

  picture.push(...drawSides(request));
  picture.push(...drawClouds(model, camera, palette));
  if (ball) {
    for (const { aimSpot, style } of model.lines)
      if (aimSpot) picture.push(dots(ball, camera.toPixel(aimSpot), palette.lines[style].line));
    if (model.aim) picture.push(dots(ball, camera.toPixel(model.aim), palette.lines.yours.line));
  }
  // Solid lines first: a dashed one on top of a solid one still shows both.
  const inOrder = [...model.lines].sort((one, two) => solidity(two.style) - solidity(one.style));
  for (const line of inOrder) picture.push(...drawLine(line, model.hole, camera, palette));
  const marks = (spot: Spot, line: SceneLine, place: Point | undefined): Primitive[] =>
    place ? spotMark(spot, camera.toPixel(place), palette.lines[line.style].line, palette.paper) : [];
  for (const line of inOrder) {
    if (line.apex && ball && beside(camera.toPixel(line.apex), ball, hole) >= LEAST_APEX)
      picture.push(...marks('apex', line, line.apex));
    picture.push(...marks('rest', line, line.rest));
    if (line.aimSpot) picture.push(disc(camera.toPixel(line.aimSpot), AIM_RADIUS, palette.paper, 0.85));
  }
  // The hole covers what lies so near that it would cover the hole; the ring of an aim inside it is still seen.
  picture.push(...drawHole(hole, radiusOf('hole', camera), palette));
  for (const line of inOrder) picture.push(...marks('aim', line, line.aimSpot));
  for (const handle of model.draggable) {
    const place =
      handle === 'ball' ? ball : handle === 'hole' ? hole : model.aim && camera.toPixel(model.aim);
    const radius = handle === 'aim' ? OWN_AIM_RADIUS : radiusOf(handle, camera);
    if (place) picture.push(ring(place, radius + GRIP, palette.softInk, 1, 0.5));
  }
  if (model.aim) picture.push(...drawOwnAim(camera.toPixel(model.aim), palette));
  if (ball) picture.push(...drawBall(ball, radiusOf('ball', camera), palette, rolled ? 0.35 : 1));
  const labels = drawLabels(request);
  picture.push(...labels.picture);
  return { picture, labels: labels.labels };
}

const solidity = (style: LineStyle): number => (PATTERNS[style] ? 0 : 1);

/** Distance of a place from the straight line between two others, pixels. */
const beside = (place: Point, from: Point, to: Point): number =>
  Math.abs((to.x - from.x) * (place.y - from.y) - (to.y - from.y) * (place.x - from.x)) /
  (Math.hypot(to.x - from.x, to.y - from.y) || 1);

function drawClouds(model: SceneModel, camera: Camera, palette: Palette): Primitive[] {
  return model.clouds.flatMap(({ style, rests, holed, lippedOut }): Primitive[] => {
    const places: number[] = [];
    const lipped: number[] = [];
    for (let index = 0; index < holed.length; index++) {
      if (holed[index]) continue;
      const { x, y } = camera.toPixel({ x: rests[2 * index], y: rests[2 * index + 1] });
      places.push(x, y);
      if (lippedOut[index]) lipped.push(x, y);
    }
    const colour = palette.lines[style].line;
    const die = style === 'die';
    const shape = die ? ({ shape: 'cross', radius: MARK, width: 1.2 } as const) : FIRM_MARK;
    const drawn: Primitive[] = [{ kind: 'marks', places, colour, alpha: 0.72, ...shape }];
    if (lipped.length > 0)
      drawn.push({
        kind: 'marks',
        shape: 'dot',
        places: lipped,
        radius: LIP_DOT,
        width: 0,
        colour,
        alpha: 0.9,
      });
    return drawn;
  });
}

/** A dotted line. */
function dots(from: Point, to: Point, colour: string): Primitive {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const places: number[] = [];
  for (let along = DOTS_APART; along < length; along += DOTS_APART)
    places.push(from.x + ((to.x - from.x) * along) / length, from.y + ((to.y - from.y) * along) / length);
  return { kind: 'marks', shape: 'dot', places, radius: 0.8, width: 0, colour, alpha: 0.85 };
}

function drawLine(line: SceneLine, hole: Point, camera: Camera, palette: Palette): Primitive[] {
  const { places, atHole } = pathInPixels(line.path, hole, camera);
  const colour = palette.lines[line.style].line;
  const to = places.slice(0, 2 * atHole + 2);
  const beyond = places.slice(2 * atHole);
  const pattern = PATTERNS[line.style];
  const ink = (lines: readonly Places[], width: number, shade = colour, alpha = 1): Primitive => ({
    kind: 'lines',
    lines,
    width,
    colour: shade,
    alpha,
  });
  const cut = (part: Places): readonly Places[] => (pattern ? dashed(part, pattern) : [part]);
  const drawn: Primitive[] = [];
  if (beyond.length >= 4) drawn.push(ink(cut(beyond), BEYOND_WIDTH, colour, 0.75));
  if (to.length >= 4)
    drawn.push(ink(cut(to), LINE_WIDTH + CASING, palette.paper, 0.6), ink(cut(to), LINE_WIDTH));
  return drawn;
}

function drawHole(place: Point, radius: number, palette: Palette): Primitive[] {
  return [disc(place, radius + 1.4, palette.holeRim, 0.95), disc(place, radius, palette.hole)];
}

function drawOwnAim({ x, y }: Point, palette: Palette): Primitive[] {
  const colour = palette.lines.yours.line;
  const inner = OWN_AIM_RADIUS - 4;
  const outer = OWN_AIM_RADIUS + 4;
  return [
    disc({ x, y }, OWN_AIM_RADIUS, palette.paper, 0.75),
    ring({ x, y }, OWN_AIM_RADIUS, colour, 2.4),
    {
      kind: 'lines',
      lines: [
        [x - outer, y, x - inner, y],
        [x + inner, y, x + outer, y],
        [x, y - outer, x, y - inner],
        [x, y + inner, x, y + outer],
      ],
      width: 2,
      colour,
      alpha: 1,
    },
    disc({ x, y }, 1.6, colour),
  ];
}

function drawBall({ x, y }: Point, radius: number, palette: Palette, alpha: number): Primitive[] {
  return [
    disc({ x: x + 1.2, y: y + 1.8 }, radius + 0.8, palette.shadow, 0.28 * alpha),
    disc({ x, y }, radius, palette.ball, alpha),
    ring({ x, y }, radius, alpha < 1 ? palette.softInk : '#26241f', 1.5, alpha < 1 ? 0.7 : 1),
  ];
}

/** The ball on its way; one that ended in the hole lies in it, smaller. */
export function drawRoller(place: Point, inHole: boolean, camera: Camera, palette: Palette): Picture {
  const radius = radiusOf('ball', camera);
  const pixel = camera.toPixel(place);
  return inHole ? [disc(pixel, radius * 0.62, palette.ball, 0.75)] : drawBall(pixel, radius, palette, 1);
}
