/**
 * Balls that share one read of the slope: how likely each of them drops, over all that may be seen.
 *
 * Answers for: the chances, given what was seen once, with how often that is. Leaves out: balls read anew (stroke-points.ts), zones.
 * A read is a slope along and one across, two independent normal numbers, on a lattice (trapezoid rule on a bell curve); given it all
 * balls are meant alike, and only the stroke errs.
 */

import { APART, normalPoints } from '../maths/normal.ts';
import { dropRegions } from '../odds/drop-region.ts';
import { asMeant } from '../odds/meant.ts';
import { holedOf } from '../odds/outcomes.ts';
import { strokeErrors } from '../odds/stroke-errors.ts';
import { LineWalk } from '../read/line.ts';
import { Reading } from '../read/reading.ts';
import type { Player, Putt } from '../types.ts';

/** Slopes seen across are this far apart at most, rise over run: they turn the start by far less than its own error and the hole. */
const ACROSS = 0.0012;

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
  const { slopeSd } = player;
  const alongs = normalPoints(slopeSd);
  const across = ACROSS < slopeSd * APART ? normalPoints(slopeSd, ACROSS / slopeSd) : alongs;
  const found = alongs.flatMap((along) =>
    across.flatMap((aside) => {
      const meant = lines({ along: along.value, across: aside.value, speed: 1 });
      if (meant === undefined) return [];
      const holed = holedOf(strokeErrors([asMeant(meant)], player), regions);
      return [{ holed, share: along.share * aside.share }];
    }),
  );
  // Reads for which nothing would do are left out, as everywhere (odds/meant.ts).
  const total = found.reduce((sum, { share }) => sum + share, 0);
  return found.map(({ holed, share }) => ({ holed, share: share / total }));
}
