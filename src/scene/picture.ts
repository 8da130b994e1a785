/**
 * From a model to pictures: the pure half of the map. Answers for: which part of the model each layer depends on, and
 * so what must be drawn again. Leaves out: pixels on a screen (painters), events (scene.ts).
 */
import { makeCamera, type Size, sameView } from './camera.ts';
import { drawGround } from './ground.ts';
import { drawMargin, marginHeight } from './margin.ts';
import type { Camera, SceneModel } from './model.ts';
import { paletteOf } from './palette.ts';
import type { MeasureText, Picture } from './primitives.ts';
import { drawPutt } from './putt.ts';
import { drawValues } from './values.ts';

/** The map without its margin. */
export const mapSize = ({ width, height }: Size): Size => ({
  width,
  height: Math.max(1, height - marginHeight(width)),
});

export const cameraFor = (model: SceneModel, size: Size): Camera => makeCamera(model.viewport, mapSize(size));

/** Whether the ground, and with it the margin, looks the same for both models. */
export const sameGround = (one: SceneModel, two: SceneModel): boolean =>
  one.surface === two.surface &&
  sameView(one.viewport, two.viewport) &&
  one.theme === two.theme &&
  one.units === two.units &&
  one.showContours === two.showContours &&
  one.showHeights === two.showHeights &&
  one.contourStep?.step === two.contourStep?.step &&
  one.contourStep?.words === two.contourStep?.words &&
  hasMarks(one) === hasMarks(two);

const hasMarks = ({ lines }: SceneModel): boolean =>
  lines.some(({ aimSpot, apex, rest }) => aimSpot && apex && rest);

/** The still layers. */
export function stillPictures(
  model: SceneModel,
  size: Size,
  measure: MeasureText,
): { readonly ground: Picture; readonly margin: Picture } {
  const { surface, theme, units, showContours, showHeights, contourStep } = model;
  const camera = cameraFor(model, size);
  const palette = paletteOf(theme);
  const { picture, steps, level } = drawGround({
    surface,
    camera,
    size: mapSize(size),
    palette,
    units,
    showContours,
    showHeights,
    contourStep,
    measure,
  });
  const margin = drawMargin({
    size,
    scale: camera.scale,
    palette,
    units,
    steps,
    level,
    explainMarks: hasMarks(model),
    measure,
  });
  return { ground: picture, margin };
}

/** The layer of the value told all over the ground; empty without one. */
export const valuesPicture = (model: SceneModel, size: Size, measure: MeasureText): Picture =>
  model.values === undefined
    ? []
    : drawValues({
        values: model.values,
        camera: cameraFor(model, size),
        size: mapSize(size),
        palette: paletteOf(model.theme),
        measure,
      });

/** The layer that follows a drag. */
export const puttPicture = (
  model: SceneModel,
  size: Size,
  measure: MeasureText,
  state: { readonly rolled: boolean; readonly previousLabels: readonly number[] },
): ReturnType<typeof drawPutt> =>
  drawPutt({
    model,
    camera: cameraFor(model, size),
    size: mapSize(size),
    palette: paletteOf(model.theme),
    measure,
    ...state,
  });
