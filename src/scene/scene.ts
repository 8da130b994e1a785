/**
 * The paper map in a page: the one thing both screens open. Answers for: choosing a painter and changing it when WebGL
 * is lost, drawing again what changed and nothing else, size of the host, words for screen readers. Leaves out: shapes
 * (picture.ts), where a dragged thing may go (the screen). A little above 200 lines: the state of one map stays together.
 */
import { HOLE_RADIUS, type Point } from '../../sim/index.ts';
import { runPath } from './animation.ts';
import type { Size } from './camera.ts';
import { makeCanvasPainter, makeMeasure } from './canvas-painter.ts';
import { makeHandles } from './handles.ts';
import type { AnimateOptions, Camera, Scene, SceneModel, SceneOptions } from './model.ts';
import type { Painter } from './painter.ts';
import { paletteOf } from './palette.ts';
import { PICK_RADIUS } from './pick.ts';
import { cameraFor, puttPicture, sameGround, stillPictures, valuesPicture } from './picture.ts';
import { drawRoller } from './putt.ts';
import './scene.css';

/** More device pixels than this for each CSS pixel are not seen, only paid for. */
const MOST_RATIO = 3;
/** Names under which WebGL without a graphics card goes. */
const DRAWN_BY_PROCESSOR = /swiftshader|llvmpipe|softpipe|software|basic render/i;
let scenes = 0;

/**
 * Whether this browser gives WebGL worth having; asked before the library is loaded. WebGL drawn by the processor does not
 * count: a drag on it took four times as long as on the two-dimensional canvas (measured 2026-11-25, Chromium, SwiftShader).
 * Tried and dropped: failIfMajorPerformanceCaveat, which that browser does not heed.
 */
function hasWebGl(): boolean {
  try {
    const canvas = document.createElement('canvas');
    const context = canvas.getContext('webgl2') ?? canvas.getContext('webgl');
    if (context === null) return false;
    const unmasked = context.getExtension('WEBGL_debug_renderer_info')?.UNMASKED_RENDERER_WEBGL;
    const renderer = String(context.getParameter(unmasked ?? context.RENDERER));
    context.getExtension('WEBGL_lose_context')?.loseContext();
    return !DRAWN_BY_PROCESSOR.test(renderer);
  } catch {
    return false;
  }
}

async function choosePainter(wish: SceneOptions['painter'], onLost: () => void): Promise<Painter> {
  if (wish !== 'canvas' && hasWebGl()) {
    try {
      const { makePixiPainter } = await import('./pixi-painter.ts');
      return await makePixiPainter(onLost);
    } catch {
      // Any failure of WebGL has the same answer: the canvas draws the same map.
    }
  }
  return makeCanvasPainter();
}

/**
 * Opens a map in `host`, which it fills; nothing is drawn before the first `update`.
 * @throws when the browser has neither WebGL nor a two-dimensional canvas
 */
export async function createScene(host: HTMLElement, options: SceneOptions = {}): Promise<Scene> {
  let model: SceneModel | undefined;
  let shown: SceneModel | undefined;
  let size: Size = { width: 0, height: 0 };
  let roller: { readonly place: Point; readonly last: boolean } | undefined;
  let labels: readonly number[] = [];
  let stopRoll: (() => void) | undefined;
  let frame = 0;
  let destroyed = false;
  const stale = { size: true, ground: true, values: true, putt: true, roller: true };
  /** A layer of nothing is an image all the same: it is set only where it has or had something. */
  let hasValues = false;

  let painter = await choosePainter(options.painter, () => useCanvas());
  const measure = makeMeasure();

  scenes += 1;
  const id = `scene-${scenes}`;
  const root = document.createElement('div');
  root.className = Number.isFinite(options.pickRadius ?? 0) ? 'scene' : 'scene scene-all';
  const words = document.createElement('p');
  words.className = 'scene-words';
  words.id = id;
  const adopt = (canvas: HTMLCanvasElement): void => {
    canvas.setAttribute('role', 'img');
    canvas.setAttribute('aria-label', options.name ?? 'Map of the putt');
    canvas.setAttribute('aria-describedby', id);
    root.dataset.painter = painter.kind;
    root.prepend(canvas);
  };
  adopt(painter.element);
  root.append(words);
  host.append(root);

  const camera = (): Camera => {
    const now = model;
    if (!now) throw new Error('Got a question about the camera before any model, expected update() first.');
    return cameraFor(now, size);
  };

  const ask = (): void => {
    if (frame === 0 && !destroyed) frame = requestAnimationFrame(draw);
  };
  const staleAll = (): void => {
    stale.size = true;
    stale.ground = true;
    stale.putt = true;
    stale.roller = true;
    ask();
  };
  const useCanvas = (): void => {
    if (destroyed || painter.kind === 'canvas') return;
    painter.destroy();
    painter = makeCanvasPainter();
    adopt(painter.element);
    staleAll();
  };

  const draw = (): void => {
    frame = 0;
    if (!model || size.width === 0 || size.height === 0) return;
    try {
      paint(model);
    } catch (cause) {
      // A painter that fails while it draws is replaced once; the canvas has none to be replaced by.
      if (painter.kind === 'canvas') throw cause;
      useCanvas();
    }
  };
  const paint = (now: SceneModel): void => {
    if (stale.size) painter.resize(size, Math.min(MOST_RATIO, window.devicePixelRatio || 1));
    if (stale.size || stale.ground) {
      const { ground, margin } = stillPictures(now, size, measure);
      painter.setLayer('ground', ground);
      painter.setLayer('margin', margin);
    }
    if ((stale.size || stale.ground || stale.values) && (hasValues || now.values)) {
      painter.setLayer('values', valuesPicture(now, size, measure));
      hasValues = now.values !== undefined;
    }
    if (stale.size || stale.ground || stale.putt) {
      const putt = puttPicture(now, size, measure, { rolled: roller !== undefined, previousLabels: labels });
      labels = putt.labels;
      painter.setLayer('putt', putt.picture);
    }
    if (stale.size || stale.ground || stale.roller) painter.setLayer('roller', rollerPicture(now));
    stale.size = false;
    stale.ground = false;
    stale.values = false;
    stale.putt = false;
    stale.roller = false;
    shown = now;
    painter.render();
    handles.follow();
  };
  const rollerPicture = (now: SceneModel) => {
    if (!roller) return [];
    const { place, last } = roller;
    const inHole = last && Math.hypot(place.x - now.hole.x, place.y - now.hole.y) < HOLE_RADIUS;
    return drawRoller(place, inHole, cameraFor(now, size), paletteOf(now.theme));
  };

  const handles = makeHandles({
    root,
    id,
    pickRadius: options.pickRadius ?? PICK_RADIUS,
    model: () => model,
    camera,
    onDrag: (handle, place) => options.onDrag?.(handle, place),
    onDragEnd: (handle) => options.onDragEnd?.(handle),
    onTap: (place) => options.onTap?.(place),
  });

  const measureHost = (): void => {
    const { clientWidth, clientHeight } = root;
    if (clientWidth === size.width && clientHeight === size.height && !stale.size) return;
    size = { width: clientWidth, height: clientHeight };
    staleAll();
  };
  const observer = new ResizeObserver(measureHost);
  observer.observe(root);
  // The zoom of the page changes device pixels without changing the box.
  window.addEventListener('resize', staleAll);
  measureHost();

  const forgetRoll = (): void => {
    stopRoll?.();
    stopRoll = undefined;
    if (!roller) return;
    roller = undefined;
    stale.roller = true;
    stale.putt = true;
    ask();
  };

  return {
    get painter() {
      return painter.kind;
    },
    camera,
    update(next) {
      if (destroyed) return;
      if (model && !samePlaces(model, next)) forgetRoll();
      model = next;
      if (!shown || !sameGround(shown, next)) stale.ground = true;
      if (shown?.values !== next.values) stale.values = true;
      stale.putt = true;
      if (words.textContent !== next.description) words.textContent = next.description;
      ask();
    },
    animate(path, animateOptions: AnimateOptions = {}) {
      forgetRoll();
      if (destroyed) {
        animateOptions.onDone?.('cancelled');
        return () => undefined;
      }
      const stop = runPath(path, animateOptions, (place, last) => {
        if (!roller) stale.putt = true;
        roller = { place, last };
        stale.roller = true;
        ask();
      });
      stopRoll = stop;
      return () => {
        stop();
        if (stopRoll === stop) forgetRoll();
      };
    },
    destroy() {
      if (destroyed) return;
      destroyed = true;
      cancelAnimationFrame(frame);
      stopRoll?.();
      observer.disconnect();
      window.removeEventListener('resize', staleAll);
      handles.destroy();
      painter.destroy();
      root.remove();
    },
  };
}

/** Whether a ball that has rolled still tells the truth. */
const samePlaces = (one: SceneModel, two: SceneModel): boolean =>
  one.surface === two.surface &&
  one.hole.x === two.hole.x &&
  one.hole.y === two.hole.y &&
  one.ball?.x === two.ball?.x &&
  one.ball?.y === two.ball?.y;
