/**
 * The putt in hand, the same on every screen: what the person set, as signals, and the putt the engine is asked about.
 * Answers for: the one place where length and clock position become points and back. Leaves out: results (screens).
 * On the page 12 o'clock is up: the plane runs downhill towards -y.
 */
import { batch, computed, signal } from '@preact/signals';
import {
  bearingToClock,
  checkPutt,
  clockToBearing,
  DIE_PACE,
  FIRM_PACE,
  feetToMetres,
  generateGreen,
  type Point,
  type Putt,
  pinSpots,
  planeSurface,
  type Surface,
  sampleSurface,
} from '../../sim/index.ts';

import { capture, skid } from './settings.ts';

export type Ground = 'plane' | 'green';

export const LIMITS = {
  length: { min: feetToMetres(1), max: feetToMetres(80) },
  slope: { min: 0, max: 0.08 },
  greenSpeed: { min: feetToMetres(4), max: feetToMetres(16) },
  pace: { min: 0.02, max: 1.5 },
} as const;

/** Side of a generated green, m; the ball and hole stay this far inside its edge. */
const GREEN_SIZE = 20;
const GREEN_MARGIN = 0.5;
const PLANE_DOWNHILL = -Math.PI / 2;

export const ground = signal<Ground>('plane');
export const slope = signal(0.02);
export const greenSpeed = signal(feetToMetres(10));
export const seed = signal('7');
export const tier = signal(false);
export const diePace = signal(DIE_PACE);
export const firmPace = signal(FIRM_PACE);

const polar = (from: Point, bearing: number, distance: number): Point => ({
  x: from.x + Math.cos(bearing) * distance,
  y: from.y + Math.sin(bearing) * distance,
});

export const hole = signal<Point>({ x: 0, y: 0 });
/** The first putt shown: 12 ft, two per cent, ball at 4 o'clock. */
export const ball = signal<Point>(polar({ x: 0, y: 0 }, clockToBearing(4, PLANE_DOWNHILL), feetToMetres(12)));

/** Kept apart from `surface`: going to the plane and back makes no new green. */
const green = computed(() => generateGreen({ seed: seed.value, sizeM: GREEN_SIZE, tier: tier.value }));

export const surface = computed<Surface>(() =>
  ground.value === 'plane' ? planeSurface({ slope: slope.value, downhill: PLANE_DOWNHILL }) : green.value,
);

/** Slope (share) and downhill bearing (radians) of the ground at the hole. */
export const fallAtHole = computed(() => {
  const land = surface.value;
  if (land.kind === 'plane') return { slope: land.slope, downhill: land.downhill };
  const out = { height: 0, gradientX: 0, gradientY: 0 };
  if (!sampleSurface(land, hole.value.x, hole.value.y, out)) return { slope: 0, downhill: PLANE_DOWNHILL };
  const size = Math.hypot(out.gradientX, out.gradientY);
  return { slope: size, downhill: size > 1e-9 ? Math.atan2(-out.gradientY, -out.gradientX) : PLANE_DOWNHILL };
});

const bearing = computed(() => Math.atan2(ball.value.y - hole.value.y, ball.value.x - hole.value.x));
export const length = computed(() => Math.hypot(ball.value.x - hole.value.x, ball.value.y - hole.value.y));
export const clock = computed(() => bearingToClock(bearing.value, fallAtHole.value.downhill));

export const putt = computed<Putt>(() => ({
  surface: surface.value,
  greenSpeed: greenSpeed.value,
  ball: ball.value,
  hole: hole.value,
  capture: capture.value,
  skid: skid.value,
}));

/** What is wrong with the putt as a whole, from the engine's own check. */
export const problem = computed<string | undefined>(() => checkPutt(putt.value));

const onGround = (point: Point): boolean =>
  ground.value === 'plane' ||
  (Math.min(point.x, point.y) >= GREEN_MARGIN && Math.max(point.x, point.y) <= GREEN_SIZE - GREEN_MARGIN);

const OFF_GREEN =
  'That puts the ball off the green. Shorten the putt, turn the ball round the hole, or move the hole.';

/** Setters return a problem sentence, or undefined when the value was taken. */
export const placeBall = (length_: number, clock_: number): string | undefined => {
  const next = polar(hole.value, clockToBearing(clock_, fallAtHole.value.downhill), length_);
  if (!onGround(next)) return OFF_GREEN;
  ball.value = next;
  return undefined;
};

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);

/** A drag never fails: the point follows the pointer as far as the green and the allowed lengths reach. */
export const dragTo = (what: 'ball' | 'hole', to: Point): void => {
  if (!Number.isFinite(to.x) || !Number.isFinite(to.y)) return;
  const other = what === 'ball' ? hole.value : ball.value;
  let x = to.x;
  let y = to.y;
  if (ground.value === 'green') {
    x = clamp(x, GREEN_MARGIN, GREEN_SIZE - GREEN_MARGIN);
    y = clamp(y, GREEN_MARGIN, GREEN_SIZE - GREEN_MARGIN);
  }
  const distance = Math.hypot(x - other.x, y - other.y);
  const allowed = clamp(distance, LIMITS.length.min, LIMITS.length.max);
  if (allowed !== distance) {
    const angle = distance > 0 ? Math.atan2(y - other.y, x - other.x) : 0;
    ({ x, y } = polar(other, angle, allowed));
    if (!onGround({ x, y })) return;
  }
  if (what === 'ball') ball.value = { x, y };
  else hole.value = { x, y };
};

/** Puts the ball at this length and clock position, or as far that way as the green reaches. */
const placeNear = (length_: number, clock_: number): void => {
  const way = clockToBearing(clock_, fallAtHole.value.downhill);
  let reach = length_;
  while (reach > LIMITS.length.min && !onGround(polar(hole.value, way, reach))) reach -= 0.1;
  ball.value = polar(hole.value, way, Math.max(reach, LIMITS.length.min));
};

/** Where the hole of a green is cut: of a few fair places the one nearest its middle, so that putts fit all round. */
const holeOfGreen = (): Point => {
  const middle = { x: GREEN_SIZE / 2, y: GREEN_SIZE / 2 };
  const away = ({ x, y }: Point): number => Math.hypot(x - middle.x, y - middle.y);
  return pinSpots(green.value, 4, seed.value).sort((one, two) => away(one) - away(two))[0] ?? middle;
};

/** Changes the ground, keeping length and clock where they fit. */
export const setGround = (next: Ground): void => {
  const [far, face] = [length.value, clock.value];
  batch(() => {
    ground.value = next;
    hole.value = next === 'plane' ? { x: 0, y: 0 } : holeOfGreen();
    placeNear(far, face);
  });
};

/** Another green: a new hole on it, the ball as far from it and on the same side where that fits. */
export const setGreen = (next: { readonly seed?: string; readonly tier?: boolean }): void => {
  const [far, face] = [length.value, clock.value];
  batch(() => {
    if (next.seed !== undefined) seed.value = next.seed;
    if (next.tier !== undefined) tier.value = next.tier;
    hole.value = holeOfGreen();
    placeNear(far, face);
  });
};

/** The green of the number after this one; words count on from 1. */
export const anotherGreen = (): void => {
  const number = Number(seed.value);
  setGreen({ seed: Number.isInteger(number) ? String(number + 1) : '1' });
};
