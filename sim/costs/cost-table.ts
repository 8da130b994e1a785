/**
 * What each step saves a player on a putt of each length: the costly part of "what does it cost me", as plain data.
 *
 * Answers for: putts needed now and after each step, for every likely player; the same for dying it in and for firm. Leaves out: how many
 * putts of each length a round has (round-costs.ts), words.
 * The middle player, and he after each step, are played outright. The other likely players differ from him by a surrogate
 * (surrogate.ts), a few of whom are played too, to say how far it is off.
 */

import { PLAIN_PACE } from '../benchmarks/best-paces.ts';
import { CLUB_MIX, type Mix } from '../benchmarks/mix.ts';
import { PLAYER_ERRORS } from '../player/errors.ts';
import type { Member } from '../player/known.ts';
import type { CaptureName, Player } from '../types.ts';
import { type FirmerRow, firmerRows } from './firmer.ts';
import {
  bestAt,
  EXPECTED,
  type Ground,
  LENGTHS,
  MISSED,
  playGround,
  prepareGround,
  THREE_PUTT,
  usualAt,
} from './ground.ts';
import { axesOf, meanOf, spreadOut } from './likely.ts';
import { afterStep, STEPS, type StepId } from './steps.ts';
import { playersFor, type Surrogate, surrogateOf } from './surrogate.ts';

export interface CostOptions {
  /** Pace of first putts by habit, m past; missing: 17 in, the published figure for all putts. */
  readonly usual?: number;
  /** Whose green speeds, the middle of which is played; missing: a club's. Its slopes are always 0.5 to 3%. */
  readonly mix?: Pick<Mix, 'greenSpeeds'>;
  readonly capture?: CaptureName;
  /** Called with the share done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
}

/** The middle player from one length, at the usual pace, mean over slopes and directions. */
export interface CostRow {
  /** m */
  readonly length: number;
  readonly holed: number;
  readonly threePutt: number;
  readonly expectedPutts: number;
}

/** Plain data, may cross threads. Rows of numbers: player by player, LENGTHS within each. */
export interface CostTable {
  readonly middle: Player;
  /** m past, and Stimpmeter reading, m. */
  readonly usual: number;
  readonly greenSpeed: number;
  readonly lengths: readonly number[];
  readonly rows: readonly CostRow[];
  /** Of the likely players. */
  readonly weights: Float64Array;
  /** Putts needed. */
  readonly now: Float64Array;
  /** Putts saved by each step. */
  readonly saved: Readonly<Record<StepId, Float64Array>>;
  /** Likely players played outright beside the surrogate, and the largest difference in putts from any length; undefined: no surrogate. */
  readonly checked: { readonly players: number; readonly worst: number } | undefined;
  readonly firmer: readonly FirmerRow[];
}

/** Players by whom the surrogate is checked. */
const CHECKS = 3;
/** Share of the progress told that belongs to preparing, against one player played (measured: about 14 to 1). */
const PREPARING = 14;

/** @param likely at least one, of some weight */
export function costTable(likely: readonly Member[], options: CostOptions = {}): CostTable {
  let table: CostTable | undefined;
  for (table of costTables(likely, options));
  if (table === undefined) throw new Error('no table');
  return table;
}

/**
 * The table of the middle player alone, then, where there are several, of all.
 * @param likely at least one, of some weight
 */
export function* costTables(
  likely: readonly Member[],
  options: CostOptions = {},
): Generator<CostTable, void> {
  const { usual = PLAIN_PACE, mix = CLUB_MIX, capture, onProgress } = options;
  const players = likely.filter(({ weight }) => weight > 0);
  if (players.length === 0) throw new Error('Got no likely player of any weight, expected at least one.');
  const middle = meanOf(players);
  const axes = axesOf(players);
  const greenSpeed = (mix.greenSpeeds[0] + mix.greenSpeeds[1]) / 2;

  const checks = axes.length === 0 ? [] : spreadOut(players, CHECKS);
  const turns = STEPS.length + (axes.length === 0 ? 0 : playersFor(axes.length) + checks.length);
  const all = PREPARING + turns;
  const ground = prepareGround({
    player: middle,
    usual,
    greenSpeed,
    ...(capture && { capture }),
    onProgress: (share) => onProgress?.((share * PREPARING) / all),
  });
  const play = playOnce(ground, (count) => onProgress?.(Math.min(1, (PREPARING + count) / all)));

  const now = play(middle);
  const saves = STEPS.map((step) => {
    const then = play(afterStep(middle, step), step !== 'bestPace');
    const expected = step === 'bestPace' ? bestAt : usualAt;
    return LENGTHS.map((_, i) => now[usualAt(i) + EXPECTED] - then[expected(i) + EXPECTED]);
  });
  const middleOnly: Costed = { middle, usual, greenSpeed, now, saves };
  yield tableFor(middleOnly, [{ player: middle, weight: 1 }]);
  if (axes.length === 0) {
    onProgress?.(1);
    return;
  }
  const surrogate = surrogateOf(middle, axes, (player) => play(player));
  const worst = checks.reduce((most, player) => {
    const outright = play(player, true);
    return LENGTHS.reduce((top, _, i) => {
      const at = usualAt(i) + EXPECTED;
      return Math.max(top, Math.abs(outright[at] - surrogate.valueAt(player, at)));
    }, most);
  }, 0);
  onProgress?.(1);
  yield tableFor({ ...middleOnly, surrogate, checked: { players: checks.length, worst } }, players);
}

/** What the middle player makes of the ground, now and after each step, and what stands for the others. */
interface Costed extends Pick<CostTable, 'middle' | 'usual' | 'greenSpeed'> {
  readonly now: Float64Array;
  /** Step by step, length by length. */
  readonly saves: readonly (readonly number[])[];
  readonly surrogate?: Surrogate;
  readonly checked?: CostTable['checked'];
}

function tableFor(
  { middle, usual, greenSpeed, now, saves, surrogate, checked }: Costed,
  players: readonly Member[],
): CostTable {
  // One player: nothing to be put in between.
  const puttsOf = (player: Player, at: number): number =>
    surrogate === undefined ? now[at] : surrogate.valueAt(player, at);
  const count = LENGTHS.length;
  const putts = new Float64Array(players.length * count);
  const saved = Object.fromEntries(
    STEPS.map((step) => [step, new Float64Array(players.length * count)]),
  ) as Record<StepId, Float64Array>;
  players.forEach(({ player }, p) => {
    for (let i = 0; i < count; i++) {
      const at = usualAt(i) + EXPECTED;
      putts[p * count + i] = puttsOf(player, at);
      STEPS.forEach((step, s) => {
        saved[step][p * count + i] =
          surrogate === undefined ? saves[s][i] : savedBy({ step, player, i, outright: saves[s][i] });
      });
    }
  });

  /** As the middle player saves, but for what the surrogate says this one saves more or less. */
  function savedBy(asked: {
    readonly step: StepId;
    readonly player: Player;
    readonly i: number;
    readonly outright: number;
  }): number {
    const { step, player, i, outright } = asked;
    const then = afterStep(player, step);
    if (then === player && step !== 'bestPace') return 0;
    const from = usualAt(i) + EXPECTED;
    const to = (step === 'bestPace' ? bestAt(i) : usualAt(i)) + EXPECTED;
    const here = puttsOf(player, from) - puttsOf(then, to);
    const there = puttsOf(middle, from) - puttsOf(afterStep(middle, step), to);
    return outright + here - there;
  }

  return {
    middle,
    usual,
    greenSpeed,
    lengths: LENGTHS,
    rows: LENGTHS.map((length, i) => ({
      length,
      holed: 1 - now[usualAt(i) + MISSED],
      threePutt: now[usualAt(i) + THREE_PUTT],
      expectedPutts: now[usualAt(i) + EXPECTED],
    })),
    weights: Float64Array.from(players, ({ weight }) => weight),
    now: putts,
    saved,
    checked,
    firmer: firmerRows({ middle: now, usual, players, puttsOf }),
  };
}

/** Plays each player once, and tells how many have been. */
function playOnce(
  ground: Ground,
  tell: (count: number) => void,
): (player: Player, usualOnly?: boolean) => Float64Array {
  const known = new Map<string, Float64Array>();
  return (player, usualOnly = false) => {
    const same = PLAYER_ERRORS.map((error) => player[error]).join(' ');
    // Whoever has been played at all paces has been at the usual one.
    const key = usualOnly && !known.has(same) ? `${same} usual` : same;
    const row = known.get(key) ?? playGround(ground, player, usualOnly);
    known.set(key, row);
    tell(known.size);
    return row;
  };
}
