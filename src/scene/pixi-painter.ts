/**
 * Paints pictures by WebGL with pixi.js; scene.ts loads this file, and with it the library, only where WebGL is there.
 * Still layers are images painted by the two-dimensional canvas, so hairlines and letters are the same on both painters;
 * what moves is drawn as shapes. Leaves out: what is in a picture; the library's events, accessibility and text, since
 * handles are plain buttons and letters are images.
 */
import 'pixi.js/unsafe-eval';
import 'pixi.js/graphics';
import { CanvasSource, Container, Graphics, Sprite, Texture, WebGLRenderer } from 'pixi.js';
import type { Size } from './camera.ts';
import { contextOf, HALO, makeMeasure, newCanvas, paintStill, paintText } from './canvas-painter.ts';
import { isStill, LAYERS, type LayerName, type Painter } from './painter.ts';
import type { Picture, Primitive, Text } from './primitives.ts';

/** Device pixels drawn for each CSS pixel, at least: with fewer, WebGL's edges show steps that the canvas does not. */
const LEAST_RATIO = 2;
/** Space above and below letters in their image, share of the face's size. */
const LETTER_ROOM = 0.8;

/** A WebGL painter. @param onLost called when the browser takes the WebGL context away @throws when WebGL fails */
export async function makePixiPainter(onLost: () => void): Promise<Painter> {
  const element = newCanvas(1, 1);
  const renderer = new WebGLRenderer();
  await renderer.init({
    canvas: element,
    width: 1,
    height: 1,
    antialias: true,
    autoDensity: false,
    backgroundAlpha: 0,
    skipExtensionImports: true,
  });
  const stage = new Container();
  const layers = new Map<LayerName, Container>();
  for (const layer of LAYERS) {
    const container = new Container();
    layers.set(layer, container);
    stage.addChild(container);
  }
  let size: Size = { width: 1, height: 1 };
  let ratio = LEAST_RATIO;
  let alive = true;
  const measure = makeMeasure();
  const letters = new Map<string, Texture>();
  const lost = (event: Event): void => {
    event.preventDefault();
    if (alive) onLost();
  };
  element.addEventListener('webglcontextlost', lost);

  const empty = (container: Container): void => {
    for (const child of container.removeChildren())
      child.destroy({ texture: isStillSprite(child), textureSource: isStillSprite(child) });
  };
  const isStillSprite = (child: Container): boolean => child instanceof Sprite && child.label === 'still';

  const textureOf = (canvas: HTMLCanvasElement): Texture =>
    new Texture({ source: new CanvasSource({ resource: canvas, resolution: ratio }) });

  const lettersOf = (text: Text): Sprite => {
    const key = `${ratio}\n${text.face}\n${text.colour}\n${text.halo}\n${text.text}`;
    const width = Math.ceil(measure(text.text, text.face)) + 4 * HALO;
    const height = Math.ceil(Number.parseFloat(text.face.replace(/^\D*/, '')) * (1 + LETTER_ROOM));
    let texture = letters.get(key);
    if (!texture) {
      const canvas = newCanvas(width * ratio, height * ratio);
      const context = contextOf(canvas);
      context.scale(ratio, ratio);
      paintText(context, { ...text, x: width / 2, y: height / 2, align: 'centre', turn: 0 });
      texture = textureOf(canvas);
      letters.set(key, texture);
    }
    const sprite = new Sprite(texture);
    // On whole device pixels, or the letters blur.
    const snap = (value: number) => Math.round(value * ratio) / ratio;
    sprite.position.set(snap(text.x - width / 2), snap(text.y - height / 2));
    return sprite;
  };

  return {
    kind: 'webgl',
    element,
    resize(newSize, newRatio) {
      size = newSize;
      ratio = Math.max(LEAST_RATIO, newRatio);
      for (const texture of letters.values()) texture.destroy(true);
      letters.clear();
      for (const container of layers.values()) empty(container);
      renderer.resize(size.width, size.height, ratio);
    },
    setLayer(layer, picture) {
      const container = layers.get(layer) as Container;
      empty(container);
      if (isStill(layer)) {
        const sprite = new Sprite(textureOf(paintStill(picture, size, ratio)));
        sprite.label = 'still';
        container.addChild(sprite);
        return;
      }
      addShapes(container, picture, lettersOf);
    },
    render() {
      renderer.render(stage);
    },
    destroy() {
      alive = false;
      element.removeEventListener('webglcontextlost', lost);
      for (const container of layers.values()) empty(container);
      for (const texture of letters.values()) texture.destroy(true);
      stage.destroy();
      renderer.destroy();
      element.remove();
    },
  };
}

/** Shapes in the order of the picture; letters lie between the graphics before and after them. */
function addShapes(container: Container, picture: Picture, lettersOf: (text: Text) => Sprite): void {
  let graphics: Graphics | undefined;
  for (const primitive of picture) {
    if (primitive.kind === 'text') {
      container.addChild(lettersOf(primitive));
      graphics = undefined;
      continue;
    }
    if (!graphics) {
      graphics = new Graphics();
      container.addChild(graphics);
    }
    addShape(graphics, primitive);
  }
}

function addShape(graphics: Graphics, primitive: Exclude<Primitive, Text>): void {
  const trace = (places: readonly number[]): void => {
    graphics.moveTo(places[0], places[1]);
    for (let at = 2; at + 1 < places.length; at += 2) graphics.lineTo(places[at], places[at + 1]);
  };
  switch (primitive.kind) {
    case 'raster':
      throw new Error('Got a raster in a moving layer, expected it in ground or margin: put it there.');
    case 'lines': {
      const { width, colour, alpha, lines } = primitive;
      if (lines.length === 0) return;
      for (const line of lines) trace(line);
      graphics.stroke({ width, color: colour, alpha, cap: 'round', join: 'round' });
      return;
    }
    case 'polygons':
      for (const polygon of primitive.polygons)
        graphics.poly([...polygon]).fill({ color: primitive.colour, alpha: primitive.alpha });
      return;
    case 'circles': {
      const { places, radius, alpha, fill, stroke } = primitive;
      if (places.length === 0) return;
      for (let at = 0; at + 1 < places.length; at += 2) graphics.circle(places[at], places[at + 1], radius);
      if (fill) graphics.fill({ color: fill, alpha });
      if (stroke) graphics.stroke({ width: stroke.width, color: stroke.colour, alpha });
      return;
    }
  }
}
