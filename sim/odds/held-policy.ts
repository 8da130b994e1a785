/**
 * Holing out on a plane by other players who keep one player's choices of pace and aim: a table of next putts in a twentieth of the
 * time, for asking what a slightly other player would need.
 *
 * The choices are the best for the player they were found for; for one who differs by d they cost about d^2 too much, because at the
 * least of a smooth function its slope is nothing (the envelope theorem). A habit is known to its player: pace and aim are corrected for
 * each player's own (Place.paceFor, Place.correction), the rest is kept.
 * Leaves out: how the choices are found (holing-out.ts, next-putts.ts). On other ground rests reach only as far as the first player's.
 */
import type { Player, Putt } from '../types.ts';
import { policyIteration } from './dynamic-program.ts';
import { type Action, decisionsOf, type HoleOut, holeOut, playOn } from './holing-out.ts';
import { outcomesOf } from './next-putts.ts';
import { type NextPutts, tableOf } from './polar-table.ts';

/** One player's choices from everywhere round the hole of a plane. Not plain data: it keeps what was worked out of every place. */
export interface HeldPolicy {
  readonly putt: Putt;
  readonly player: Player;
  readonly program: Pick<HoleOut, 'grid' | 'places'>;
  /** Place by place. */
  readonly chosen: readonly Action[];
}

/** @param putt on a plane; its ball does not matter */
export function holdPolicy(putt: Putt, player: Player, onProgress?: (share: number) => void): HeldPolicy {
  if (putt.surface.kind !== 'plane')
    throw new Error(`Got a ${putt.surface.kind}, expected a plane: elsewhere make a table for every player.`);
  const { grid, places, actions, decisions, sensible } = holeOut(putt, player, { onProgress });
  const { policy } = policyIteration(decisions, sensible);
  return {
    putt,
    player,
    program: { grid, places },
    chosen: Array.from(policy, (action) => actions[action]),
  };
}

/** What holing out takes this player. */
export function tableUnder({ putt, player: first, program, chosen }: HeldPolicy, player: Player): NextPutts {
  const { grid, places } = program;
  const actions = chosen.map((action, i): Action => {
    const place = places[i];
    // Nothing is played where nobody misses, and where nothing has a line.
    if (place === undefined || action.to.length === 0) return action;
    const pace = place.paceFor(action.pace, first, player);
    const aimShift = action.aimShift - place.correction(action.pace, first) + place.correction(pace, player);
    return playOn(place, grid, { pace, aimShift, player }) ?? action;
  });
  const decisions = decisionsOf(actions.map((action) => [action]));
  const policy = Int32Array.from(actions, (_, i) => i);
  return tableOf(putt.hole, grid, outcomesOf({ actions, decisions }, policy));
}
