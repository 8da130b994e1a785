/**
 * Where missed balls come to rest, for many starts and energies at little cost.
 *
 * On a plane exactly: a ball rests at ball + v^2 D(start) (Cross; the closed form of roll/plane.ts). On a height field the
 * rests are rolled on a grid of starts by energies and interpolated by cubics both ways. A ball that leaves the field rests
 * where it left it. Leaves out: the hole (it counts as covered).
 */
import { planeReach } from '../roll/plane.ts';
import { bearingOf, rollerFor } from '../roll/roll.ts';
import { newPass } from '../roll/roller.ts';
import type { Putt } from '../types.ts';
import { lagrange } from './window.ts';

export interface Rests {
  /** Choose the starts (radians from ball->hole) that `at` answers for; kept until the next call. */
  aim(starts: Float64Array): void;
  /** Rests of all chosen starts at this energy v^2 (m^2/s^2), relative to the hole's centre, m. */
  at(energy: number, xs: Float64Array, ys: Float64Array): void;
}

/** What the starts and energies asked for will lie between. */
export interface RestRange {
  readonly starts: readonly [number, number];
  readonly energies: readonly [number, number];
}

export const restsOf = (putt: Putt, range: RestRange): Rests =>
  putt.surface.kind === 'plane' ? planeRests(putt) : fieldRests(putt, range);

function planeRests(putt: Putt): Rests {
  if (putt.surface.kind !== 'plane') throw new TypeError('planeRests needs a plane');
  const reach = planeReach(putt.surface, putt.greenSpeed);
  const zero = bearingOf(putt);
  const toX = putt.ball.x - putt.hole.x;
  const toY = putt.ball.y - putt.hole.y;
  let dx = new Float64Array(0);
  let dy = new Float64Array(0);
  const one = { x: 0, y: 0 };
  return {
    aim(starts) {
      if (dx.length !== starts.length) {
        dx = new Float64Array(starts.length);
        dy = new Float64Array(starts.length);
      }
      for (let i = 0; i < starts.length; i++) {
        reach(zero + starts[i], one);
        dx[i] = one.x;
        dy[i] = one.y;
      }
    },
    at(energy, xs, ys) {
      for (let i = 0; i < dx.length; i++) {
        xs[i] = toX + energy * dx[i];
        ys[i] = toY + energy * dy[i];
      }
    },
  };
}

/** Starts are rolled at least this close together, radians: greens turn a path by far less than a cubic cannot follow. */
const START_SPACING = 0.035;
const ENERGY_NODES = 13;

function fieldRests(putt: Putt, range: RestRange): Rests {
  const roller = rollerFor(putt);
  const zero = bearingOf(putt);
  const pass = newPass();
  const [lowStart, highStart] = range.starts;
  const [lowEnergy, highEnergy] = range.energies;
  const lastStart = Math.max(5, Math.ceil((highStart - lowStart) / START_SPACING));
  const lastEnergy = ENERGY_NODES - 1;
  const startStep = (highStart - lowStart) / lastStart || 1;
  const energyStep = (highEnergy - lowEnergy) / lastEnergy || 1;
  const gridX = new Float64Array((lastStart + 1) * ENERGY_NODES);
  const gridY = new Float64Array((lastStart + 1) * ENERGY_NODES);
  for (let i = 0; i <= lastStart; i++)
    for (let j = 0; j < ENERGY_NODES; j++) {
      roller.pass(zero + lowStart + i * startStep, Math.sqrt(lowEnergy + j * energyStep), pass);
      gridX[i * ENERGY_NODES + j] = pass.restX - putt.hole.x;
      gridY[i * ENERGY_NODES + j] = pass.restY - putt.hole.y;
    }

  let count = 0;
  let columnX = new Float64Array(0);
  let columnY = new Float64Array(0);
  const spot = { first: 0, w: new Float64Array(4) };
  const within = (value: number, last: number): number => Math.max(0, Math.min(last, value));
  return {
    aim(starts) {
      count = starts.length;
      if (columnX.length !== count * ENERGY_NODES) {
        columnX = new Float64Array(count * ENERGY_NODES);
        columnY = new Float64Array(count * ENERGY_NODES);
      }
      for (let i = 0; i < count; i++) {
        lagrange(within((starts[i] - lowStart) / startStep, lastStart), lastStart, spot);
        for (let j = 0; j < ENERGY_NODES; j++) {
          let x = 0;
          let y = 0;
          for (let k = 0; k < 4; k++) {
            const cell = (spot.first + k) * ENERGY_NODES + j;
            x += spot.w[k] * gridX[cell];
            y += spot.w[k] * gridY[cell];
          }
          columnX[i * ENERGY_NODES + j] = x;
          columnY[i * ENERGY_NODES + j] = y;
        }
      }
    },
    at(energy, xs, ys) {
      lagrange(within((energy - lowEnergy) / energyStep, lastEnergy), lastEnergy, spot);
      const { first, w } = spot;
      for (let i = 0; i < count; i++) {
        const base = i * ENERGY_NODES + first;
        xs[i] =
          w[0] * columnX[base] +
          w[1] * columnX[base + 1] +
          w[2] * columnX[base + 2] +
          w[3] * columnX[base + 3];
        ys[i] =
          w[0] * columnY[base] +
          w[1] * columnY[base + 1] +
          w[2] * columnY[base + 2] +
          w[3] * columnY[base + 3];
      }
    },
  };
}
