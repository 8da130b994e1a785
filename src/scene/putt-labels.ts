/**
 * The names of lines, written beside their aim spots, or beside their ends where they have none.
 * Answers for: what a label must keep clear of, its ink, the fine line to a spot that is far. Leaves out: the choice of a
 * place (labels.ts).
 */
import type { Point } from '../../sim/index.ts';
import type { Size } from './camera.ts';
import { placeLabels } from './labels.ts';
import type { Camera, LineStyle, SceneModel } from './model.ts';
import type { Palette } from './palette.ts';
import { pathInPixels } from './path.ts';
import { displayFace, type MeasureText, type Picture, type Primitive } from './primitives.ts';
import { AIM_RADIUS, OWN_AIM_RADIUS, radiusOf } from './spots.ts';

const LABEL_SIZE = 15;
const LABEL_HEIGHT = 17;
/** Places on dotted lines that labels keep clear of, pixels apart. */
const OBSTACLE_EVERY = 8;

export interface LabelledPutt {
  readonly model: SceneModel;
  readonly camera: Camera;
  /** Of the map, without the margin. */
  readonly size: Size;
  readonly palette: Palette;
  readonly measure: MeasureText;
  /** Label places of the last drawing (labels.ts). */
  readonly previousLabels: readonly number[];
}

export interface PuttDrawing {
  readonly picture: Picture;
  /** Where the labels went; hand it back next time. */
  readonly labels: readonly number[];
}

export function drawLabels({
  model,
  camera,
  size,
  palette,
  measure,
  previousLabels,
}: LabelledPutt): PuttDrawing {
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
  // All fine lines below all letters, whose halo then parts a line that must pass behind a name.
  const picture: Primitive[] = [];
  const names: Primitive[] = [];
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
    names.push({
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
  return { picture: [...picture, ...names], labels: placed.map(({ choice }) => choice) };
}
