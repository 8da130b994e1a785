/**
 * Players to begin with. Answers for: names, and in a sentence or two where each comes from. Leaves out: the numbers
 * (fitted.ts), players of other handicaps (handicap.ts).
 */
import type { Preset } from '../types.ts';
import { FITTED_PLAYERS, playerOf } from './fitted.ts';
import { playerOfHandicap } from './handicap.ts';
import type { PublishedPlayer } from './published.ts';

/** The preset fitted to each record. */
export const RECORD_PRESETS: Readonly<Record<PublishedPlayer, string>> = {
  tour: 'tour',
  scratch: 'scratch',
  averaging90: 'averaging-90',
};

const HELD = 'Reading is held at 60% of the direction error (Karlsen & Nilsson 2008).';
const SINGLE_DIGIT = playerOfHandicap(6);

/** The first is the one the command line takes unasked. Ids are stable: settings and the command line keep them. */
export const PRESETS: readonly Preset[] = [
  {
    id: RECORD_PRESETS.tour,
    name: 'Tour',
    source: `Start line and pace fitted to 22 distances of tour putts of 2016-18 (Broadie, in Gelman 2019) and to three-putts and mean putts (Broadie 2014, most from memory). ${HELD}`,
    player: FITTED_PLAYERS.tour,
  },
  {
    id: RECORD_PRESETS.scratch,
    name: 'Scratch',
    source: `Start line fitted to five one-putt figures (Broadie, second-hand), which tell too little of the pace error: that is put between the tour's and the one of golfers averaging 90, by handicap. ${HELD}`,
    player: FITTED_PLAYERS.scratch,
  },
  {
    id: 'handicap-6',
    name: 'Handicap 6',
    source: SINGLE_DIGIT.source,
    player: SINGLE_DIGIT.player,
  },
  {
    id: RECORD_PRESETS.averaging90,
    name: 'Averaging 90',
    source: `Start line and pace fitted to five one-putt figures (Broadie, second-hand), five three-putt figures (from memory) and 17% short from 10 ft (amateurs, Broadie 2020). ${HELD}`,
    player: FITTED_PLAYERS.averaging90,
  },
];

/** Presets of before: found by id, no longer offered. */
export const EARLIER_PRESETS: readonly Preset[] = [
  {
    id: 'tour-like',
    name: 'Tour-like',
    source:
      'Angle 1.02 degrees and distance 8.0%: Gelman 2019, fitted to 1.25 million tour putts of 2016-18. Split by us into a start line of 0.8 degrees and a read of 12% of the break, which together make 1.02 degrees on a 10 ft putt that breaks 11 in.',
    player: playerOf(0.8, 0.08, 0.12),
  },
  {
    id: 'tour-like-line-only',
    name: 'Tour-like, no read error',
    source:
      'Angle 1.02 degrees and distance 8.0% as published by Gelman 2019, all of the angle in the start line, none in the read.',
    player: playerOf(1.02, 0.08, 0),
  },
  {
    id: 'low-handicap',
    name: 'Low handicap',
    source:
      'Distance 10.6%: Karlsen & Nilsson 2008, 43 players of handicap 2.8 over varied putts. Start line 1.0 degrees and read 20% of the break are our estimates, not a fit.',
    player: playerOf(1.0, 0.106, 0.2),
  },
];

/** The preset of that id, earlier ones included; undefined when there never was one. */
export const presetOf = (id: string): Preset | undefined =>
  PRESETS.find((preset) => preset.id === id) ?? EARLIER_PRESETS.find((preset) => preset.id === id);
