/**
 * How likely a player is to make a stroke on one ground: what they mean there (meant-lines.ts), misread and struck. Answers for:
 * the spread of energy, and of the start given the energy; chances of "as meant" given a stroke. Leaves out: what becomes of it.
 *
 * The order of odds/stroke-errors.ts: energy first, nearly normal; then the start at that energy. One curve where that has five:
 * on ground that breaks much the starts are a little skewed, which a fit does not see (tests: beside lines solved anew).
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
  type PacedLines,
  SWEEP,
} from './meant-lines.ts';
import { normalBelow } from './normal-below.ts';
import { Tails } from './tails.ts';
import {
  aimSd,
  type GroundWords,
  PACE_SPREAD,
  riseSd,
  type SpokenOf,
  slopeSdOf,
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
  readonly lines: PacedLines;
  readonly ground: Pick<Ground, 'rise' | 'across' | 'aimOffset' | 'aimByAcross'>;
  readonly pace: number | undefined;
}

/** Numbers kept of each spot. */
const NUMBERS = 21;
/** The energy meant is never taken for less than this share of its mean. */
const LEAST_MEANT = 0.1;
const LEAST = 1e-12;
const line = new Float64Array(LINE_NUMBERS);

/** The strokes of one player on many spots. */
export class PlayerStrokes {
  private numbers = new Float64Array(0);
  private readonly tails = new Tails();
  private lineVariance = 0;
  private bands: Bands = { start: 0, pace: 0 };
  private saidAsSeen = 0;
  private riseSdOfAll = 1;
  private slopeSdOfAll = 1;
  private readonly spoken: SpokenOf = { rise: 0, riseSd: 1, slope: 0, slopeSd: 1, aim: 0, aimSd: 1 };

  fill(spots: readonly Spot[], someone: Someone): void {
    const { player, usualPace, tails, bands } = someone;
    if (this.numbers.length < NUMBERS * spots.length) this.numbers = new Float64Array(NUMBERS * spots.length);
    const { numbers } = this;
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
      const { ground, lines, pace: said } = spots[k];
      lines.at(player.readBias, said ?? usualPace, line);
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
      numbers[at] = meant;
      numbers[at + 1] = meant * times;
      numbers[at + 2] = 1 / energyVariance;
      numbers[at + 3] = part;
      numbers[at + 4] = Math.max(0, variance - part * part * energyVariance);
      numbers[at + 5] = line[SWEEP];
      numbers[at + 6] = sweepSlope;
      numbers[at + 7] = Math.max(0, sweepVariance - sweepSlope * both);
      numbers[at + 8] = Math.sqrt(1 / energyVariance);
      // What the energy tells of the slope seen along, and how far off that leaves it; the start likewise of the slope across.
      const along = (slope * line[BY_ALONG] * times) / energyVariance;
      numbers[at + 9] = saidAsSeen * along;
      numbers[at + 10] = riseSd(
        saidAsSeen * Math.sqrt(Math.max(0, slope - along * slope * line[BY_ALONG] * times)),
      );
      numbers[at + 11] = slope * line[BY_ACROSS + 1];
      numbers[at + 12] = slope * line[BY_ACROSS];
      const mid = line[SWEEP] / meant;
      const plain =
        this.lineVariance + (numbers[at + 7] + (sweepSlope - mid) ** 2 * numbers[at + 4]) / (meant * meant);
      const cov = (numbers[at + 11] - mid * numbers[at + 12]) / meant;
      const left = Math.sqrt(Math.max(0, slope - (cov * cov) / plain));
      numbers[at + 13] = seen * ground.rise;
      numbers[at + 14] = seen * ground.across;
      numbers[at + 15] = ground.aimOffset + ground.aimByAcross * (seen - 1) * ground.across;
      numbers[at + 16] = saidAsSeen * ground.aimByAcross;
      numbers[at + 17] = aimSd(saidAsSeen * ground.aimByAcross * left);
      numbers[at + 18] = aimSd(saidAsSeen * ground.aimByAcross * player.slopeSd);
      numbers[at + 19] = slopeSdOf(saidAsSeen * left);
    }
  }

  /** Chance of words on the ground there, whatever the stroke. */
  words(spot: number, words: GroundWords): number {
    const { numbers, spoken } = this;
    const at = NUMBERS * spot;
    spoken.rise = numbers[at + 13];
    spoken.riseSd = this.riseSdOfAll;
    spoken.slope = Math.sqrt(numbers[at + 13] ** 2 + numbers[at + 14] ** 2);
    spoken.slopeSd = this.slopeSdOfAll;
    spoken.aim = numbers[at + 15];
    spoken.aimSd = numbers[at + 18];
    return wordsShare(words, spoken);
  }

  /** Density at a stroke, per radian and m^2/s^2, times the chances of what was said: words on the ground, "as meant". */
  at(
    spot: number,
    start: number,
    energy: number,
    words?: GroundWords,
    started?: boolean,
    paced?: boolean,
  ): number {
    const { numbers } = this;
    const at = NUMBERS * spot;
    const meant = numbers[at];
    const off = energy - numbers[at + 1];
    const then = Math.max(LEAST_MEANT * meant, meant + numbers[at + 3] * off);
    const sweepSlope = numbers[at + 6];
    const middle = (numbers[at + 5] + sweepSlope * (then - meant)) / then;
    const byEnergy = sweepSlope - middle;
    const left = numbers[at + 4];
    const variance = this.lineVariance + (numbers[at + 7] + byEnergy * byEnergy * left) / (then * then);
    const aside = start - middle;
    const square = off * off * numbers[at + 2] + (aside * aside) / variance;
    let density = (this.tails.of(square) * numbers[at + 8]) / Math.sqrt(variance);
    if (words !== undefined) {
      // What this stroke tells of the slope seen: the words are of that slope.
      const { spoken } = this;
      const across = ((numbers[at + 11] - middle * numbers[at + 12]) / then / variance) * aside;
      spoken.rise = numbers[at + 13] + numbers[at + 9] * off;
      spoken.riseSd = numbers[at + 10];
      spoken.aim = numbers[at + 15] + numbers[at + 16] * across;
      spoken.aimSd = numbers[at + 17];
      if (words.slopeFelt !== undefined) {
        const aslant = numbers[at + 14] + this.saidAsSeen * across;
        spoken.slope = Math.sqrt(spoken.rise * spoken.rise + aslant * aslant);
        spoken.slopeSd = numbers[at + 19];
      }
      density *= wordsShare(words, spoken);
    }
    if (started !== undefined) {
      const share = this.lineVariance / variance;
      const spread = Math.sqrt(this.lineVariance * (1 - share)) + LEAST;
      const own = share * aside;
      const { start: band } = this.bands;
      const yes = yesOf(normalBelow((band - own) / spread) - normalBelow((-band - own) / spread));
      density *= started ? yes : 1 - yes;
    }
    if (paced !== undefined) {
      const own = energy / then - 1;
      const spread = (Math.sqrt(left) * energy) / (then * then) + LEAST;
      const { pace: band } = this.bands;
      const yes = yesOf(normalBelow((band - own) / spread) - normalBelow((-band - own) / spread));
      density *= paced ? yes : 1 - yes;
    }
    return density;
  }
}
