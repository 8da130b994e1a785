/**
 * What a miss costs from wherever it stops: putts still needed from everywhere round the hole, by the best pace.
 *
 * The program of holing-out.ts, solved. Depends on surface, green speed, hole, capture and player, not on the ball; on a plane
 * not on where the hole is either. Leaves out: the grid and its look-up (polar-table.ts).
 */

import { evaluatePolicy, policyIteration } from '../maths/dynamic-program.ts';
import type { Player, Putt } from '../types.ts';
import { type HoleOut, type HoleOutOptions, holeOut } from './holing-out.ts';
import { type Coarse, type NextPutts, tableOf } from './polar-table.ts';

export type NextPuttsOptions = HoleOutOptions;

/**
 * The table of one green, hole and player.
 * @param putt its ball does not matter
 */
export function prepareNextPutts(putt: Putt, player: Player, options: NextPuttsOptions = {}): NextPutts {
  const program = holeOut(putt, player, options);
  const policy =
    options.policy === 'fixed'
      ? program.sensible
      : policyIteration(program.decisions, program.sensible).policy;
  return tableOf(putt.hole, program.grid, outcomesOf(program, policy));
}

/** What a policy comes to: putts, and the chance of each count, one putt after another. */
export function outcomesOf(
  { actions, decisions }: Pick<HoleOut, 'actions' | 'decisions'>,
  policy: Int32Array,
): Coarse {
  /** Chance of being `then` after one putt of the policy. */
  const after = (then: Float64Array): Float64Array =>
    Float64Array.from(policy, (action) => {
      const { to, share } = actions[action];
      let sum = 0;
      for (let step = 0; step < to.length; step++) sum += share[step] * then[to[step]];
      return sum;
    });
  const chosen = Array.from(policy, (action) => actions[action]);
  const missed = Float64Array.from(chosen, ({ cost, share }) =>
    cost > 1 ? 1 : share.reduce((sum, one) => sum + one, 0),
  );
  const two = after(missed.map((share) => 1 - share));
  // Where nothing has a line, three putts are taken for certain.
  const three = after(two).map((share, place) => (chosen[place].cost > 1 ? 1 : share));
  return {
    missed,
    expected: evaluatePolicy(decisions, policy),
    two,
    three,
    pace: Float64Array.from(chosen, ({ pace }) => pace),
  };
}
