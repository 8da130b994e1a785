/**
 * A quadratic in the errors that stands for playing the ground by each of many likely players.
 *
 * Answers for: which players are played to make it, and its values in between. Leaves out: what is played (ground.ts), how far it is off (checked in cost-table.ts by
 * playing some players outright).
 * Along each error that varies three players are played: the middle one and one to either side; for each two errors one more, aside
 * in both. That is as many as the quadratic has coefficients, and it passes through all of them.
 */
import type { Player } from '../types.ts';

/** An error that varies, and how far to either side of the middle it is played: below < 0 < above. */
export interface Axis {
  readonly error: keyof Player;
  readonly below: number;
  readonly above: number;
}

export interface Surrogate {
  /** @param at which entry of the row */
  valueAt(player: Player, at: number): number;
}

/** How many players a surrogate of so many axes plays. */
export const playersFor = (axes: number): number => ((axes + 1) * (axes + 2)) / 2;

/**
 * @param middle the player about whom
 * @param play a row of numbers for each player, always as long
 */
export function surrogateOf(
  middle: Player,
  axes: readonly Axis[],
  play: (player: Player) => Float64Array,
): Surrogate {
  const zero = play(middle);
  const moved = (steps: readonly (readonly [Axis, number])[]): Player => {
    const player: Record<keyof Player, number> = { ...middle };
    for (const [{ error }, by] of steps) player[error] += by;
    return player;
  };
  // f = f0 + slope t + bend t^2 through both sides.
  const along = axes.map((axis) => {
    const { below, above } = axis;
    const first = play(moved([[axis, below]]));
    const second = play(moved([[axis, above]]));
    const slope = new Float64Array(zero.length);
    const bend = new Float64Array(zero.length);
    for (let i = 0; i < zero.length; i++) {
      const low = (first[i] - zero[i]) / below;
      const high = (second[i] - zero[i]) / above;
      bend[i] = (high - low) / (above - below);
      slope[i] = low - bend[i] * below;
    }
    return { slope, bend };
  });
  /** The farther side: nearer the middle of what is asked when the two are unequal. */
  const sideOf = ({ below, above }: Axis): number => (-below > above ? below : above);
  const crossed = axes.map((one, i) =>
    axes.slice(i + 1).map((other, k) => {
      const [s, t] = [sideOf(one), sideOf(other)];
      const there = play(
        moved([
          [one, s],
          [other, t],
        ]),
      );
      const [a, b] = [along[i], along[i + 1 + k]];
      return there.map(
        (value, at) =>
          (value - zero[at] - (a.slope[at] + a.bend[at] * s) * s - (b.slope[at] + b.bend[at] * t) * t) /
          (s * t),
      );
    }),
  );
  return {
    valueAt(player, at) {
      const by = axes.map(({ error }) => player[error] - middle[error]);
      let sum = zero[at];
      for (let i = 0; i < axes.length; i++) {
        sum += (along[i].slope[at] + along[i].bend[at] * by[i]) * by[i];
        for (let j = i + 1; j < axes.length; j++) sum += crossed[i][j - i - 1][at] * by[i] * by[j];
      }
      return sum;
    },
  };
}
