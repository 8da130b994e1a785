/**
 * Holing out as a dynamic program: the places of a polar grid round the hole, what is tried from each, and where it leads.
 *
 * Each place is a putt of its own on the same surface, by the same player. What it takes depends on what the places its
 * misses reach take, and so does the best pace (Hoadley 1994; Broadie & Bansal 2008). First every place plays one sensible
 * pace (NEXT_PUTT_PACE); with the putts that takes as the cost of a miss, each place looks for a better pace; all
 * it tried are its actions. On a plane the fall line is a mirror, and half of the places do.
 * Leaves out: solving the program (dynamic-program.ts); paces that stop short of the hole's middle.
 */
import { NEXT_PUTT_PACE } from '../constants.ts';
import { type Decisions, evaluatePolicy } from '../maths/dynamic-program.ts';
import { minimize } from '../maths/minimum.ts';
import { playerBy } from '../player/errors.ts';
import { withoutHabits } from '../player/habits.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { Player, Point, Putt } from '../types.ts';
import { Place, SENSIBLE_PACES } from './place.ts';
import { type Grid, spreadOver } from './polar-table.ts';

export interface HoleOutOptions {
  /** Called with the share done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** 'best': the pace and aim that need fewest putts. 'fixed': NEXT_PUTT_PACE and the true line from everywhere. */
  readonly policy?: 'best' | 'fixed';
  /** Players who will keep this one's choices (held-policy.ts): places are made for their strokes too. Their habits do not count. */
  readonly among?: readonly Player[];
  /** Places and actions tried, for measuring what coarser ones leave out; 1: as usual, 2: twice as many each way. */
  readonly finer?: { readonly places?: number; readonly actions?: number };
}

/** Places solved: distances from the hole (m), closest where the chance of missing climbs, by so many bearings. */
const PLANE_RINGS = [
  0, 0.12, 0.2, 0.28, 0.36, 0.45, 0.55, 0.67, 0.81, 0.97, 1.17, 1.42, 1.75, 2.2, 2.8, 3.7, 5, 7.5, 12,
];
const FIELD_RINGS = [0, 0.12, 0.26, 0.38, 0.52, 0.7, 0.92, 1.2, 1.6, 2.15, 3, 4.4, 7, 12];
/** Nobody misses from so near, m: the ball all but hangs over the hole. */
const CERTAIN = 0.12;
const SPOKES = { plane: 24, field: 20 };
/** Between which the best is looked for: softer ones differ by less than a ball's width. Others where these have no line. */
const WIDEST = [NEXT_PUTT_PACE, 1.2, 0.02, 0.8, 0.05, 0.2, 0.1, 1.5];
/** Ratio of paces one step of the search apart. */
const STEP = 1.7;
/** Where no pace has a line (a hole that cannot be putted at from there): putts still needed. A guess, rarely met. */
const HOPELESS = 3;
/** Share of the work done when every place has been played once. */
const HALF_WAY = 0.6;

/** One pace from one place. */
export interface Action {
  readonly pace: number;
  /** Putts to come however it goes: one, or HOPELESS. */
  readonly cost: number;
  /** Places its misses go to, and the share of each. */
  readonly to: Int32Array;
  readonly share: Float64Array;
}

/** The program: actions place by place, and the same as rows of numbers. */
export interface HoleOut {
  readonly grid: Grid;
  /** undefined: so near that nobody misses, or off the surface. */
  readonly places: readonly (Place | undefined)[];
  readonly actions: readonly Action[];
  readonly decisions: Decisions;
  /** Actions of the one sensible pace, an index into `actions` for each place. */
  readonly sensible: Int32Array;
}

const NO_STEPS = { to: new Int32Array(0), share: new Float64Array(0) };
const CERTAIN_PUTT: Action = { pace: NEXT_PUTT_PACE, cost: 1, ...NO_STEPS };
/** No pace has a line: HOPELESS more putts. */
const NO_LINE: Action = { pace: 0, cost: HOPELESS, ...NO_STEPS };

/**
 * @param putt its ball does not matter
 * @param first its habits do not count: who has missed allows for them (MODEL.md, section 4)
 */
export function holeOut(putt: Putt, first: Player, options: HoleOutOptions = {}): HoleOut {
  const player = withoutHabits(first);
  const best = options.policy !== 'fixed';
  const finer = { places: 1, actions: 1, ...options.finer };
  const wildest = options.among && wildestOf([player, ...options.among.map(withoutHabits)]);
  const grid = gridOf(putt, finer.places);
  const { rings, columns } = grid;
  const tell = (ring: number, from: number, to: number): void =>
    options.onProgress?.(from + ((to - from) * (ring + 1)) / rings.length);
  const places: (Place | undefined)[] = [];
  const actions: Action[][] = [];
  for (let ring = 0; ring < rings.length; ring++) {
    for (let column = 0; column < columns; column++) {
      const certain = rings[ring] <= CERTAIN;
      const place = certain ? undefined : placeOn(putt, player, grid, { ring, column, best, wildest });
      const pace = place && SENSIBLE_PACES.find((one) => place.lineAt(one) !== undefined);
      places.push(place);
      actions.push([(place && pace && playOn(place, grid, pace)) || (certain ? CERTAIN_PUTT : NO_LINE)]);
    }
    tell(ring, 0, best ? HALF_WAY : 1);
  }
  const played = decisionsOf(actions);
  if (best) {
    const putts = evaluatePolicy(played, firstOf(played));
    for (let i = 0; i < places.length; i++) {
      const place = places[i];
      // The ring inside has been searched: its best, tried last, is near.
      const guess = actions[i - columns]?.at(-1)?.pace || NEXT_PUTT_PACE;
      if (place !== undefined) actions[i].push(...search(place, grid, putts, guess, finer.actions));
      if ((i + 1) % columns === 0) tell(Math.floor(i / columns), HALF_WAY, 1);
    }
  }
  const decisions = best ? decisionsOf(actions) : played;
  return { grid, places, actions: actions.flat(), decisions, sensible: firstOf(decisions) };
}

/** The first action of every place. */
const firstOf = ({ firstAction }: Decisions): Int32Array => firstAction.slice(0, -1);

/** @param finer cells of the usual grid are cut in so many, along and across */
function gridOf({ surface }: Putt, finer: number): Grid {
  const usual = surface.kind === 'plane' ? PLANE_RINGS : FIELD_RINGS;
  const rings = Array.from({ length: (usual.length - 1) * finer + 1 }, (_, i) => {
    const ring = Math.min(usual.length - 2, Math.floor(i / finer));
    return usual[ring] + (i / finer - ring) * (usual[ring + 1] - usual[ring]);
  });
  const spokes = SPOKES[surface.kind] * finer;
  return surface.kind === 'plane'
    ? { zero: surface.downhill, rings, spokes, columns: spokes / 2 + 1 }
    : { zero: 0, rings, spokes, columns: spokes };
}

interface PlaceMaking {
  readonly ring: number;
  readonly column: number;
  readonly best: boolean;
  readonly wildest: Player | undefined;
}

/** The largest of each spread; habits aside. */
const wildestOf = (players: readonly Player[]): Player =>
  playerBy((error) => Math.max(...players.map((player) => player[error])));

/** The place of the grid, drawn in to the edge of the surface where it would lie outside. */
function placeOn(
  putt: Putt,
  player: Player,
  { zero, rings, spokes }: Grid,
  { ring, column, best, wildest }: PlaceMaking,
): Place | undefined {
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  const angle = zero + (2 * Math.PI * column) / spokes;
  for (let distance = rings[ring]; distance > CERTAIN; distance -= 0.05) {
    const ball: Point = {
      x: putt.hole.x + distance * Math.cos(angle),
      y: putt.hole.y + distance * Math.sin(angle),
    };
    if (!sampleSurface(putt.surface, ball.x, ball.y, ground)) continue;
    return Place.from(
      { ...putt, ball },
      player,
      best ? { paces: WIDEST, first: false, wildest } : { paces: SENSIBLE_PACES, first: true, wildest },
    );
  }
  return undefined;
}

// The row being filled: compressed into an action at once.
let row = new Float64Array(0);

/** Play one pace; undefined when it has no line. @param player missing: the one the place was made for */
export function playOn(place: Place, grid: Grid, pace: number, player?: Player): Action | undefined {
  const places = grid.rings.length * grid.columns;
  if (row.length !== places) row = new Float64Array(places);
  row.fill(0);
  const total = place.play(pace, (share, x, y) => spreadOver(grid, share, x, y, row), player);
  if (total === undefined) return undefined;
  let count = 0;
  for (let i = 0; i < places; i++) if (row[i] > 0) count++;
  const to = new Int32Array(count);
  const share = new Float64Array(count);
  for (let i = 0, step = 0; i < places; i++) {
    if (!(row[i] > 0)) continue;
    to[step] = i;
    // What lies beyond the integration's reach is shared out, here as in the odds.
    share[step++] = row[i] / total;
  }
  return { pace, cost: 1, to, share };
}

const costOf = ({ cost, to, share }: Action, putts: Float64Array): number => {
  let sum = cost;
  for (let step = 0; step < to.length; step++) sum += share[step] * putts[to[step]];
  return sum;
};

/** All that was tried for a better pace; the best last. */
function search(place: Place, grid: Grid, putts: Float64Array, guess: number, finer: number): Action[] {
  const tried: Action[] = [];
  const ask = (pace: number): number => {
    const action = playOn(place, grid, pace);
    if (action === undefined) return Number.POSITIVE_INFINITY;
    tried.push(action);
    return costOf(action, putts);
  };
  const paceOf = (steps: number): number => guess * STEP ** steps;
  const stepsTo = (pace: number): number => Math.log(pace / guess) / Math.log(STEP);
  minimize((at) => ask(paceOf(at)), {
    start: Math.max(stepsTo(place.low), Math.min(stepsTo(place.high), 0)),
    step: 1 / finer,
    low: stepsTo(place.low),
    high: stepsTo(place.high),
    walks: 3 * finer,
    parabolas: finer,
  });
  return tried.sort((first, second) => costOf(second, putts) - costOf(first, putts));
}

/** The program of these actions, place by place. */
export function decisionsOf(actions: readonly (readonly Action[])[]): Decisions {
  const all = actions.flat();
  const firstAction = new Int32Array(actions.length + 1);
  actions.forEach((some, place) => {
    firstAction[place + 1] = firstAction[place] + some.length;
  });
  const firstStep = new Int32Array(all.length + 1);
  all.forEach(({ to }, action) => {
    firstStep[action + 1] = firstStep[action] + to.length;
  });
  const to = new Int32Array(firstStep[all.length]);
  const share = new Float64Array(firstStep[all.length]);
  all.forEach((action, i) => {
    to.set(action.to, firstStep[i]);
    share.set(action.share, firstStep[i]);
  });
  return { firstAction, cost: Float64Array.from(all, ({ cost }) => cost), firstStep, to, share };
}
