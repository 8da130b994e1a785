/**
 * Players to begin with. Answers for: names, and in a sentence or two where each comes from. Leaves out: the numbers
 * (fitted.ts), players of other handicaps (handicap.ts).
 */

import { normalDensity } from '../maths/normal.ts';
import type { Preset } from '../types.ts';
import { LOG_SPREAD } from './errors.ts';
import { FITTED_FAMILIES, FITTED_PLAYERS } from './fitted.ts';
import { playerOfHandicap } from './handicap.ts';
import { AS_GOOD_AS_NOBODY, type Member } from './known.ts';
import type { PublishedPlayer } from './published.ts';

/** The preset fitted to each record. */
export const RECORD_PRESETS: Readonly<Record<PublishedPlayer, string>> = {
  tour: 'tour',
  scratch: 'scratch',
  averaging90: 'averaging-90',
};

const HELD =
  'How much of that is misread slope follows the tour by direction (Broadie 2019, 2020) and the spread of distance of good players (Karlsen & Nilsson 2008).';
const SINGLE_DIGIT = playerOfHandicap(6);

/** The first is the one the command line takes unasked. Ids are stable: settings and the command line keep them. */
export const PRESETS: readonly Preset[] = [
  {
    id: RECORD_PRESETS.tour,
    name: 'Tour',
    source: `Start line, pace and misread slope fitted to 22 distances of tour putts of 2016-18 (Broadie, in Gelman 2019), to three-putts and mean putts (Broadie 2014, most from memory), and to uphill beside downhill and what is left on 3% (Broadie 2019, 2020). The error in green speed is held.`,
    player: FITTED_PLAYERS.tour,
    family: FITTED_FAMILIES.tour,
  },
  {
    id: RECORD_PRESETS.scratch,
    name: 'Scratch',
    source: `Start line fitted to five one-putt figures (Broadie, second-hand), which tell too little of the rest: that is put between the tour's and that of golfers averaging 90, by handicap. ${HELD}`,
    player: FITTED_PLAYERS.scratch,
    family: FITTED_FAMILIES.scratch,
  },
  {
    id: 'handicap-6',
    name: 'Handicap 6',
    source: SINGLE_DIGIT.source,
    player: SINGLE_DIGIT.player,
    family: SINGLE_DIGIT.family,
  },
  {
    id: RECORD_PRESETS.averaging90,
    name: 'Averaging 90',
    source: `Start line and pace fitted to five one-putt figures (Broadie, second-hand), five three-putt figures (from memory) and 17% short from 10 ft (amateurs, Broadie 2020). ${HELD}`,
    player: FITTED_PLAYERS.averaging90,
    family: FITTED_FAMILIES.averaging90,
  },
];

/** Presets of before, found by id, no longer offered: who chose one gets the present preset that holes most like it. */
const EARLIER: Readonly<Record<string, string>> = {
  'tour-like': RECORD_PRESETS.tour,
  'tour-like-line-only': RECORD_PRESETS.tour,
  'low-handicap': RECORD_PRESETS.scratch,
};

/** Ids that lead to one of today's presets. */
export const EARLIER_IDS: readonly string[] = Object.keys(EARLIER);

/** The preset of that id, or the one that stands for an earlier id; undefined when there never was one. */
export const presetOf = (id: string): Preset | undefined =>
  PRESETS.find((preset) => preset.id === (EARLIER[id] ?? id));

/**
 * A preset and its family, from mostly stroke to mostly reading, each as likely as their slope error is beside the preset's, as golfers
 * differ. By distance they are alike; published records by direction put the slope error where the preset has it (MODEL.md, section 3). Who
 * hardly misreads a slope is left out for as good as nobody: such golfers would hole more downhill than uphill, which no record knows.
 */
export function familyOf({ player: middle, family }: Preset): Member[] {
  const weighed = [...family, middle]
    .map((player) => ({
      player,
      weight: normalDensity(Math.log(player.slopeSd / middle.slopeSd) / LOG_SPREAD),
    }))
    .sort((one, other) => one.player.slopeSd - other.player.slopeSd);
  const sumOf = (members: readonly Member[]): number => members.reduce((sum, { weight }) => sum + weight, 0);
  const likely = weighed.filter(({ weight }) => weight > AS_GOOD_AS_NOBODY * sumOf(weighed));
  return likely.map(({ player, weight }) => ({ player, weight: weight / sumOf(likely) }));
}
