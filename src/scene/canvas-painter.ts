/**
 * Paints pictures on a two-dimensional canvas: the whole map where WebGL is missing, the still layers and the letters
 * everywhere. Leaves out: what is in a picture.
 */
import type { Size } from './camera.ts';
import { isStill, LAYERS, type LayerName, type Painter } from './painter.ts';
import type {
  Circle,
  Face,
  Marks,
  MeasureText,
  Picture,
  Places,
  Primitive,
  Raster,
  Text,
} from './primitives.ts';

/** Width of the halo on each side of a letter, pixels. */
export const HALO = 2.6;

export const newCanvas = (width: number, height: number): HTMLCanvasElement => {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width));
  canvas.height = Math.max(1, Math.round(height));
  return canvas;
};

export function contextOf(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('This browser gives no two-dimensional canvas to draw the map on.');
  return context;
}

/** Measures texts with one hidden canvas; remembers, since labels repeat from frame to frame. */
export function makeMeasure(): MeasureText {
  const context = contextOf(newCanvas(1, 1));
  const known = new Map<string, number>();
  return (text: string, face: Face) => {
    const key = `${face}\n${text}`;
    let width = known.get(key);
    if (width === undefined) {
      context.font = face;
      width = context.measureText(text).width;
      known.set(key, width);
    }
    return width;
  };
}

/** Paints a picture; the context must be scaled so that its unit is a CSS pixel. */
export function paintPicture(context: CanvasRenderingContext2D, picture: Picture): void {
  for (const primitive of picture) paint(context, primitive);
  context.globalAlpha = 1;
}

function paint(context: CanvasRenderingContext2D, primitive: Primitive): void {
  switch (primitive.kind) {
    case 'raster':
      paintRaster(context, primitive);
      break;
    case 'lines':
      context.globalAlpha = primitive.alpha;
      context.strokeStyle = primitive.colour;
      context.lineWidth = primitive.width;
      context.lineCap = 'round';
      context.lineJoin = 'miter';
      context.beginPath();
      for (const line of primitive.lines) trace(context, line);
      context.stroke();
      break;
    case 'polygons':
      context.globalAlpha = primitive.alpha;
      context.fillStyle = primitive.colour;
      context.beginPath();
      for (const polygon of primitive.polygons) {
        trace(context, polygon);
        context.closePath();
      }
      context.fill();
      break;
    case 'circle':
      paintCircle(context, primitive);
      break;
    case 'marks':
      paintMarks(context, primitive);
      break;
    case 'text':
      paintText(context, primitive);
      break;
  }
}

function trace(context: CanvasRenderingContext2D, places: Places): void {
  context.moveTo(places[0], places[1]);
  for (let at = 2; at + 1 < places.length; at += 2) context.lineTo(places[at], places[at + 1]);
}

function paintRaster(context: CanvasRenderingContext2D, raster: Raster): void {
  const { columns, rows, colours, x, y, width, height } = raster;
  const small = newCanvas(columns, rows);
  contextOf(small).putImageData(new ImageData(colours, columns, rows), 0, 0);
  context.globalAlpha = 1;
  context.imageSmoothingEnabled = true;
  context.imageSmoothingQuality = 'high';
  context.drawImage(small, x, y, width, height);
}

function paintCircle(context: CanvasRenderingContext2D, { x, y, radius, alpha, fill, stroke }: Circle): void {
  context.globalAlpha = alpha;
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  if (fill) {
    context.fillStyle = fill;
    context.fill();
  }
  if (stroke) {
    context.strokeStyle = stroke.colour;
    context.lineWidth = stroke.width;
    context.stroke();
  }
}

/** One by one, so that where translucent ones overlap they darken. */
function paintMarks(context: CanvasRenderingContext2D, marks: Marks): void {
  const { places, shape, radius, width, colour, alpha } = marks;
  context.globalAlpha = alpha;
  context.fillStyle = colour;
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.lineCap = 'round';
  for (let at = 0; at + 1 < places.length; at += 2) {
    const x = places[at];
    const y = places[at + 1];
    context.beginPath();
    if (shape === 'cross') {
      context.moveTo(x - radius, y);
      context.lineTo(x + radius, y);
      context.moveTo(x, y - radius);
      context.lineTo(x, y + radius);
    } else context.arc(x, y, radius, 0, 2 * Math.PI);
    if (shape === 'dot') context.fill();
    else context.stroke();
  }
}

export function paintText(context: CanvasRenderingContext2D, text: Text): void {
  context.save();
  context.globalAlpha = 1;
  context.font = text.face;
  context.textBaseline = 'middle';
  context.textAlign = text.align === 'centre' ? 'center' : text.align;
  context.translate(text.x, text.y);
  context.rotate(text.turn);
  if (text.halo) {
    context.lineJoin = 'round';
    context.lineWidth = 2 * HALO;
    context.strokeStyle = text.halo;
    context.globalAlpha = 0.85;
    context.strokeText(text.text, 0, 0);
    context.globalAlpha = 1;
  }
  context.fillStyle = text.colour;
  context.fillText(text.text, 0, 0);
  context.restore();
}

/** A still picture as an image of the page's size, with ratio device pixels for each CSS pixel. */
export function paintStill(picture: Picture, size: Size, ratio: number): HTMLCanvasElement {
  const canvas = newCanvas(size.width * ratio, size.height * ratio);
  const context = contextOf(canvas);
  context.scale(ratio, ratio);
  paintPicture(context, picture);
  return canvas;
}

export function makeCanvasPainter(): Painter {
  const element = newCanvas(1, 1);
  const context = contextOf(element);
  const pictures = new Map<LayerName, Picture>();
  const images = new Map<LayerName, HTMLCanvasElement>();
  let size: Size = { width: 1, height: 1 };
  let ratio = 1;
  return {
    kind: 'canvas',
    element,
    resize(newSize, newRatio) {
      size = newSize;
      ratio = newRatio;
      element.width = Math.max(1, Math.round(size.width * ratio));
      element.height = Math.max(1, Math.round(size.height * ratio));
    },
    setLayer(layer, picture) {
      if (isStill(layer)) images.set(layer, paintStill(picture, size, ratio));
      else pictures.set(layer, picture);
    },
    render() {
      context.setTransform(ratio, 0, 0, ratio, 0, 0);
      context.clearRect(0, 0, size.width, size.height);
      for (const layer of LAYERS) {
        const image = images.get(layer);
        if (image) context.drawImage(image, 0, 0, size.width, size.height);
        const picture = pictures.get(layer);
        if (picture) paintPicture(context, picture);
      }
    },
    destroy() {
      element.remove();
      pictures.clear();
      images.clear();
    },
  };
}
