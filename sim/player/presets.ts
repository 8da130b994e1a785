/**
 * Players to begin with. Answers for: error sizes taken from published fits, each with its source. Leaves out: fitting a
 * player to holing tables or to a record (those replace these values, not this shape).
 *
 * The published fits know one angle error that includes reading. Where a preset splits it, the split is ours and says so.
 */
import type { Player, Preset } from '../types.ts';
import { degreesToRadians } from '../units.ts';

const player = (lineSdDeg: number, paceSd: number, readSd: number): Player => ({
  lineSd: degreesToRadians(lineSdDeg),
  paceSd,
  readSd,
  readBias: 0,
  paceBias: 0,
});

/** The first is the one a new visitor plays as. Ids are stable: settings and the command line keep them. */
export const PRESETS: readonly Preset[] = [
  {
    id: 'tour-like',
    name: 'Tour-like',
    source:
      'Angle 1.02 degrees and distance 8.0%: Gelman 2019, fitted to 1.25 million tour putts of 2016-18. Split by us into a start line of 0.8 degrees and a read of 12% of the break, which together make 1.02 degrees on a 10 ft putt that breaks 11 in.',
    player: player(0.8, 0.08, 0.12),
  },
  {
    id: 'tour-like-line-only',
    name: 'Tour-like, no read error',
    source:
      'Angle 1.02 degrees and distance 8.0% as published by Gelman 2019, all of the angle in the start line, none in the read.',
    player: player(1.02, 0.08, 0),
  },
  {
    id: 'low-handicap',
    name: 'Low handicap',
    source:
      'Distance 10.6%: Karlsen & Nilsson 2008, 43 players of handicap 2.8 over varied putts. Start line 1.0 degrees and read 20% of the break are our estimates, not a fit.',
    player: player(1.0, 0.106, 0.2),
  },
];
