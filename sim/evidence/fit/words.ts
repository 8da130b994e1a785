/**
 * What a player means by the words of the recording form, as chances: how likely a word is, given what the ground was or the ball
 * did. Answers for: thresholds, how surely people see which side of them something lies, and slips of the finger. Leaves out:
 * where putts lie (grounds.ts), what becomes of a stroke (strokes.ts).
 *
 * No word is taken at its word: every threshold is soft by what people misjudge, and every word may be a slip. All sizes here
 * are ours (common practice, no source) unless they say otherwise; a player with other habits of speech is answered for as far
 * as the softness reaches.
 */
import { HOLE_RADIUS } from '../../constants.ts';
import type { BreakWay, Climb } from '../../types.ts';
import { degreesToRadians, inchesToMetres } from '../../units.ts';
import type { MissReach, MissSide, PaceMeant, SlopeFelt } from '../record.ts';
import { normalBelow } from './normal-below.ts';

/**
 * Rise per metre below which a putt counts as level (as in training/question.ts), and how far off that is seen, 1 SD, beside what was
 * misread.
 */
const LEVEL = 0.005;
const LEVEL_SD = 0.003;
/** Aimed inside the hole counts as straight, m; how far off that is seen, 1 SD. */
const STRAIGHT = HOLE_RADIUS;
const STRAIGHT_SD = 0.025;
/** Where gentle ends and steep begins (the latter as in training/question.ts), rise over run; seen to, 1 SD. */
const GENTLE = 0.01;
const STEEP = 0.02;
const SLOPE_SD = 0.003;
/** A ball that went over the hole, or died in line with it, missed on line, m beside the middle; seen to, m, 1 SD. */
const ON_LINE = HOLE_RADIUS;
const SIDE_SD = 0.03;
/** How far from pin-high short and past are told apart, m, 1 SD. */
const REACH_SD = 0.06;
/**
 * A leave as written down against what it was: 1 SD, m and share of it. Lists of lengths to tap step by a tenth to a fifth, and
 * who paces says one, two or three feet. A bell, not an interval:
 * what one player rounds to inches another rounds to feet, and no number is ruled out at a border nobody keeps.
 */
const LEAVE_SD = 0.04;
const LEAVE_SHARE_SD = 0.1;
/** Beyond so many SD a leave does not match. */
const LEAVE_REACH = 3.5;
/** Share of words that are slips: any of the others, whatever was seen. */
const SLIP = 0.02;
/** Share of "as meant?" answers that are wrong: nobody sees half a degree at the start for certain. */
const WRONG_ANSWER = 0.1;

/** Paces meant, m past the hole: 6 in, the 17 in of Pelz (second-hand; 12 to 18 in common practice) and 30 in. */
const PACES: Readonly<Record<PaceMeant, number>> = {
  die: inchesToMetres(6),
  normal: inchesToMetres(17),
  firm: inchesToMetres(30),
};
export const paceOf = (said: PaceMeant): number => PACES[said];
/** Paces meant by one word, and by no word, lie about that pace by this share of it, 1 SD (ours): nobody means 17.0 inches. */
export const PACE_SPREAD = 0.15;
/**
 * Where nothing was said: one pace that the player usually means, unknown, log-normal about "normal": from 6 to 48 in at 1.7 SD. Asked
 * once, it is known to a fifth.
 */
export const USUAL_PACE = PACES.normal;
export const USUAL_PACE_SPREAD = 0.6;
export const ASKED_PACE_SPREAD = 0.2;

/**
 * Errors of the stroke alone, 1 SD of nobody: within which a player says that it was as meant. What each player calls so is not
 * known; it is one more unknown about these middles, log-normal with BAND_SPREAD (prior.ts).
 */
export const START_BAND = degreesToRadians(1);
export const PACE_BAND = 0.1;
export const BAND_SPREAD = 0.5;
/** Chance of "yes" when the share `inside` of such strokes lies within the band. */
export const yesOf = (inside: number): number => WRONG_ANSWER + (1 - 2 * WRONG_ANSWER) * inside;

const slipping = (share: number, words: number): number => SLIP / words + (1 - SLIP) * share;

/**
 * Words on a putt's ground. A word that it breaks may be true of ground that is high on that side, or be said of ground
 * high on the other one.
 */
export interface GroundWords {
  readonly climb: Climb | undefined;
  readonly slopeFelt: SlopeFelt | undefined;
  readonly breaks: BreakWord | undefined;
}
export type BreakWord = 'straight' | 'highSide' | 'lowSide';
export const NO_WORDS: GroundWords = { climb: undefined, slopeFelt: undefined, breaks: undefined };

/** How exactly a word tells what it is said of, 1 SD: what is judged, and what was misread on top. */
export const riseSd = (misread: number): number => Math.sqrt(LEVEL_SD ** 2 + misread * misread);
export const slopeSdOf = (misread: number): number => Math.sqrt(SLOPE_SD ** 2 + misread * misread);
export const aimSd = (misread: number): number => Math.sqrt(STRAIGHT_SD ** 2 + misread * misread);

/** The ground as it is spoken of: rise to the hole per metre, slope, aim beside the hole to the high side (m), each with its SD. */
export interface SpokenOf {
  rise: number;
  riseSd: number;
  slope: number;
  slopeSd: number;
  aim: number;
  aimSd: number;
}

/** Chance of a word for climb where the ground rises so much per metre, seen to `sd`. */
export function climbShare(word: Climb, rise: number, sd: number): number {
  const up = normalBelow((rise - LEVEL) / sd);
  if (word === 'up') return slipping(up, 3);
  const down = normalBelow((-rise - LEVEL) / sd);
  return slipping(word === 'down' ? down : 1 - up - down, 3);
}

/** Chance of a word for the break where the line is aimed so far beside the hole, to the high side, m. */
export function breakShare(word: BreakWord, aim: number, sd: number): number {
  const high = normalBelow((aim - STRAIGHT) / sd);
  if (word === 'highSide') return slipping(high, 3);
  const low = normalBelow((-aim - STRAIGHT) / sd);
  return slipping(word === 'lowSide' ? low : 1 - high - low, 3);
}

/** Chance of a word for the steepness of such a slope, rise over run. */
export function slopeShare(word: SlopeFelt, slope: number, sd: number): number {
  const gentle = normalBelow((GENTLE - slope) / sd);
  if (word === 'gentle') return slipping(gentle, 3);
  const steep = normalBelow((slope - STEEP) / sd);
  return slipping(word === 'steep' ? steep : 1 - gentle - steep, 3);
}

/** Chance that these words are said of such ground; what was not said asks for nothing. */
export function wordsShare({ climb, breaks, slopeFelt }: GroundWords, of: SpokenOf): number {
  let share = 1;
  if (climb !== undefined) share *= climbShare(climb, of.rise, of.riseSd);
  if (breaks !== undefined) share *= breakShare(breaks, of.aim, of.aimSd);
  if (slopeFelt !== undefined) share *= slopeShare(slopeFelt, of.slope, of.slopeSd);
  return share;
}

/** What was written of a miss. Fields left out were not. */
export interface WrittenMiss {
  /**
   * Chances of having said the word for a ball that was plainly high, plainly low, on line. `around`: half-width of "on line", m;
   * 0 where the form knows only high and low.
   */
  readonly side?: {
    readonly high: number;
    readonly low: number;
    readonly online: number;
    readonly around: number;
  };
  readonly reach?: MissReach;
  /** m */
  readonly leave?: number;
}

/**
 * A side as tapped in a round. Left and right of a putt whose break was not said may each be the high side.
 * @param turned the ground is high on the other side than the word says
 */
export function writtenSide(
  side: MissSide,
  breaks: BreakWay | undefined,
  turned = false,
): NonNullable<WrittenMiss['side']> {
  const around = ON_LINE;
  if (side === 'online') return { high: 0, low: 0, online: 1, around };
  if (side === 'left' || side === 'right') {
    if (breaks === undefined || breaks === 'straight') return { high: 0.5, low: 0.5, online: 0, around };
    // Left to right: it is aimed left, and left is high.
    const high = ((side === 'left') === (breaks === 'leftToRight')) !== turned ? 1 : 0;
    return { high, low: 1 - high, online: 0, around };
  }
  const high = (side === 'high') !== turned ? 1 : 0;
  return { high, low: 1 - high, online: 0, around };
}
/** A side as counted in practice: high or low, nothing between. */
export const countedSide = (side: 'high' | 'low'): NonNullable<WrittenMiss['side']> => ({
  high: side === 'high' ? 1 : 0,
  low: side === 'low' ? 1 : 0,
  online: 0,
  around: 0,
});

/** How a miss that lies so would be written down. */
export interface MissChance {
  /** Where the chance is not 0: leaves between these, m. */
  readonly nearest: number;
  readonly farthest: number;
  /**
   * @param beside m, positive high: where it passed the hole, or where it lies beside the line to it when short
   * @param along m past the hole along the line from the ball, negative short
   * @param leave m
   */
  of(beside: number, along: number, leave: number): number;
}

export function missChance({ side, reach, leave }: WrittenMiss): MissChance {
  const words = side !== undefined && side.around > 0 ? 3 : 2;
  return {
    nearest: leave === undefined ? 0 : (leave - LEAVE_REACH * LEAVE_SD) / (1 + LEAVE_REACH * LEAVE_SHARE_SD),
    farthest:
      leave === undefined
        ? Number.POSITIVE_INFINITY
        : (leave + LEAVE_REACH * LEAVE_SD) / (1 - LEAVE_REACH * LEAVE_SHARE_SD),
    of(beside, along, left) {
      let chance = 1;
      if (leave !== undefined) {
        // By what it was, not by what was written: a density over what may be written.
        const sd = Math.hypot(LEAVE_SD, LEAVE_SHARE_SD * left);
        chance = Math.exp(-(((left - leave) / sd) ** 2) / 2) / sd;
      }
      if (reach !== undefined) {
        const short = normalBelow(-along / REACH_SD);
        chance *= slipping(reach === 'short' ? short : 1 - short, 2);
      }
      if (side !== undefined) {
        const high = normalBelow((beside - side.around) / SIDE_SD);
        const low = normalBelow((-beside - side.around) / SIDE_SD);
        const said = side.high * high + side.low * low + side.online * (1 - high - low);
        chance *= slipping(said, words);
      }
      return chance;
    },
  };
}
