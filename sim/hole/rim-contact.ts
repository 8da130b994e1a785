/**
 * A rigid ball touching the hole: where it touches, what the contact asks of it, its equations of motion and impacts.
 *
 * Answers for: the geometry (green, sharp circular rim, vertical wall), contact force, rolling and slipping (MODEL.md
 * section 2). Leaves out: when a phase begins and ends (rim-motion.ts), flight (rim-flight.ts). All per unit of mass.
 * Frame: hole centre at the origin, x along the line of arrival, y to its left, z up from the plane of the green. A tilted
 * green tilts gravity instead: the hole then stands square to the green, an error of second order in its effect here.
 */
import { BALL_RADIUS, GRAVITY, HOLE_RADIUS } from '../constants.ts';

/** Layout of a state: centre (m), velocity (m/s), spin (rad/s), each x, y, z. */
export const VELOCITY = 3;
export const SPIN = 6;
export const STATE_SIZE = 9;

/** Depth of the hole, m: at least 4 in (Rules of Golf, definition of "hole"; read second-hand). */
export const HOLE_DEPTH = 0.1016;

/** 2/7 of the slip at the contact, taken from the velocity, leaves a solid ball rolling (derived, I = 2/5 m r^2). */
export const STICK_SHARE = 2 / 7;
/** A tangential push of 1 m/s turns the ball by 5/(2 r) rad/s (derived, I = 2/5 m r^2). */
const SPIN_PER_PUSH = 5 / (2 * BALL_RADIUS);

/** How the ball meets turf and rim. */
export interface RimMaterial {
  /** Speed kept along the normal in an impact, 0 to 1. */
  readonly restitution: number;
  /** Coulomb's coefficient, sliding and sticking. */
  readonly friction: number;
}

/** The ball on the rim or on the wall below it. */
export type Region = 'rim' | 'wall';

/** Gravity as the tilted green sees it, m/s^2. slope: rise over run; downhill: radians from the line of arrival. */
export function gravityOn(slope: number, downhill: number): Float64Array {
  const size = GRAVITY / Math.sqrt(1 + slope * slope);
  return Float64Array.of(size * slope * Math.cos(downhill), size * slope * Math.sin(downhill), -size);
}

/** Energy per unit of mass, J/kg: motion, spin (1/5 r^2 w^2) and height; zero at rest on the green level with the centre. */
export function energyOf(state: Float64Array, gravity: Float64Array): number {
  const [x, y, z, vx, vy, vz, wx, wy, wz] = state;
  return (
    (vx * vx + vy * vy + vz * vz) / 2 +
    (BALL_RADIUS ** 2 * (wx * wx + wy * wy + wz * wz)) / 5 -
    gravity[0] * x -
    gravity[1] * y -
    gravity[2] * (z - BALL_RADIUS)
  );
}

/** Contact at one state; reused. n: unit normal from the contact to the centre; rate: its time derivative. */
export interface Contact {
  readonly normal: Float64Array;
  readonly rate: Float64Array;
  /** Velocity of the ball's material at the contact, m/s: 0 when it rolls. */
  readonly slip: Float64Array;
  slipSpeed: number;
  /** Normal force, m/s^2; negative where the ball would have to be held down. */
  press: number;
  /** Friction that keeps a rolling ball rolling, m/s^2, and its size. */
  readonly grip: Float64Array;
  gripSize: number;
}

export const newContact = (): Contact => ({
  normal: new Float64Array(3),
  rate: new Float64Array(3),
  slip: new Float64Array(3),
  slipSpeed: 0,
  press: 0,
  grip: new Float64Array(3),
  gripSize: 0,
});

/** Velocity of the material at the contact: V - r w x n, without its part along n. */
export function slipOf(state: Float64Array, n: Float64Array, slip: Float64Array): number {
  const [, , , vx, vy, vz, wx, wy, wz] = state;
  const along = vx * n[0] + vy * n[1] + vz * n[2];
  slip[0] = vx - along * n[0] - BALL_RADIUS * (wy * n[2] - wz * n[1]);
  slip[1] = vy - along * n[1] - BALL_RADIUS * (wz * n[0] - wx * n[2]);
  slip[2] = vz - along * n[2] - BALL_RADIUS * (wx * n[1] - wy * n[0]);
  return Math.hypot(slip[0], slip[1], slip[2]);
}

/** The unit normal at a state, from the rim or wall to the centre. */
export function normalAt(state: Float64Array, region: Region, n: Float64Array): void {
  const [x, y, z] = state;
  const rho = Math.hypot(x, y);
  const inward = region === 'rim' ? rho - HOLE_RADIUS : -1;
  const up = region === 'rim' ? z : 0;
  const size = Math.hypot(inward, up);
  n[0] = (inward * x) / (rho * size);
  n[1] = (inward * y) / (rho * size);
  n[2] = up / size;
}

/** Everything about the contact at a state. */
export function examine(state: Float64Array, region: Region, gravity: Float64Array, out: Contact): void {
  const [x, y, , vx, vy, vz, wx, wy, wz] = state;
  const { normal: n, rate, grip } = out;
  normalAt(state, region, n);
  out.slipSpeed = slipOf(state, n, out.slip);
  const rho2 = x * x + y * y;
  const orbit = (x * vy - y * vx) / rho2;
  const rho = Math.sqrt(rho2);
  // The contact runs round the rim with the centre: P' = R theta' e_theta; n' = (V - P')/r. On the wall it keeps the centre's height.
  const lag = (orbit * HOLE_RADIUS) / rho;
  rate[0] = (vx + lag * y) / BALL_RADIUS;
  rate[1] = (vy - lag * x) / BALL_RADIUS;
  rate[2] = region === 'rim' ? vz / BALL_RADIUS : 0;
  const fall = gravity[0] * n[0] + gravity[1] * n[1] + gravity[2] * n[2];
  out.press = -fall - (rate[0] * vx + rate[1] * vy + rate[2] * vz);
  // Rolling on: (7/2) F = r (w x n')_t - g_t.
  const cx = BALL_RADIUS * (wy * rate[2] - wz * rate[1]);
  const cy = BALL_RADIUS * (wz * rate[0] - wx * rate[2]);
  const cz = BALL_RADIUS * (wx * rate[1] - wy * rate[0]);
  const along = cx * n[0] + cy * n[1] + cz * n[2] - fall;
  grip[0] = STICK_SHARE * (cx - gravity[0] - along * n[0]);
  grip[1] = STICK_SHARE * (cy - gravity[1] - along * n[1]);
  grip[2] = STICK_SHARE * (cz - gravity[2] - along * n[2]);
  out.gripSize = Math.hypot(grip[0], grip[1], grip[2]);
}

/** Time derivative of a state in contact: rolling, or slipping under Coulomb friction. */
export function accelerate(
  state: Float64Array,
  gravity: Float64Array,
  { contact, slips, friction }: { contact: Contact; slips: boolean; friction: number },
  out: Float64Array,
): void {
  const { normal: n, grip, slip } = contact;
  const drag = slips ? (-friction * Math.max(0, contact.press)) / contact.slipSpeed : 0;
  const fx = slips ? drag * slip[0] : grip[0];
  const fy = slips ? drag * slip[1] : grip[1];
  const fz = slips ? drag * slip[2] : grip[2];
  for (let i = 0; i < 3; i++) out[i] = state[VELOCITY + i];
  out[3] = gravity[0] + contact.press * n[0] + fx;
  out[4] = gravity[1] + contact.press * n[1] + fy;
  out[5] = gravity[2] + contact.press * n[2] + fz;
  out[6] = -SPIN_PER_PUSH * (n[1] * fz - n[2] * fy);
  out[7] = -SPIN_PER_PUSH * (n[2] * fx - n[0] * fz);
  out[8] = -SPIN_PER_PUSH * (n[0] * fy - n[1] * fx);
}

/** A tangential push (m/s) at the contact changes velocity and spin. */
export function pushContact(state: Float64Array, n: Float64Array, px: number, py: number, pz: number): void {
  state[3] += px;
  state[4] += py;
  state[5] += pz;
  state[6] -= SPIN_PER_PUSH * (n[1] * pz - n[2] * py);
  state[7] -= SPIN_PER_PUSH * (n[2] * px - n[0] * pz);
  state[8] -= SPIN_PER_PUSH * (n[0] * py - n[1] * px);
}

/** Ends the slip at the contact by the friction that takes (all: Infinity) at most `most` m/s. */
export function pushSlip(state: Float64Array, n: Float64Array, most: number, slip: Float64Array): void {
  const size = slipOf(state, n, slip);
  if (size === 0) return;
  const share = -Math.min(most / size, STICK_SHARE);
  pushContact(state, n, share * slip[0], share * slip[1], share * slip[2]);
}

/** An impact along `n`. @returns the speed at which the ball leaves along n, m/s; 0 when it was not approaching */
export function collide(
  state: Float64Array,
  n: Float64Array,
  { restitution, friction }: RimMaterial,
  slip: Float64Array,
): number {
  const approach = state[3] * n[0] + state[4] * n[1] + state[5] * n[2];
  if (approach >= 0) return approach;
  const kick = -(1 + restitution) * approach;
  pushSlip(state, n, friction * kick, slip);
  for (let i = 0; i < 3; i++) state[VELOCITY + i] += kick * n[i];
  return -restitution * approach;
}

/** Puts a centre that has drifted by rounding back on the rim or wall, and gives the normal there. */
export function place(state: Float64Array, region: Region, n: Float64Array): void {
  normalAt(state, region, n);
  const rho = Math.hypot(state[0], state[1]);
  const radius = HOLE_RADIUS - BALL_RADIUS * Math.hypot(n[0], n[1]);
  state[0] *= radius / rho;
  state[1] *= radius / rho;
  if (region === 'rim') state[2] = BALL_RADIUS * n[2];
}

/** Spin of a ball that rolls at its velocity: what it has about the normal stays. */
function spinFor(state: Float64Array, n: Float64Array): void {
  const [, , , vx, vy, vz] = state;
  const drill = state[6] * n[0] + state[7] * n[1] + state[8] * n[2];
  state[6] = drill * n[0] + (n[1] * vz - n[2] * vy) / BALL_RADIUS;
  state[7] = drill * n[1] + (n[2] * vx - n[0] * vz) / BALL_RADIUS;
  state[8] = drill * n[2] + (n[0] * vy - n[1] * vx) / BALL_RADIUS;
}

/** Takes what rounding has added to a state in contact: centre, velocity and, for a rolling ball, spin. */
export function settle(state: Float64Array, region: Region, rolls: boolean, n: Float64Array): void {
  place(state, region, n);
  const along = state[3] * n[0] + state[4] * n[1] + state[5] * n[2];
  for (let i = 0; i < 3; i++) state[VELOCITY + i] -= along * n[i];
  if (rolls) spinFor(state, n);
}
