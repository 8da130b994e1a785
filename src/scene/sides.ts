/**
 * A ring round the hole with its clock, and the best and the worst place on it: a disc with a tick, a square with a cross.
 * Leaves out: which places those are (the screen).
 */
import type { Point } from '../../sim/index.ts';
import type { Size } from './camera.ts';
import type { Camera, SceneModel, SceneSide } from './model.ts';
import type { Palette } from './palette.ts';
import { dashed, displayFace, type MeasureText, type Primitive, plainFace } from './primitives.ts';
import { disc, ring } from './spots.ts';

const CORNERS = 120;
const PATTERN = [3, 6];
const CLOCK_FACE = plainFace(11.5);
const HOURS = [12, 3, 6, 9];
/** Radius of an hour's disc on the ring, how far outside it names of places stand, how near mark and hour may come, pixels. */
const HOUR_RADIUS = 9.5;
const LABEL_OUT = 20;
const NEAREST = 24;
/** Smaller rings carry no hours, pixels. */
const LEAST_CLOCK = 46;
const LABEL_FACE = displayFace(15);
const LABEL_HEIGHT = 18;
const SIZE = 8.5;

export interface SidesRequest {
  readonly model: SceneModel;
  readonly camera: Camera;
  /** Of the map, without the margin. */
  readonly size: Size;
  readonly palette: Palette;
  readonly measure: MeasureText;
}

export function drawSides(request: SidesRequest): Primitive[] {
  const { model, camera, palette } = request;
  const { ring: asked, sides = [] } = model;
  if (asked === undefined) return [];
  const hole = camera.toPixel(model.hole);
  const radius = asked.radius * camera.scale;
  const places: number[] = [];
  for (let corner = 0; corner <= CORNERS; corner++) {
    const turn = (corner / CORNERS) * 2 * Math.PI;
    places.push(hole.x + radius * Math.cos(turn), hole.y + radius * Math.sin(turn));
  }
  const picture: Primitive[] = [
    { kind: 'lines', lines: [places], width: 4, colour: palette.paper, alpha: 0.4 },
    { kind: 'lines', lines: dashed(places, PATTERN), width: 1.7, colour: palette.ink, alpha: 0.9 },
  ];
  const marks = sides.map((side) => ({ ...side, at: camera.toPixel(side.place) }));
  if (radius >= LEAST_CLOCK)
    for (const hour of HOURS) {
      const bearing = asked.twelve - (hour / 12) * 2 * Math.PI;
      const at = camera.toPixel({
        x: model.hole.x + asked.radius * Math.cos(bearing),
        y: model.hole.y + asked.radius * Math.sin(bearing),
      });
      if (marks.every((mark) => Math.hypot(mark.at.x - at.x, mark.at.y - at.y) > NEAREST))
        picture.push(disc(at, HOUR_RADIUS, palette.paper, 0.92), ring(at, HOUR_RADIUS, palette.ink, 1, 0.8), {
          kind: 'text',
          text: `${hour}`,
          ...at,
          face: CLOCK_FACE,
          colour: palette.ink,
          align: 'centre',
          turn: 0,
        });
    }
  for (const mark of marks) picture.push(...drawMark(mark, mark.at, palette));
  for (const mark of marks) picture.push(...label(mark, mark.at, hole, request));
  return picture;
}

function drawMark({ kind }: SceneSide, { x, y }: Point, palette: Palette): Primitive[] {
  if (kind === 'best')
    return [
      disc({ x, y }, SIZE + 2, palette.paper, 0.9),
      disc({ x, y }, SIZE, palette.values.line),
      {
        kind: 'lines',
        lines: [[x - 4, y + 0.2, x - 1.2, y + 3.2, x + 4.2, y - 3.2]],
        width: 2.2,
        colour: palette.paper,
        alpha: 1,
      },
    ];
  const box = (half: number) => [
    x - half,
    y - half,
    x + half,
    y - half,
    x + half,
    y + half,
    x - half,
    y + half,
  ];
  const arm = 3.6;
  return [
    { kind: 'polygons', polygons: [box(SIZE + 1.5)], colour: palette.paper, alpha: 0.9 },
    { kind: 'polygons', polygons: [box(SIZE - 0.5)], colour: palette.ink, alpha: 1 },
    {
      kind: 'lines',
      lines: [
        [x - arm, y - arm, x + arm, y + arm],
        [x - arm, y + arm, x + arm, y - arm],
      ],
      width: 2.2,
      colour: palette.paper,
      alpha: 1,
    },
  ];
}

/** Outside the ring as seen from the hole, kept on the page. */
function label(
  { kind, label: text }: SceneSide,
  at: Point,
  hole: Point,
  { size, palette, measure }: SidesRequest,
): Primitive[] {
  const away = Math.hypot(at.x - hole.x, at.y - hole.y) || 1;
  const outX = (at.x - hole.x) / away;
  const outY = (at.y - hole.y) / away;
  const half = measure(text, LABEL_FACE) / 2;
  const keep = (value: number, low: number, high: number) => Math.max(low, Math.min(high, value));
  const x = keep(at.x + outX * (LABEL_OUT + half * Math.abs(outX)), half + 6, size.width - half - 6);
  let y = keep(at.y + outY * LABEL_OUT, LABEL_HEIGHT / 2 + 4, size.height - LABEL_HEIGHT / 2 - 4);
  // Pushed back on the page it would cover its mark: then it stands below or above.
  if (Math.abs(x - at.x) < half + SIZE && Math.abs(y - at.y) < LABEL_HEIGHT / 2 + SIZE)
    y = at.y + (at.y + 2 * LABEL_OUT < size.height ? LABEL_OUT : -LABEL_OUT);
  const [left, right] = [x - half - 4, x + half + 4];
  const [above, below] = [y - LABEL_HEIGHT / 2, y + LABEL_HEIGHT / 2];
  // Paper behind the whole of it: a contour between the letters would strike it out.
  const behind = [left, above, right, above, right, below, left, below];
  const words: Primitive = {
    kind: 'text',
    text,
    x,
    y,
    face: LABEL_FACE,
    colour: kind === 'best' ? palette.values.letters : palette.ink,
    align: 'centre',
    turn: 0,
  };
  return [{ kind: 'polygons', polygons: [behind], colour: palette.paper, alpha: 0.82 }, words];
}
