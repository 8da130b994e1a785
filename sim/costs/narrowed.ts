/**
 * Who of a family it still may be, once something was measured: Bayes' rule over its members.
 *
 * Answers for: new weights after balls through a gate, balls to targets, slopes named; who is the middle one then; whether the family holds
 * anybody who measures so. Leaves out: members nobody thought of (a family is narrowed, never moved), what was measured by itself (measuring/).
 * Strays, as in section 5: one stroke or answer in a hundred has three times the usual error.
 */

import { normalCdf, normalDensity } from '../maths/normal.ts';
import type { Measured } from '../measuring/measured.ts';
import { spreadOf } from '../measuring/pace-control.ts';
import { gateAngle, startLine } from '../measuring/start-line.ts';
import { playerBy } from '../player/errors.ts';
import type { KnownPlayer, Measurement, Member, Sitting } from '../player/known.ts';
import type { Player } from '../types.ts';
import { momentsOf } from './likely.ts';

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

/**
 * A preset's player after sittings; as they are without any. The middle one starts from the preset's own, not from the mean of its family
 * (directions put it where it is, fitted.ts): what it stands off that mean goes with the variance that is left, as the mean of a normal
 * prior does, so that sittings that tell nothing move nothing, and one member left alone is the middle one.
 */
export function narrowedPlayer(
  { player, origin, members }: KnownPlayer,
  by: readonly Sitting[],
): KnownPlayer {
  if (origin.kind !== 'preset' || by.length === 0) return { player, origin, members };
  const left = narrowed(
    members,
    by.flatMap(({ results }) => results),
  );
  const middle = playerBy((error) => {
    const before = momentsOf(members, (one) => one[error]);
    const after = momentsOf(left, (one) => one[error]);
    const doubt = before.variance > 0 ? Math.min(1, after.variance / before.variance) : 1;
    return after.mean + doubt * (player[error] - before.mean);
  });
  return { player: middle, origin: { ...origin, narrowedBy: by }, members: left };
}

/** How many members it is as good as: 1/(sum of squared weights), 1 when one has all the weight. */
export const effectiveMembers = (members: readonly Member[]): number => {
  const all = members.reduce((sum, { weight }) => sum + weight, 0);
  return all ** 2 / members.reduce((sum, { weight }) => sum + weight ** 2, 0);
};

/** A spread measured that nobody of the family has. */
export interface Outside {
  readonly error: 'lineSd' | 'paceSd' | 'slopeSd';
  /** All of them have less of it, or more, than the 95% interval of what was measured holds. */
  readonly measured: 'larger' | 'smaller';
}

/** What was measured beyond everybody of the family: then the nearest of them stands for somebody else. */
export function outsideFamily(members: readonly Member[], results: readonly Measurement[]): Outside[] {
  const of = <Kind extends Measurement['kind']>(kind: Kind): Extract<Measurement, { kind: Kind }>[] =>
    results.filter((one): one is Extract<Measurement, { kind: Kind }> => one.kind === kind);
  const measured: readonly [Outside['error'], Pick<Measured, 'low' | 'high'> | undefined][] = [
    ['lineSd', startLine(of('gate').map(({ passed, ...gate }) => ({ ...gate, passes: passed })))],
    ['paceSd', spreadOf(of('ladder').flatMap(({ errors }) => errors))?.sd],
    [
      'slopeSd',
      spreadOf(of('readingSet').flatMap(({ slopes }) => slopes.map((one) => one.named - one.true)))?.sd,
    ],
  ];
  return measured.flatMap(([error, interval]): Outside[] => {
    if (interval === undefined) return [];
    const all = members.map(({ player }) => player[error]);
    if (interval.low > Math.max(...all)) return [{ error, measured: 'larger' }];
    return interval.high < Math.min(...all) ? [{ error, measured: 'smaller' }] : [];
  });
}
