/**
 * Who of a family it still may be, once something was measured: Bayes' rule over its members.
 *
 * Answers for: new weights after balls through a gate, balls to targets, slopes named. Leaves out: members nobody thought of (a family
 * is narrowed, never moved), what the measurement says by itself (measuring/).
 * Strays, as in section 5: one stroke or answer in a hundred has three times the usual error.
 */
import { gateAngle } from '../measuring/start-line.ts';
import { normalCdf, normalDensity } from '../odds/normal.ts';
import type { Member } from '../player/known.ts';
import type { Player } from '../types.ts';

export type Measurement =
  | {
      /** Balls through one gate, aimed through its middle on a known line. */
      readonly kind: 'gate';
      /** Between the inner sides, and ball to gate, m. */
      readonly width: number;
      readonly distance: number;
      readonly passed: number;
      readonly tries: number;
    }
  | {
      /** Balls to targets on known ground: how far beyond, share of the distance meant. */
      readonly kind: 'ladder';
      readonly errors: readonly number[];
    }
  | {
      /** Slopes named, along the line or across it, beside the true ones, rise over run. */
      readonly kind: 'readingSet';
      readonly slopes: readonly { readonly named: number; readonly true: number }[];
    };

const STRAY = { share: 0.01, times: 3 } as const;
/** Nobody is steadier than this: a line in radians, a pace as a share, a slope as rise over run. */
const LEAST = 1e-4;

/** Over the usual errors and the strays. @param of the chance, or density, at a spread so many times as large */
const withStrays = (of: (times: number) => number): number =>
  (1 - STRAY.share) * of(1) + STRAY.share * of(STRAY.times);

function normalLog(errors: readonly number[], mean: number, spread: number): number {
  const sd = Math.max(LEAST, spread);
  return errors.reduce(
    (sum, error) =>
      sum +
      Math.log(
        withStrays((times) => normalDensity((error - mean) / (times * sd)) / (times * sd)) + Number.MIN_VALUE,
      ),
    0,
  );
}

/** Logarithm of the chance of what was measured, but for what is the same for all players. */
export function logLikelihood(player: Player, result: Measurement): number {
  if (result.kind === 'gate') {
    const angle = gateAngle(result);
    const sd = Math.max(LEAST, player.lineSd);
    const missed = withStrays((times) => 2 * normalCdf(-angle / (times * sd)));
    const { passed, tries } = result;
    return passed * Math.log1p(-missed) + (tries - passed) * Math.log(missed + Number.MIN_VALUE);
  }
  if (result.kind === 'ladder') return normalLog(result.errors, player.paceBias, player.paceSd);
  const { readBias, slopeSd } = player;
  return normalLog(
    result.slopes.map(({ named, true: slope }) => named - (1 + readBias) * slope),
    0,
    slopeSd,
  );
}

/** The same members, weighed by what was measured; weights make one. @throws RangeError for a count that cannot be */
export function narrowed(members: readonly Member[], results: readonly Measurement[]): Member[] {
  for (const result of results)
    if (result.kind === 'gate' && !(result.passed >= 0 && result.passed <= result.tries))
      throw new RangeError(
        `Got ${result.passed} balls through the gate of ${result.tries}; expected 0 to ${result.tries}. Count again.`,
      );
  const logs = members.map(({ player, weight }) =>
    results.reduce((sum, result) => sum + logLikelihood(player, result), Math.log(weight)),
  );
  const most = Math.max(...logs);
  const raw = logs.map((log) => Math.exp(log - most));
  const all = raw.reduce((sum, one) => sum + one, 0);
  return members.map(({ player }, i) => ({ player, weight: raw[i] / all }));
}
