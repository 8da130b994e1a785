/**
 * Moving ball, hole and aim: by pointer anywhere near them, by arrow keys on a button that lies over each.
 * Answers for: buttons, capture of the pointer, steps of the keys. Leaves out: where a thing may go (the screen decides
 * and answers with a new model).
 */
import type { Point } from '../../sim/index.ts';
import type { Camera, Handle, KeySteps, SceneModel } from './model.ts';
import { movable, pickNearest } from './pick.ts';

/** Steps of the arrow keys unless the screen has its own: a hand's width, and with Shift a fingertip's. */
const KEY_STEPS: KeySteps = { step: 0.05, fine: 0.01, words: 'arrow keys move it 5 cm, with Shift 1 cm' };
/** Right and up of each key on the page. */
const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
const NAMES: Readonly<Record<Handle, string>> = { ball: 'Ball', hole: 'Hole', aim: 'Your aim' };

export interface HandleOptions {
  readonly root: HTMLElement;
  /** Prefix for ids in the page. */
  readonly id: string;
  readonly pickRadius: number;
  model(): SceneModel | undefined;
  camera(): Camera;
  onDrag(handle: Handle, place: Point): void;
  onDragEnd(handle: Handle): void;
  onTap(place: Point): void;
}

export interface Handles {
  /** Puts the buttons where the model has its things. */
  follow(): void;
  destroy(): void;
}

const placeOf = (model: SceneModel | undefined, handle: Handle): Point | undefined =>
  model && movable(model).find((thing) => thing.handle === handle)?.place;

export function makeHandles(options: HandleOptions): Handles {
  const { root, id, pickRadius, model, camera, onDrag, onDragEnd, onTap } = options;
  const buttons = new Map<Handle, { button: HTMLButtonElement; words: HTMLElement }>();
  /** What the pointer holds, and how far beside its middle it took hold, so that nothing jumps. */
  let held: { handle: Handle; pointer: number; offset: Point } | undefined;
  /** The click that follows has been a hold. */
  let wasHeld = false;
  /** What keys are moving. */
  let keyed: Handle | undefined;

  const make = (handle: Handle) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'scene-handle';
    button.dataset.handle = handle;
    const words = document.createElement('span');
    words.className = 'scene-words';
    words.id = `${id}-${handle}`;
    button.setAttribute('aria-describedby', words.id);
    button.addEventListener('keydown', (event) => moveByKey(handle, event));
    button.addEventListener('keyup', (event) => {
      if (event.key in KEYS) letGoOfKey(handle);
    });
    button.addEventListener('blur', () => letGoOfKey(handle));
    root.append(button, words);
    const made = { button, words };
    buttons.set(handle, made);
    return made;
  };

  const moveByKey = (handle: Handle, event: KeyboardEvent): void => {
    const direction = KEYS[event.key];
    const place = placeOf(model(), handle);
    if (!direction || !place || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const { toPixel, toWorld, scale } = camera();
    const { step, fine } = model()?.keySteps ?? KEY_STEPS;
    const pixels = (event.shiftKey ? fine : step) * scale;
    const { x, y } = toPixel(place);
    keyed = handle;
    onDrag(handle, toWorld({ x: x + direction[0] * pixels, y: y - direction[1] * pixels }));
  };
  const letGoOfKey = (handle: Handle): void => {
    if (keyed !== handle) return;
    keyed = undefined;
    onDragEnd(handle);
  };

  const pixelOf = (event: MouseEvent): Point => {
    const box = root.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const near = (event: PointerEvent) => {
    const now = model();
    return now && pickNearest(movable(now), pixelOf(event), camera().toPixel, pickRadius);
  };
  const takeHold = (event: PointerEvent): void => {
    if (held || event.button !== 0) return;
    const thing = near(event);
    wasHeld = thing !== undefined;
    if (!thing) return;
    // No selection, no scrolling, and the focus goes where the hand is, which need not be the button under it.
    event.preventDefault();
    const pointer = pixelOf(event);
    const middle = camera().toPixel(thing.place);
    held = {
      handle: thing.handle,
      pointer: event.pointerId,
      offset: { x: middle.x - pointer.x, y: middle.y - pointer.y },
    };
    root.setPointerCapture(event.pointerId);
    root.classList.add('scene-held');
    buttons.get(thing.handle)?.button.focus({ preventScroll: true });
  };
  const move = (event: PointerEvent): void => {
    if (!held) {
      root.classList.toggle('scene-near', near(event) !== undefined);
      return;
    }
    if (held.pointer !== event.pointerId) return;
    const { x, y } = pixelOf(event);
    onDrag(held.handle, camera().toWorld({ x: x + held.offset.x, y: y + held.offset.y }));
  };
  const letGo = (event: PointerEvent): void => {
    if (held?.pointer !== event.pointerId) return;
    const { handle } = held;
    held = undefined;
    root.classList.remove('scene-held');
    onDragEnd(handle);
  };
  /** A click, not the pointer going up: a touch that scrolls the page ends in none. Keys that press a button have no count. */
  const tap = (event: MouseEvent): void => {
    if (!wasHeld && event.detail > 0 && model()) onTap(camera().toWorld(pixelOf(event)));
    wasHeld = false;
  };
  root.addEventListener('click', tap);
  root.addEventListener('pointerdown', takeHold);
  root.addEventListener('pointermove', move);
  root.addEventListener('pointerup', letGo);
  root.addEventListener('pointercancel', letGo);
  root.addEventListener('lostpointercapture', letGo);

  return {
    follow() {
      const now = model();
      const things = now ? movable(now) : [];
      for (const [handle, { button, words }] of buttons)
        if (!things.some((thing) => thing.handle === handle)) {
          button.remove();
          words.remove();
          buttons.delete(handle);
        }
      for (const { handle, place } of things) {
        const { button, words } = buttons.get(handle) ?? make(handle);
        const { x, y } = camera().toPixel(place);
        button.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
        const name = `${NAMES[handle]}: ${(now?.keySteps ?? KEY_STEPS).words}`;
        if (button.getAttribute('aria-label') !== name) button.setAttribute('aria-label', name);
        const text = now?.handleText?.[handle] ?? '';
        if (words.textContent !== text) words.textContent = text;
      }
    },
    destroy() {
      root.removeEventListener('click', tap);
      root.removeEventListener('pointerdown', takeHold);
      root.removeEventListener('pointermove', move);
      root.removeEventListener('pointerup', letGo);
      root.removeEventListener('pointercancel', letGo);
      root.removeEventListener('lostpointercapture', letGo);
      for (const { button, words } of buttons.values()) {
        button.remove();
        words.remove();
      }
    },
  };
}
