/**
 * Where missed balls come to rest, for many energies along one start at a time, at little cost.
 *
 * On a plane exactly: a ball rests at ball + v^2 D(start) (Cross; the closed forms of roll/plane-motion.ts and roll/slide.ts). On a height field the
 * rests are rolled on a grid of starts by energies and interpolated by cubics both ways. A ball that leaves the field rests
 * where it left it. Leaves out: balls that touch the hole and stay out (lip-outs.ts).
 */

import { lagrange } from '../maths/interpolation.ts';
import { planeReach } from '../roll/plane.ts';
import { bearingOf, rollerFor } from '../roll/roll.ts';
import { newPass } from '../roll/roller.ts';
import { skidReach } from '../roll/slide.ts';
import type { PlaneSurface, Point, Putt } from '../types.ts';

/** Relative to the hole's centre, m. `lipped` is set, never cleared, for a ball that touched the hole and left it again. */
export interface RestPoint {
  x: number;
  y: number;
  lipped: boolean;
}

export interface Rests {
  /** Choose the start (radians from ball->hole) that `at` answers for. */
  aim(start: number): void;
  /** Energies (m^2/s^2) at which rests of the chosen start may jump, in any order; the first `jumpCount` count. */
  readonly jumps: Float64Array;
  readonly jumpCount: number;
  /**
   * Starts between which balls of these energies (m^2/s^2) may touch the hole and stay out, into `out`.
   * @returns false when none do
   */
  touched(softest: number, firmest: number, out: { low: number; high: number }): boolean;
  /** Rest at this energy v^2 (m^2/s^2). */
  at(energy: number, out: RestPoint): void;
}

/** What the starts (radians) and energies (m^2/s^2) asked for will lie between. */
export interface RestRange {
  readonly starts: readonly [number, number];
  readonly energies: readonly [number, number];
}

/** A covered hole turns nothing aside. */
export const COVERED = { jumps: new Float64Array(0), jumpCount: 0, touched: (): boolean => false };

/** Rests with the hole covered. @param range asked for where rests have to be rolled */
export const restsOf = (putt: Putt, range: () => RestRange): Rests =>
  putt.surface.kind === 'plane' ? planeRests(putt, putt.surface) : fieldRests(putt, range());

function planeRests(putt: Putt, surface: PlaneSurface): Rests {
  const reach = (putt.skid ? skidReach : planeReach)(surface, putt.greenSpeed);
  const zero = bearingOf(putt);
  const fromHoleX = putt.ball.x - putt.hole.x;
  const fromHoleY = putt.ball.y - putt.hole.y;
  const one = { x: 0, y: 0 };
  return {
    ...COVERED,
    aim: (start) => reach(zero + start, one),
    at(energy, out) {
      out.x = fromHoleX + energy * one.x;
      out.y = fromHoleY + energy * one.y;
    },
  };
}

/** Starts are rolled at least this close together, radians (2 degrees); tests/sim/odds compares with plain rolling. */
const START_SPACING = 0.035;
const ENERGY_NODES = 13;

function fieldRests(putt: Putt, range: RestRange): Rests {
  const [lowStart, highStart] = range.starts;
  const [lowEnergy, highEnergy] = range.energies;
  const lastStart = Math.max(5, Math.ceil((highStart - lowStart) / START_SPACING));
  const lastEnergy = ENERGY_NODES - 1;
  const startStep = (highStart - lowStart) / lastStart || 1;
  const energyStep = (highEnergy - lowEnergy) / lastEnergy || 1;
  const grid = rollGrid(putt, { lowStart, startStep, lastStart, lowEnergy, energyStep });
  const columnX = new Float64Array(ENERGY_NODES);
  const columnY = new Float64Array(ENERGY_NODES);
  const spot = { first: 0, w: new Float64Array(4) };
  const within = (value: number, last: number): number => Math.max(0, Math.min(last, value));
  return {
    ...COVERED,
    aim(start) {
      lagrange(within((start - lowStart) / startStep, lastStart), lastStart, spot);
      columnX.fill(0);
      columnY.fill(0);
      for (let k = 0; k < 4; k++)
        for (let j = 0; j < ENERGY_NODES; j++) {
          const { x, y } = grid[(spot.first + k) * ENERGY_NODES + j];
          columnX[j] += spot.w[k] * x;
          columnY[j] += spot.w[k] * y;
        }
    },
    at(energy, out) {
      lagrange(within((energy - lowEnergy) / energyStep, lastEnergy), lastEnergy, spot);
      out.x = 0;
      out.y = 0;
      for (let k = 0; k < 4; k++) {
        out.x += spot.w[k] * columnX[spot.first + k];
        out.y += spot.w[k] * columnY[spot.first + k];
      }
    },
  };
}

interface GridSteps {
  readonly lowStart: number;
  readonly startStep: number;
  readonly lastStart: number;
  readonly lowEnergy: number;
  readonly energyStep: number;
}

/** Rests relative to the hole, start by start, energies fastest. */
function rollGrid(putt: Putt, steps: GridSteps): Point[] {
  const roller = rollerFor(putt);
  const zero = bearingOf(putt);
  const pass = newPass();
  const rests: Point[] = [];
  for (let i = 0; i <= steps.lastStart; i++)
    for (let j = 0; j < ENERGY_NODES; j++) {
      const heading = zero + steps.lowStart + i * steps.startStep;
      roller.pass(heading, Math.sqrt(steps.lowEnergy + j * steps.energyStep), pass);
      rests.push({ x: pass.restX - putt.hole.x, y: pass.restY - putt.hole.y });
    }
  return rests;
}
