/**
 * What a screen tells the map and hears from it: the only types a screen needs besides `createScene` (scene.ts).
 * Answers for: names, units and meaning. Leaves out: how any of it is drawn.
 * World: metres, as in the engine. Pixels: CSS pixels from the upper left corner of the map.
 */
import type { Point, Surface } from '../../sim/index.ts';

export type Theme = 'light' | 'dark';
export type Units = 'imperial' | 'metric';
/** What a person can move. */
export type Handle = 'ball' | 'hole' | 'aim';
/** die: dashed blue. firm: solid vermilion. yours: dash and dot, purple. true: solid ink. */
export type LineStyle = 'die' | 'firm' | 'yours' | 'true';
export type PainterKind = 'webgl' | 'canvas';

/** The part of the world in the map. */
export interface Viewport {
  readonly centre: Point;
  /** Metres shown across the shorter side of the map; the longer side shows more. So whatever fits the circle is seen. */
  readonly metresAcross: number;
  /** Bearing that points up the page, radians from +x; default a quarter turn (+y up). */
  readonly up?: number;
}

export interface SceneLine {
  /** Path as x, y, t triples (m, m, s), as the engine gives it. Drawn firmly to the hole and faintly beyond. */
  readonly path: Float64Array;
  readonly style: LineStyle;
  /** Written beside the aim spot, or beside the end of the line where there is no aim spot. */
  readonly label?: string;
  /** Where the start line passes the hole; joined to the ball by a dotted line. */
  readonly aimSpot?: Point;
  /** Where the path is farthest from the straight line to the hole. */
  readonly apex?: Point;
  /** Where the ball would stop with the hole covered. */
  readonly rest?: Point;
}

/** Where the putts of one pace finish. Only the missed ones are drawn: crosses for die, rings for the others; a dot in the
 *  middle of those that lipped out. */
export interface SceneCloud {
  readonly style: LineStyle;
  /** x, y pairs, m. */
  readonly rests: Float64Array;
  /** 1 where the putt dropped, one per pair. */
  readonly holed: Uint8Array;
  /** 1 where it touched the hole and left it again. */
  readonly lippedOut: Uint8Array;
}

export interface ContourStep {
  /** m */
  readonly step: number;
  /** Written in the legend, such as "1 cm"; left out: the legend does not tell it. */
  readonly words?: string;
}

/** A value told all over the ground, drawn over it as isolines and a tint. Compared by identity. */
export interface SceneValues {
  /** Lower left node, m. */
  readonly origin: Point;
  /** Between nodes, m. */
  readonly spacingX: number;
  readonly spacingY: number;
  readonly columns: number;
  readonly rows: number;
  /** Row by row, x fastest; NaN where there is none. */
  readonly values: Float64Array;
  /** So far beyond the outermost nodes the value is told as at them, m. */
  readonly beyond: number;
  /** Between neighbouring isolines; every second one, at an even multiple of it, is heavier and carries its value. */
  readonly step: number;
  /** The least value, above which tint and isolines begin, and where the tint is full. */
  readonly tint: readonly [none: number, full: number];
  format(value: number): string;
  /** Of another question than the one on the page: drawn fainter. */
  readonly stale: boolean;
}

/** A ring round the hole with the hours of a clock. */
export interface SceneRing {
  /** m */
  readonly radius: number;
  /** Bearing of 12 o'clock from the hole, radians from +x. */
  readonly twelve: number;
}

/** A place that is better or worse than all others. */
export interface SceneSide {
  readonly kind: 'best' | 'worst';
  readonly place: Point;
  readonly label: string;
}

/** How far the arrow keys move a thing. */
export interface KeySteps {
  /** m */
  readonly step: number;
  /** With Shift, m. */
  readonly fine: number;
  /** Both in words, read out with the handle. */
  readonly words: string;
}

export interface SceneModel {
  /** Compared by identity: hand over the same object while the ground stays the same, and a drag redraws no ground. */
  readonly surface: Surface;
  readonly viewport: Viewport;
  readonly ball?: Point;
  readonly hole: Point;
  readonly lines: readonly SceneLine[];
  readonly clouds: readonly SceneCloud[];
  /** The person's own aim, a spot that can be moved. */
  readonly aim?: Point;
  readonly values?: SceneValues;
  readonly ring?: SceneRing;
  readonly sides?: readonly SceneSide[];
  /** Heights written on the thicker contours; needs showContours. */
  readonly showHeights: boolean;
  readonly showContours: boolean;
  /** Height between contours, so that they are as close on every map as the ground is steep; default suits the view. */
  readonly contourStep?: ContourStep;
  readonly theme: Theme;
  readonly units: Units;
  /** What can be moved now, by pointer and by keys. */
  readonly draggable: readonly Handle[];
  /** Default: 5 cm, with Shift 1 cm. */
  readonly keySteps?: KeySteps;
  /** The picture in words: read out instead of the picture, and kept in step with it by the screen. */
  readonly description: string;
  /** Where each thing is, in words, read out with its handle, such as "12 ft from the hole". */
  readonly handleText?: Partial<Readonly<Record<Handle, string>>>;
}

export interface SceneOptions {
  /** The thing is being moved to this place (m). The screen decides where it goes and answers with `update`. */
  onDrag?(handle: Handle, place: Point): void;
  /** The finger is up, or the arrow key. */
  onDragEnd?(handle: Handle): void;
  /** A place on the map (m) was tapped or clicked that has nothing to take hold of. */
  onTap?(place: Point): void;
  /** Short name of the picture for screen readers; default "Map of the putt". */
  readonly name?: string;
  /** auto (default): WebGL, or the two-dimensional canvas where that is missing or fails. */
  readonly painter?: 'auto' | 'canvas';
  /** How near a pointer must come to take hold, CSS pixels; default 28. */
  readonly pickRadius?: number;
}

export interface AnimateOptions {
  /** 1 is real speed, 0.5 half; default 1. */
  readonly rate?: number;
  /** Called once: at the end of the path, or when the roll was called off or replaced by another. */
  onDone?(outcome: 'ended' | 'cancelled'): void;
}

export interface Camera {
  /** Metres to CSS pixels. */
  toPixel(point: Point): Point;
  /** CSS pixels to metres. */
  toWorld(pixel: Point): Point;
  /** CSS pixels per metre. */
  readonly scale: number;
}

export interface Scene {
  /** Shows this from the next frame on. */
  update(model: SceneModel): void;
  /**
   * Rolls a ball along x, y, t triples (m, m, s); where less motion is asked for, it jumps to the end. The ball stays
   * where it stopped until ball, hole or ground change.
   * @returns calls the roll off
   */
  animate(path: Float64Array, options?: AnimateOptions): () => void;
  /** The camera of what is shown now. */
  camera(): Camera;
  /** What draws; WebGL may give way to the canvas at any time, when the browser takes its context away. */
  readonly painter: PainterKind;
  /** Removes everything from the host. */
  destroy(): void;
}
