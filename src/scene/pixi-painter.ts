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
import {
  contextOf,
  HALO,
  makeMeasure,
  newCanvas,
  paintPicture,
  paintStill,
  paintText,
} from './canvas-painter.ts';
import { isStill, LAYERS, type LayerName, type Painter } from './painter.ts';
import type { Marks, Picture, Primitive, Text } from './primitives.ts';

type Paint = (context: CanvasRenderingContext2D) => void;

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
  const images = new Map<string, Texture>();
  const lost = (event: Event): void => {
    event.preventDefault();
    if (alive) onLost();
  };
  element.addEventListener('webglcontextlost', lost);

  /** Taken out of a layer and used again in the next: a drag redraws hundreds of them every frame. */
  const spareSprites: Sprite[] = [];
  const spareGraphics: Graphics[] = [];
  const newSprite = (texture: Texture, x: number, y: number, alpha: number): Sprite => {
    const sprite = spareSprites.pop() ?? new Sprite();
    sprite.texture = texture;
    sprite.position.set(x, y);
    sprite.alpha = alpha;
    return sprite;
  };
  const newGraphics = (): Graphics => spareGraphics.pop() ?? new Graphics();
  const empty = (layer: LayerName, container: Container): void => {
    for (const child of container.removeChildren()) {
      if (isStill(layer)) child.destroy({ texture: true, textureSource: true });
      else if (child instanceof Graphics) spareGraphics.push(child.clear());
      else if (child instanceof Sprite) spareSprites.push(child);
    }
  };

  const textureOf = (canvas: HTMLCanvasElement): Texture =>
    new Texture({ source: new CanvasSource({ resource: canvas, resolution: ratio }) });

  /** An image used again and again: painted once for each key. */
  const imageOf = (key: string, width: number, height: number, paint: Paint): Texture => {
    let texture = images.get(key);
    if (!texture) {
      const canvas = newCanvas(width * ratio, height * ratio);
      const context = contextOf(canvas);
      context.scale(ratio, ratio);
      paint(context);
      texture = textureOf(canvas);
      images.set(key, texture);
    }
    return texture;
  };

  const addMarks = (container: Container, marks: Marks): void => {
    const { shape, radius, width, colour, alpha, places } = marks;
    // Room for half the stroke, its round ends and a soft edge.
    const side = 2 * Math.ceil(radius + width + 1);
    const texture = imageOf(`${shape} ${radius} ${width} ${colour}`, side, side, (context) =>
      paintPicture(context, [{ ...marks, places: [side / 2, side / 2], alpha: 1 }]),
    );
    for (let at = 0; at + 1 < places.length; at += 2) {
      container.addChild(newSprite(texture, places[at] - side / 2, places[at + 1] - side / 2, alpha));
    }
  };

  const lettersOf = (text: Text): Sprite => {
    const width = Math.ceil(measure(text.text, text.face)) + 4 * HALO;
    const height = Math.ceil(Number.parseFloat(text.face.replace(/^\D*/, '')) * (1 + LETTER_ROOM));
    const key = `${text.face} ${text.colour} ${text.halo} ${text.text}`;
    const texture = imageOf(key, width, height, (context) =>
      paintText(context, { ...text, x: width / 2, y: height / 2, align: 'centre', turn: 0 }),
    );
    // On whole device pixels, or the letters blur.
    const snap = (value: number) => Math.round(value * ratio) / ratio;
    return newSprite(texture, snap(text.x - width / 2), snap(text.y - height / 2), 1);
  };

  return {
    kind: 'webgl',
    element,
    resize(newSize, newRatio) {
      size = newSize;
      ratio = Math.max(LEAST_RATIO, newRatio);
      for (const [layer, container] of layers) empty(layer, container);
      for (const sprite of spareSprites.splice(0)) sprite.destroy();
      for (const texture of images.values()) texture.destroy(true);
      images.clear();
      renderer.resize(size.width, size.height, ratio);
    },
    setLayer(layer, picture) {
      const container = layers.get(layer) as Container;
      empty(layer, container);
      if (isStill(layer)) {
        container.addChild(new Sprite(textureOf(paintStill(picture, size, ratio))));
        return;
      }
      addShapes(container, picture, { lettersOf, addMarks, newGraphics });
    },
    render() {
      renderer.render(stage);
    },
    destroy() {
      alive = false;
      element.removeEventListener('webglcontextlost', lost);
      for (const [layer, container] of layers) empty(layer, container);
      for (const spare of [...spareSprites, ...spareGraphics]) spare.destroy();
      for (const texture of images.values()) texture.destroy(true);
      stage.destroy();
      renderer.destroy();
      element.remove();
    },
  };
}

interface Stamps {
  lettersOf(text: Text): Sprite;
  addMarks(container: Container, marks: Marks): void;
  newGraphics(): Graphics;
}

/** Shapes in the order of the picture; letters and marks lie between the graphics before and after them. */
function addShapes(
  container: Container,
  picture: Picture,
  { lettersOf, addMarks, newGraphics }: Stamps,
): void {
  let graphics: Graphics | undefined;
  for (const primitive of picture) {
    if (primitive.kind === 'text' || primitive.kind === 'marks') {
      if (primitive.kind === 'text') container.addChild(lettersOf(primitive));
      else addMarks(container, primitive);
      graphics = undefined;
      continue;
    }
    if (!graphics) {
      graphics = newGraphics();
      container.addChild(graphics);
    }
    addShape(graphics, primitive);
  }
}

function addShape(graphics: Graphics, primitive: Exclude<Primitive, Text | Marks>): void {
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
      graphics.stroke({ width, color: colour, alpha, cap: 'round', join: 'miter' });
      return;
    }
    case 'polygons':
      for (const polygon of primitive.polygons)
        graphics.poly([...polygon]).fill({ color: primitive.colour, alpha: primitive.alpha });
      return;
    case 'circle': {
      const { x, y, radius, alpha, fill, stroke } = primitive;
      graphics.circle(x, y, radius);
      if (fill) graphics.fill({ color: fill, alpha });
      if (stroke) graphics.stroke({ width: stroke.width, color: stroke.colour, alpha });
      return;
    }
  }
}
