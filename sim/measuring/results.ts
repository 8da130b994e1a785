/**
 * What was measured, as plain data that can be kept: the entries as they were made, so that a better model can work them out
 * anew, and what was made of them. Days as the player's own calendar says (YYYY-MM-DD). Lengths in metres, angles in radians.
 * Leaves out: where they are kept.
 */
import type { MeasuredSpeed } from './green-speed.ts';
import type { LevelFall, LevelPair, LevelSlope } from './level.ts';
import type { PaceControl, PaceRoll } from './pace-control.ts';
import type { RampRoll, TimedRoll } from './rolls.ts';
import type { GateRun, StartLine } from './start-line.ts';
import type { StepLength, Walk } from './step-length.ts';

export type MeasuredGreen = { readonly day: string; readonly ground: 'grass' | 'carpet' } & (
  | { readonly by: 'timedRolls'; readonly rolls: readonly TimedRoll[]; readonly result: MeasuredSpeed }
  | {
      readonly by: 'rampRolls';
      readonly height: number;
      readonly rolls: readonly RampRoll[];
      readonly result: MeasuredSpeed;
    }
  | { readonly by: 'level'; readonly pairs: readonly LevelPair[]; readonly result: LevelSlope }
  | {
      readonly by: 'levelBothWays';
      readonly forwards: readonly LevelPair[];
      readonly left: readonly LevelPair[];
      readonly result: LevelFall;
    }
);

export type MeasuredPlayer = { readonly day: string } & (
  | { readonly by: 'paceRolls'; readonly rolls: readonly PaceRoll[]; readonly result: PaceControl }
  | { readonly by: 'gates'; readonly gates: readonly GateRun[]; readonly result: StartLine }
  | { readonly by: 'walks'; readonly walks: readonly Walk[]; readonly result: StepLength }
);
