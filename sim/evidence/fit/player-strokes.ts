/**
 * How likely a player is to make a stroke on one ground: what they mean there (meant-lines.ts), misread and struck. Answers for:
 * the spread of energy, and of the start given the energy; chances of "as meant" given a stroke. Leaves out: what becomes of it.
 *
 * The order of odds/stroke-errors.ts: energy first, nearly normal; then the start at that energy. One curve where that has five:
 * on ground that breaks much the starts are a little skewed, which a fit does not see (tests: beside lines solved anew).
 * Strokes are asked for many at a time, and what was said of them in passes of its own: one stroke a call costs three times as much.
 */
import type { Player } from '../../types.ts';
import type { Ground } from './grounds.ts';
import {
  BY_ACROSS,
  BY_ALONG,
  BY_PACE,
  BY_SPEED,
  ENERGY,
  LINE_NUMBERS,
  ManyLines,
  type MeantLines,
  SWEEP,
} from './meant-lines.ts';
import { normalBelow } from './normal-below.ts';
import { Tails } from './tails.ts';
import {
  aimSd,
  breakShare,
  climbShare,
  type GroundWords,
  PACE_SPREAD,
  riseSd,
  type SpokenOf,
  slopeSdOf,
  slopeShare,
  wordsShare,
  yesOf,
} from './words.ts';

/** What the player calls "as meant": errors of the stroke alone up to these, radians and shares of the distance. */
export interface Bands {
  readonly start: number;
  readonly pace: number;
}

/** All that is unknown of one who records. */
export interface Someone {
  readonly player: Player;
  /** Pace meant where nothing was said, m past. */
  readonly usualPace: number;
  /** Degrees of freedom of the t. */
  readonly tails: number;
  /** Share of the rim rule's fastest drop that still drops. */
  readonly rim: number;
  /** How much of the misreading is in the words on the ground: 1 said as seen before the putt, 0 as the ball has shown it. */
  readonly saidAsSeen: number;
  readonly bands: Bands;
}

/** A ground and a pace: said, or undefined for the usual one. */
export interface Spot {
  readonly lines: MeantLines;
  readonly ground: Pick<Ground, 'rise' | 'across' | 'aimOffset' | 'aimByAcross'>;
  readonly pace: number | undefined;
}

/** Strokes in a row. */
export interface StrokeList {
  readonly count: number;
  /** Place in the list of spots. */
  readonly spot: Uint16Array;
  /** Radians from ball->hole to the high side; launch energy v^2, m^2/s^2. */
  readonly start: Float64Array;
  readonly energy: Float64Array;
  /** As said of ground high on the side of the word, and of ground high on the other: which holds, stroke by stroke. */
  readonly words: readonly (GroundWords | undefined)[];
  readonly ways: Uint8Array;
  readonly startedAsMeant: boolean | undefined;
  readonly paceAsMeant: boolean | undefined;
}

// Numbers kept of each spot: energy meant, its mean when struck, one over the SD when struck; what the energy struck tells of the energy
// meant, and what that leaves open (variance).
const MEANT = 0;
const STRUCK = 1;
const STRUCK_TIMES = 2;
const MEANT_BY = 3;
const MEANT_LEFT = 4;
// Sweep (start x energy) meant, by the energy meant, and what that leaves open.
const SWEEP_MEANT = 5;
const SWEEP_BY = 6;
const SWEEP_LEFT = 7;
// The ground as spoken of: rise, what the energy tells of it, SD left; covariances of the slope across with sweep and energy.
const RISE = 8;
const RISE_BY = 9;
const RISE_LEFT = 10;
const ACROSS_SWEEP = 11;
const ACROSS_ENERGY = 12;
// Slope across as spoken of, aim, what the slope across does to it, its SD left and in all; SD left of the slope.
const ACROSS = 13;
const AIM = 14;
const AIM_BY = 15;
const AIM_LEFT = 16;
const AIM_ALL = 17;
const SLOPE_LEFT = 18;
const NUMBERS = 19;
/** The energy meant is never taken for less than this share of its mean. */
const LEAST_MEANT = 0.1;
const LEAST = 1e-12;
const line = new Float64Array(LINE_NUMBERS);

/** The strokes of one player on many spots. */
export class PlayerStrokes {
  private readonly numbers: Float64Array;
  private readonly lines: ManyLines;
  private readonly tails = new Tails();
  private lineVariance = 0;
  private bands: Bands = { start: 0, pace: 0 };
  private saidAsSeen = 0;
  private riseSdOfAll = 1;
  private slopeSdOfAll = 1;
  private readonly spoken: SpokenOf = { rise: 0, riseSd: 1, slope: 0, slopeSd: 1, aim: 0, aimSd: 1 };
  // Of the strokes asked for last: density; energy off its mean, energy meant; start off its mean, its variance; the slope by it.
  private density = new Float64Array(0);
  private off = new Float64Array(0);
  private intended = new Float64Array(0);
  private aside = new Float64Array(0);
  private variance = new Float64Array(0);
  private byStart = new Float64Array(0);

  constructor(private readonly spots: readonly Spot[]) {
    this.numbers = new Float64Array(NUMBERS * spots.length);
    this.lines = new ManyLines(spots);
  }

  /** Whose strokes the next questions are of. */
  fill(someone: Someone): void {
    const { player, usualPace, tails, bands } = someone;
    const { numbers, spots, lines } = this;
    lines.of(player.readBias, usualPace);
    this.tails.set(tails);
    this.bands = bands;
    this.lineVariance = player.lineSd ** 2;
    const slope = player.slopeSd ** 2;
    const speed = player.speedSd ** 2;
    const pace = PACE_SPREAD ** 2;
    const times = 1 + player.paceBias;
    const { saidAsSeen } = someone;
    const seen = 1 + saidAsSeen * player.readBias;
    this.saidAsSeen = saidAsSeen;
    this.riseSdOfAll = riseSd(saidAsSeen * player.slopeSd);
    this.slopeSdOfAll = slopeSdOf(saidAsSeen * player.slopeSd);
    for (let k = 0; k < spots.length; k++) {
      const { ground } = spots[k];
      lines.at(k, line);
      const meant = Math.max(1e-3, line[ENERGY]);
      const variance =
        slope * (line[BY_ALONG] ** 2 + line[BY_ACROSS] ** 2) +
        speed * line[BY_SPEED] ** 2 +
        pace * line[BY_PACE] ** 2;
      const both =
        slope * (line[BY_ALONG] * line[BY_ALONG + 1] + line[BY_ACROSS] * line[BY_ACROSS + 1]) +
        speed * line[BY_SPEED] * line[BY_SPEED + 1] +
        pace * line[BY_PACE] * line[BY_PACE + 1];
      const sweepVariance =
        slope * (line[BY_ALONG + 1] ** 2 + line[BY_ACROSS + 1] ** 2) +
        speed * line[BY_SPEED + 1] ** 2 +
        pace * line[BY_PACE + 1] ** 2;
      const energyVariance =
        variance * (times ** 2 + player.paceSd ** 2) + (meant * player.paceSd) ** 2 + LEAST;
      const part = (variance * times) / energyVariance;
      const sweepSlope = both / (variance + LEAST);
      const at = NUMBERS * k;
      numbers[at + MEANT] = meant;
      numbers[at + STRUCK] = meant * times;
      numbers[at + STRUCK_TIMES] = Math.sqrt(1 / energyVariance);
      numbers[at + MEANT_BY] = part;
      numbers[at + MEANT_LEFT] = Math.max(0, variance - part * part * energyVariance);
      numbers[at + SWEEP_MEANT] = line[SWEEP];
      numbers[at + SWEEP_BY] = sweepSlope;
      numbers[at + SWEEP_LEFT] = Math.max(0, sweepVariance - sweepSlope * both);
      const along = (slope * line[BY_ALONG] * times) / energyVariance;
      numbers[at + RISE] = seen * ground.rise;
      numbers[at + RISE_BY] = saidAsSeen * along;
      numbers[at + RISE_LEFT] = riseSd(
        saidAsSeen * Math.sqrt(Math.max(0, slope - along * slope * line[BY_ALONG] * times)),
      );
      numbers[at + ACROSS_SWEEP] = slope * line[BY_ACROSS + 1];
      numbers[at + ACROSS_ENERGY] = slope * line[BY_ACROSS];
      const mid = line[SWEEP] / meant;
      const plain =
        this.lineVariance +
        (numbers[at + SWEEP_LEFT] + (sweepSlope - mid) ** 2 * numbers[at + MEANT_LEFT]) / (meant * meant);
      const cov = (numbers[at + ACROSS_SWEEP] - mid * numbers[at + ACROSS_ENERGY]) / meant;
      const left = Math.sqrt(Math.max(0, slope - (cov * cov) / plain));
      numbers[at + ACROSS] = seen * ground.across;
      numbers[at + AIM] = ground.aimOffset + ground.aimByAcross * (seen - 1) * ground.across;
      numbers[at + AIM_BY] = saidAsSeen * ground.aimByAcross;
      numbers[at + AIM_LEFT] = aimSd(saidAsSeen * ground.aimByAcross * left);
      numbers[at + AIM_ALL] = aimSd(saidAsSeen * ground.aimByAcross * player.slopeSd);
      numbers[at + SLOPE_LEFT] = slopeSdOf(saidAsSeen * left);
    }
  }

  /** Chance of words on the ground there, whatever the stroke. */
  words(spot: number, words: GroundWords): number {
    const { numbers, spoken } = this;
    const at = NUMBERS * spot;
    spoken.rise = numbers[at + RISE];
    spoken.riseSd = this.riseSdOfAll;
    spoken.slope = Math.sqrt(numbers[at + RISE] ** 2 + numbers[at + ACROSS] ** 2);
    spoken.slopeSd = this.slopeSdOfAll;
    spoken.aim = numbers[at + AIM];
    spoken.aimSd = numbers[at + AIM_ALL];
    return wordsShare(words, spoken);
  }

  /**
   * Densities of strokes, per radian and m^2/s^2, times the chances of what was said: words on the ground, "as meant".
   * @returns good until the next question
   */
  densities(strokes: StrokeList): Float64Array {
    if (this.density.length < strokes.count)
      for (const kept of ['density', 'off', 'intended', 'aside', 'variance', 'byStart'] as const)
        this[kept] = new Float64Array(strokes.count);
    this.strike(strokes);
    this.hearClimb(strokes);
    this.hearBreak(strokes);
    this.hearSlope(strokes);
    if (strokes.startedAsMeant !== undefined) this.hearStart(strokes, strokes.startedAsMeant);
    if (strokes.paceAsMeant !== undefined) this.hearPace(strokes, strokes.paceAsMeant);
    return this.density;
  }

  private strike({ count, spot, start, energy }: StrokeList): void {
    const { numbers, tails, lineVariance, density, off, intended, aside, variance, byStart } = this;
    for (let i = 0; i < count; i++) {
      const at = NUMBERS * spot[i];
      const meant = numbers[at + MEANT];
      const away = energy[i] - numbers[at + STRUCK];
      const aimed = Math.max(LEAST_MEANT * meant, meant + numbers[at + MEANT_BY] * away);
      const sweepBy = numbers[at + SWEEP_BY];
      const middle = (numbers[at + SWEEP_MEANT] + sweepBy * (aimed - meant)) / aimed;
      const byEnergy = sweepBy - middle;
      const spread =
        lineVariance +
        (numbers[at + SWEEP_LEFT] + byEnergy * byEnergy * numbers[at + MEANT_LEFT]) / (aimed * aimed);
      const beside = start[i] - middle;
      const share = beside / spread;
      const far = away * numbers[at + STRUCK_TIMES];
      off[i] = away;
      intended[i] = aimed;
      aside[i] = beside;
      variance[i] = spread;
      byStart[i] = ((numbers[at + ACROSS_SWEEP] - middle * numbers[at + ACROSS_ENERGY]) / aimed) * share;
      density[i] = (tails.of(far * far + beside * share) * numbers[at + STRUCK_TIMES]) / Math.sqrt(spread);
    }
  }

  // Words are of the slope seen, and a stroke tells something of that.

  private hearClimb({ count, spot, words }: StrokeList): void {
    const word = words[0]?.climb ?? words[1]?.climb;
    if (word === undefined) return;
    const { numbers, density, off } = this;
    for (let i = 0; i < count; i++) {
      const at = NUMBERS * spot[i];
      density[i] *= climbShare(
        word,
        numbers[at + RISE] + numbers[at + RISE_BY] * off[i],
        numbers[at + RISE_LEFT],
      );
    }
  }

  private hearBreak({ count, spot, words, ways }: StrokeList): void {
    const ofWays = [words[0]?.breaks, words[1]?.breaks];
    if (ofWays[0] === undefined && ofWays[1] === undefined) return;
    const { numbers, density, byStart } = this;
    for (let i = 0; i < count; i++) {
      const word = ofWays[ways[i]];
      if (word === undefined) continue;
      const at = NUMBERS * spot[i];
      density[i] *= breakShare(
        word,
        numbers[at + AIM] + numbers[at + AIM_BY] * byStart[i],
        numbers[at + AIM_LEFT],
      );
    }
  }

  private hearSlope({ count, spot, words }: StrokeList): void {
    const word = words[0]?.slopeFelt ?? words[1]?.slopeFelt;
    if (word === undefined) return;
    const { numbers, density, off, byStart, saidAsSeen } = this;
    for (let i = 0; i < count; i++) {
      const at = NUMBERS * spot[i];
      const rise = numbers[at + RISE] + numbers[at + RISE_BY] * off[i];
      const across = numbers[at + ACROSS] + saidAsSeen * byStart[i];
      density[i] *= slopeShare(word, Math.sqrt(rise * rise + across * across), numbers[at + SLOPE_LEFT]);
    }
  }

  private hearStart({ count }: StrokeList, answer: boolean): void {
    const { density, lineVariance, aside, variance } = this;
    const { start: band } = this.bands;
    for (let i = 0; i < count; i++) {
      const share = lineVariance / variance[i];
      const own = share * aside[i];
      const spread = Math.sqrt(lineVariance * (1 - share)) + LEAST;
      const yes = yesOf(normalBelow((band - own) / spread) - normalBelow((-band - own) / spread));
      density[i] *= answer ? yes : 1 - yes;
    }
  }

  private hearPace({ count, spot, energy }: StrokeList, answer: boolean): void {
    const { density, numbers, intended } = this;
    const { pace: band } = this.bands;
    for (let i = 0; i < count; i++) {
      const own = energy[i] / intended[i] - 1;
      const left = Math.sqrt(numbers[NUMBERS * spot[i] + MEANT_LEFT]);
      const spread = (left * energy[i]) / (intended[i] * intended[i]) + LEAST;
      const yes = yesOf(normalBelow((band - own) / spread) - normalBelow((-band - own) / spread));
      density[i] *= answer ? yes : 1 - yes;
    }
  }
}
