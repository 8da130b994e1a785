/**
 * The putt drawn over the ground: clouds of misses, lines, aim spots, hole, ball, the person's own aim, labels.
 * Answers for: everything that moves while one drags; cheap to draw again each frame. Leaves out: the ground (ground.ts)
 * and the ball that rolls (`drawRoller`, used by animation).
 * Ways to tell the lines apart besides colour: die dashed with crosses, firm solid with rings, yours dash and dot.
 */
import { BALL_RADIUS, HOLE_RADIUS, type Point } from '../../sim/index.ts';
import type { Size } from './camera.ts';
import { placeLabels } from './labels.ts';
import type { Camera, LineStyle, SceneLine, SceneModel } from './model.ts';
import type { Palette } from './palette.ts';
import {
  dashed,
  displayFace,
  type MeasureText,
  type Picture,
  type Places,
  type Primitive,
} from './primitives.ts';
import { AIM_RADIUS, disc, ring, type Spot, spotMark } from './spots.ts';

/** Ball and hole are drawn at true size, but never smaller than this, pixels. */
export const LEAST_RADIUS = 5;
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
/** Corners of a path nearer than this to the one before are left out, pixels: nobody sees them, each costs time. */
const LEAST_CORNER = 1.5;
const MARK = 3.4;
const OWN_AIM_RADIUS = 9;
/** Space between a thing that can be moved and the ring that says so, pixels. */
const GRIP = 6;
/** A straighter line than this has no apex worth a mark, pixels. */
const LEAST_APEX = 2;
const LABEL_SIZE = 15;
const LABEL_HEIGHT = 17;
/** Places on dotted lines that labels keep clear of, pixels apart. */
const OBSTACLE_EVERY = 8;

export interface PuttRequest {
  readonly model: SceneModel;
  readonly camera: Camera;
  /** Of the map, without the margin. */
  readonly size: Size;
  readonly palette: Palette;
  readonly measure: MeasureText;
  /** A ball is rolling or has rolled: the one at its first place is drawn as a trace. */
  readonly rolled: boolean;
  /** Label places of the last drawing (labels.ts). */
  readonly previousLabels: readonly number[];
}

export interface PuttDrawing {
  readonly picture: Picture;
  readonly labels: readonly number[];
}

export const radiusOf = (thing: 'ball' | 'hole', camera: Camera): number =>
  Math.max(LEAST_RADIUS, camera.scale * (thing === 'ball' ? BALL_RADIUS : HOLE_RADIUS));

export function drawPutt(request: PuttRequest): PuttDrawing {
  const { model, camera, palette, rolled } = request;
  const picture: Primitive[] = [];
  const hole = camera.toPixel(model.hole);
  const ball = model.ball && camera.toPixel(model.ball);

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
  return model.clouds.map(({ style, rests, holed }) => {
    const places: number[] = [];
    for (let index = 0; index < holed.length; index++) {
      if (holed[index]) continue;
      const { x, y } = camera.toPixel({ x: rests[2 * index], y: rests[2 * index + 1] });
      places.push(x, y);
    }
    const colour = palette.lines[style].line;
    return style === 'die'
      ? { kind: 'marks', shape: 'cross', places, radius: MARK, width: 1.2, colour, alpha: 0.72 }
      : { kind: 'marks', shape: 'ring', places, radius: MARK - 0.4, width: 1.1, colour, alpha: 0.72 };
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

/** Pixels of a path, and the number of the corner nearest the hole. */
function pathInPixels(path: Float64Array, hole: Point, camera: Camera): { places: number[]; atHole: number } {
  let nearest = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let corner = 0; 3 * corner + 2 < path.length; corner++) {
    const distance = Math.hypot(path[3 * corner] - hole.x, path[3 * corner + 1] - hole.y);
    if (distance >= least) continue;
    least = distance;
    nearest = corner;
  }
  const places: number[] = [];
  let atHole = 0;
  for (let corner = 0; 3 * corner + 2 < path.length; corner++) {
    const { x, y } = camera.toPixel({ x: path[3 * corner], y: path[3 * corner + 1] });
    const end = places.length;
    const close =
      end > 0 && Math.hypot(x - places[end - 2], y - places[end - 1]) < LEAST_CORNER && corner !== nearest;
    if (!close || 3 * corner + 5 >= path.length) places.push(x, y);
    if (corner === nearest) atHole = places.length / 2 - 1;
  }
  return { places, atHole };
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

function drawLabels({ model, camera, size, palette, measure, previousLabels }: PuttRequest): PuttDrawing {
  const face = displayFace(LABEL_SIZE);
  const obstacles: number[] = [];
  const marks: number[] = [];
  const hole = camera.toPixel(model.hole);
  const ball = model.ball && camera.toPixel(model.ball);
  const around = ({ x, y }: Point, radius: number) =>
    obstacles.push(x, y, x - radius, y, x + radius, y, x, y - radius, x, y + radius);
  around(hole, radiusOf('hole', camera));
  if (ball) around(ball, radiusOf('ball', camera));
  if (model.aim) around(camera.toPixel(model.aim), OWN_AIM_RADIUS);
  const labelled: { text: string; x: number; y: number; style: LineStyle }[] = [];
  for (const { path, label, aimSpot, rest, apex, style } of model.lines) {
    const { places, atHole } = pathInPixels(path, model.hole, camera);
    for (let at = 0; at < places.length; at += 2) obstacles.push(places[at], places[at + 1]);
    if (apex) around(camera.toPixel(apex), 6);
    if (rest) around(camera.toPixel(rest), 4);
    const spot = aimSpot && camera.toPixel(aimSpot);
    if (spot) around(spot, AIM_RADIUS);
    if (spot && ball) {
      const count = Math.ceil(Math.hypot(spot.x - ball.x, spot.y - ball.y) / OBSTACLE_EVERY);
      for (let step = 0; step < count; step++)
        obstacles.push(
          ball.x + ((spot.x - ball.x) * step) / count,
          ball.y + ((spot.y - ball.y) * step) / count,
        );
    }
    if (!label || places.length < 2) continue;
    const end = spot ?? { x: places[2 * atHole], y: places[2 * atHole + 1] };
    labelled.push({ text: label, x: end.x, y: end.y, style });
  }
  for (const { rests, holed } of model.clouds)
    for (let index = 0; index < holed.length; index++) {
      if (holed[index]) continue;
      const { x, y } = camera.toPixel({ x: rests[2 * index], y: rests[2 * index + 1] });
      marks.push(x, y);
    }
  const placed = placeLabels(
    labelled.map(({ text, x, y }) => ({ text, x, y, width: measure(text, face), height: LABEL_HEIGHT })),
    { obstacles, marks, ...size },
    previousLabels,
  );
  const picture: Primitive[] = [];
  placed.forEach((label, index) => {
    const ink = palette.lines[labelled[index].style];
    if (label.apart) {
      const nearX = Math.max(
        label.labelX - label.width / 2,
        Math.min(label.labelX + label.width / 2, label.x),
      );
      const nearY = Math.max(
        label.labelY - label.height / 2,
        Math.min(label.labelY + label.height / 2, label.y),
      );
      const length = Math.hypot(nearX - label.x, nearY - label.y) || 1;
      const out = (AIM_RADIUS + 2) / length;
      picture.push({
        kind: 'lines',
        lines: [[label.x + (nearX - label.x) * out, label.y + (nearY - label.y) * out, nearX, nearY]],
        width: 1,
        colour: ink.letters,
        alpha: 0.7,
      });
    }
    picture.push({
      kind: 'text',
      text: label.text,
      x: label.labelX,
      y: label.labelY,
      face,
      colour: ink.letters,
      align: 'centre',
      turn: 0,
      halo: palette.paper,
    });
  });
  return { picture, labels: placed.map(({ choice }) => choice) };
}
