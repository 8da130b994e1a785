/** What may be asked of the worker and what comes back. Plain data only: everything here crosses a thread. */
import type { Comparison, NextPutts, Player, Putt } from '../../sim/index.ts';

export interface Misses {
  /** x, y pairs, metres. */
  readonly rests: Float64Array;
  readonly holed: Uint8Array;
}

export type CaseName = 'slower' | 'faster' | 'gentler' | 'steeper';

/** One changed condition and what it does to the choice of pace. */
export interface SensitivityCase {
  readonly name: CaseName;
  /** Expected putts firm minus die, putts; above 0: die it in. undefined: a pace has no line there. */
  readonly difference: number | undefined;
  /** Aim offsets in that condition, m, positive left. */
  readonly dieAim: number | undefined;
  readonly firmAim: number | undefined;
}

export interface EngineWorker {
  compare(putt: Putt, paces: readonly number[], player: Player, nextPutts: NextPutts | undefined): Comparison;
  prepareNextPutts(putt: Putt, player: Player): NextPutts;
  sampleMisses(putt: Putt, pace: number, player: Player, count: number, seed: number): Misses;
  sensitivity(
    putt: Putt,
    diePace: number,
    firmPace: number,
    player: Player,
    progress: (share: number) => void,
  ): Promise<readonly SensitivityCase[]>;
  holedShare(putt: Putt, pace: number, player: Player, aimOffset: number | undefined): number;
}
