/**
 * Balls that share one read of the slope: how likely each of them drops, over all that may be seen.
 *
 * Answers for: the chances, given what was seen once, with how often that is. Leaves out: balls read anew (stroke-points.ts), zones.
 * A read is a slope along and one across, two independent normal numbers, on a lattice (trapezoid rule on a bell curve); given it all
 * balls are meant alike, and only the stroke errs.
 */
import { dropRegions } from '../odds/drop-region.ts';
import { normalDensity } from '../odds/normal.ts';
import { playOut } from '../odds/outcomes.ts';
import { COVERED, type Rests } from '../odds/rests.ts';
import { strokeErrors } from '../odds/stroke-errors.ts';
import { LineWalk } from '../read/line.ts';
import { Reading } from '../read/reading.ts';
import type { Player, Putt } from '../types.ts';

/** Slopes seen across are this far apart at most, rise over run: they turn the start by far less than its own error and the hole. */
const ACROSS = 0.0012;
/** A lattice on a bell curve reaches so far, SD, in steps of this at most. */
const FARTHEST = 4;
const APART = 0.5;

/** Points of a bell curve, `apart` SDs from one another. */
function pointsOf(sd: number, apart: number): { readonly value: number; readonly share: number }[] {
  if (sd === 0) return [{ value: 0, share: 1 }];
  const steps = Math.ceil(FARTHEST / apart);
  const scores = Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * apart);
  const total = scores.reduce((sum, z) => sum + normalDensity(z), 0);
  return scores.map((z) => ({ value: sd * z, share: normalDensity(z) / total }));
}

/** Where misses go when nobody asks. */
const NOWHERE: Rests = { ...COVERED, aim: () => undefined, at: () => undefined };
const UNHEARD = { aim: () => undefined, miss: () => undefined };

/**
 * @param pace m past the covered hole, above 0
 * @returns chance of holing under each read, with the share of reads that are so; undefined when this pace has no line
 */
export function holedByRead(
  putt: Putt,
  pace: number,
  player: Player,
): { readonly holed: number; readonly share: number }[] | undefined {
  const walk = new LineWalk(putt);
  const lines = walk.reason === undefined ? new Reading(putt, player).linesFor(pace) : undefined;
  if (lines === undefined) return undefined;
  const regions = dropRegions(walk);
  const across = pointsOf(player.slopeSd, Math.min(APART, ACROSS / player.slopeSd));
  const found = pointsOf(player.slopeSd, APART).flatMap((along) =>
    across.flatMap((aside) => {
      const meant = lines({ along: along.value, across: aside.value, speed: 1 });
      if (meant === undefined) return [];
      const { start, energy } = meant;
      const strokes = strokeErrors(
        [
          {
            share: 1,
            rarity: 0,
            energy,
            energyVariance: 0,
            energyThird: 0,
            sweep: start * energy,
            sweepVariance: 0,
            covariance: 0,
          },
        ],
        player,
      );
      return [{ holed: playOut(strokes, regions, NOWHERE, UNHEARD), share: along.share * aside.share }];
    }),
  );
  // Reads for which nothing would do are left out, as everywhere (odds/meant.ts).
  const total = found.reduce((sum, { share }) => sum + share, 0);
  return found.map(({ holed, share }) => ({ holed, share: share / total }));
}
