/**
 * What was measured, as plain data that can be kept: the entries as they were made, so that a better model can work them out
 * anew, and what was made of them. Days as the player's own calendar says (YYYY-MM-DD). Lengths in metres, angles in radians.
 * Answers for: the shapes, and what a player's measurements say of their strokes to the fit of their errors and to a preset's family. Leaves out: where they are kept.
 */
import type { MeasuredStrokes } from '../evidence/fit/measured-strokes.ts';
import type { Measurement } from '../player/known.ts';
import type { MeasuredSpeed } from './green-speed.ts';
import type { LevelFall, LevelPair, LevelSlope } from './level.ts';
import type { PaceControl, PaceRoll } from './pace-control.ts';
import type { RampRoll, TimedRoll } from './rolls.ts';
import { type GateRun, gateAngle, type StartLine } from './start-line.ts';
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

/**
 * The strokes among a player's measurements, for `fitErrors`. Balls all to one distance stay out: it is a task done better than ever
 * new distances (Karlsen & Nilsson 2008, abstract read: 6.8% beside 10.6%), and putts on a course are those.
 */
export const strokesOfMeasured = (measured: readonly MeasuredPlayer[]): MeasuredStrokes => ({
  gates: measured.flatMap((one) =>
    one.by === 'gates'
      ? one.gates.map((gate) => ({ angle: gateAngle(gate), passes: gate.passes, tries: gate.tries }))
      : [],
  ),
  paces: measured.flatMap((one) =>
    one.by === 'paceRolls' && !one.result.oneTarget ? one.rolls.map(({ target, past }) => past / target) : [],
  ),
});

/** The same for narrowing a family (costs/narrowed.ts); nothing of balls all to one distance, as above. */
export function narrowingResults(measured: MeasuredPlayer): Measurement[] {
  if (measured.by === 'gates')
    return measured.gates.map(({ passes, ...gate }) => ({ kind: 'gate', ...gate, passed: passes }));
  if (measured.by !== 'paceRolls' || measured.result.oneTarget) return [];
  return [{ kind: 'ladder', errors: measured.rolls.map(({ target, past }) => past / target) }];
}
