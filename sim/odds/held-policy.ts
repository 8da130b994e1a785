/**
 * Holing out by other players who keep one player's choices of pace and aim: a table of next putts in a tenth of the time on a plane, in a
 * fifth on a field, for asking what a slightly other player would need.
 *
 * The choices are the best for the player they were found for; for one who differs by d they cost about d^2 too much, because at the
 * least of a smooth function its slope is nothing (the envelope theorem); who differs much also tries a softer and a firmer pace. Habits
 * do not count: who has missed allows for them.
 * Leaves out: how the choices are found (holing-out.ts, next-putts.ts).
 */

import { policyIteration } from '../maths/dynamic-program.ts';
import { withoutHabits } from '../player/habits.ts';
import type { Player, Putt } from '../types.ts';
import {
  type Action,
  decisionsOf,
  type HoleOut,
  type HoleOutOptions,
  holeOut,
  playOn,
} from './holing-out.ts';
import { outcomesOf } from './next-putts.ts';
import { type NextPutts, tableOf } from './polar-table.ts';

/** One player's choices from everywhere round the hole. Not plain data: it keeps what was worked out of every place. */
export interface HeldPolicy {
  readonly putt: Putt;
  readonly player: Player;
  readonly program: Pick<HoleOut, 'grid' | 'places'>;
  /** Place by place. */
  readonly chosen: readonly Action[];
}

/**
 * @param putt its ball does not matter
 * @param options.among on a field the others who will keep the choices: nobody else can be asked there
 */
export function holdPolicy(
  putt: Putt,
  player: Player,
  options: Pick<HoleOutOptions, 'onProgress' | 'among'> = {},
): HeldPolicy {
  const { grid, places, actions, decisions, sensible } = holeOut(putt, player, options);
  const { policy } = policyIteration(decisions, sensible);
  return {
    putt,
    player,
    program: { grid, places },
    chosen: Array.from(policy, (action) => actions[action]),
  };
}

/** Errors apart by more than this ratio are not slightly apart. */
const APART = 1.25;
/** Paces tried beside the one kept where they are, as ratios to it. */
const ASIDE = [1 / 1.6, 1.6] as const;

/** One of two paces beside the one kept may be better by more than a hair: some spread is far off. */
export function isFarFrom(first: Player, player: Player): boolean {
  const spreads = ({ lineSd, paceSd, slopeSd, speedSd }: Player): number[] => [
    lineSd,
    paceSd,
    slopeSd,
    speedSd,
  ];
  const [before, after] = [spreads(first), spreads(player)];
  return before.some((one, i) => Math.max(one, after[i]) > APART * Math.min(one, after[i]));
}

/** Paces in the place of the one kept, m past, for a player near or far: itself, or itself and one to either side. */
export const pacesAbout = (kept: number, far: boolean): readonly number[] =>
  far ? [kept, ...ASIDE.map((ratio) => ratio * kept)] : [kept];

/** What holing out takes this player; one far off chooses between the paces kept and some about them. */
export function tableUnder({ putt, player: first, program, chosen }: HeldPolicy, other: Player): NextPutts {
  const { grid, places } = program;
  const player = withoutHabits(other);
  const far = isFarFrom(first, player);
  const tried = chosen.map((action, i): Action[] => {
    const place = places[i];
    // Nothing is played where nobody misses, and where nothing has a line.
    if (place === undefined || action.to.length === 0) return [action];
    const actions = pacesAbout(action.pace, far).flatMap((pace): Action[] => {
      const held = Math.max(place.low, Math.min(place.high, pace));
      const played = playOn(place, grid, held, player);
      return played === undefined ? [] : [played];
    });
    return actions.length > 0 ? actions : [action];
  });
  const decisions = decisionsOf(tried);
  const { policy } = policyIteration(decisions);
  return tableOf(putt.hole, grid, outcomesOf({ actions: tried.flat(), decisions }, policy));
}

/**
 * Tables of next putts of any of some players by the middle one's choices, each made when first asked for. They serve every place of the
 * ball, and on a plane of the hole.
 * @param options.among whoever will be asked for
 */
export function heldTables(
  putt: Putt,
  middle: Player,
  options: Pick<HoleOutOptions, 'onProgress' | 'among'>,
): (player: Player) => NextPutts {
  let held: HeldPolicy | undefined;
  const known = new Map<string, NextPutts>();
  return (player) => {
    held ??= holdPolicy(putt, middle, options);
    // Who has missed allows for habits: players who differ in those alone share a table.
    const key = JSON.stringify(withoutHabits(player));
    const table = known.get(key) ?? tableUnder(held, player);
    known.set(key, table);
    return table;
  };
}
