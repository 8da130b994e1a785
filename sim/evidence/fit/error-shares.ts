/**
 * A player's strokes on a grid of errors: what share of them starts so far off, and rolls so much too far. Answers for: the grid,
 * the shares of a player on it, and of those strokes that he calls "as meant" or not. Leaves out: what becomes of them
 * (strokes.ts).
 *
 * The error of the start is counted from the true line, to the high side, and depends on how far the line is aimed from the
 * hole (readBias and readSd act on that): so there is a row of shares for each of a number of aims, and a putt between two
 * takes its part of both. The error of the pace is a share of the energy and hence of the distance, whatever the putt.
 * Spread, bias and read are those of MODEL.md section 3; the two normal errors are joined in the measure in which the read's
 * is normal, shares of the break, where the line's is nearly so (tests: beside the exact density of odds/start-errors.ts).
 */
import type { Player } from '../../types.ts';
import { degreesToRadians } from '../../units.ts';
import { normalBelow } from './normal-below.ts';
import { yesOf } from './words.ts';

/** Edges on both sides of 0: `fine` equal steps, then steps each `growth` times the one before, until past `end`. */
function edgesOf(step: number, fine: number, growth: number, end: number): Float64Array {
  const edges: number[] = [];
  let at = 0;
  let width = step;
  while (at < end) {
    if (edges.length >= fine) width *= growth;
    at += width;
    edges.push(at);
  }
  return Float64Array.from([...edges.map((edge) => -edge).reverse(), 0, ...edges]);
}

/** Starts: three tenths of a degree out to two, then wider; paces: three hundredths out to a fifth. */
const START_STEP = degreesToRadians(0.3);
const PACE_STEP = 0.03;
export const START_EDGES = edgesOf(START_STEP, 7, 1.18, degreesToRadians(35));
export const PACE_EDGES = edgesOf(PACE_STEP, 7, 1.25, 0.7);
export const STARTS = START_EDGES.length - 1;
export const PACES = PACE_EDGES.length - 1;
const middlesOf = (edges: Float64Array): Float64Array =>
  Float64Array.from({ length: edges.length - 1 }, (_, i) => (edges[i] + edges[i + 1]) / 2);
const START_MIDDLES = middlesOf(START_EDGES);
const PACE_MIDDLES = middlesOf(PACE_EDGES);

/** True start angles for which rows of shares are kept, radians: from one to the next by 0.3 of it; a putt between two is spread by 1% too much. */
export const AIMS = Float64Array.from([0, 0.4, ...Array.from({ length: 17 }, (_, i) => 0.8 * 1.3 ** i)]).map(
  degreesToRadians,
);

/** The two aims about one, and the part of the second. */
export function aimsAbout(aim: number): { first: number; part: number } {
  let first = 0;
  while (first < AIMS.length - 2 && AIMS[first + 1] <= aim) first++;
  const part = (aim - AIMS[first]) / (AIMS[first + 1] - AIMS[first]);
  return { first, part: Math.max(0, Math.min(1, part)) };
}

/** How "as meant?" was answered: not at all, yes, no. Which table of shares a record asks for. */
export const UNASKED = 0;
export const YES = 1;
export const NO = 2;
export type Answer = typeof UNASKED | typeof YES | typeof NO;

/** What the player calls "as meant": errors of the stroke alone up to these, radians and shares of the distance. */
export interface Bands {
  readonly start: number;
  readonly pace: number;
}

/** Shares by answer; starts aim by aim, cells fastest. */
export interface ErrorShares {
  readonly starts: readonly Float64Array[];
  readonly paces: readonly Float64Array[];
}

export const newErrorShares = (): ErrorShares => ({
  starts: [UNASKED, YES, NO].map(() => new Float64Array(AIMS.length * STARTS)),
  paces: [UNASKED, YES, NO].map(() => new Float64Array(PACES)),
});

/** A start farther off than this says nothing any more, radians: the tangent has no end there. */
const FARTHEST = degreesToRadians(85);
/** Least spread, so that nothing is divided by 0: a thousandth of a degree, of the break and of the distance. */
const LEAST = 1e-5;

/** Width of an even spread, SD. */
const EVEN = Math.sqrt(12);

/**
 * Pace errors within a cell lie as those of a player with this spread do, share: taken as even, they put 5 to 10% too many balls far past.
 * About the spread of single-digit players.
 */
export const USUAL_PACE = 0.1;

/**
 * Cells widen a bell curve twice: a sum over their middles by h^2/12 (Sheppard 1898), and the spread within them by as much again. Where
 * they lie within as on a bell of SD `usual`, what is left is a part 1 - (sd/usual)^2 of that. So much is taken off
 * beforehand, from no curve more than half its SD. Derived.
 */
const narrowed = (sd: number, step: number, usual = Number.POSITIVE_INFINITY): number =>
  Math.sqrt(Math.max(sd * sd - ((step * step) / 6) * (1 - (sd / usual) ** 2), (sd * sd) / 4));

/** Fills `out` for one player. @param asked whether any record gives answers, for start and pace: without, theirs are left alone */
export function fillShares(
  player: Player,
  bands: Bands,
  asked: { readonly start: boolean; readonly pace: boolean },
  out: ErrorShares,
): void {
  const [all, yes, no] = out.starts;
  const lineSd = Math.max(LEAST, player.lineSd);
  const seen = 1 + player.readBias;
  for (let a = 0; a < AIMS.length; a++) {
    const sine = Math.sin(AIMS[a]);
    const cosine = Math.cos(AIMS[a]);
    // d/dm atan2(m sine, cosine) where the player aims on average.
    const turn = (sine * cosine) / (cosine * cosine + (seen * sine) ** 2);
    const readAngle = turn * player.readSd;
    const sd = Math.hypot(lineSd, readAngle);
    const cellwise = narrowed(sd, START_STEP);
    const middle = Math.atan2(seen * sine, cosine) - AIMS[a];
    let below = 0;
    for (let i = 0; i <= STARTS; i++) {
      const angle = Math.max(-FARTHEST, Math.min(FARTHEST, AIMS[a] + START_EDGES[i]));
      // Straight putts have no break to count in; there the two measures are one.
      const off = turn > LEAST ? ((Math.tan(angle) * cosine) / sine - seen) * turn : START_EDGES[i] - middle;
      const upTo = normalBelow(off / cellwise);
      if (i > 0) all[a * STARTS + i - 1] = upTo - below;
      below = upTo;
    }
    if (!asked.start) continue;
    // Of strokes that start so far off, the line's own error is normal about its part of that.
    const lineOnly = (lineSd * readAngle) / sd + LEAST;
    const part = (lineSd / sd) ** 2;
    for (let i = 0; i < STARTS; i++) {
      const line = part * (START_MIDDLES[i] - middle);
      // With what lies within the cell itself.
      const spread = Math.hypot(lineOnly, (part * (START_EDGES[i + 1] - START_EDGES[i])) / EVEN);
      const inside = normalBelow((bands.start - line) / spread) - normalBelow((-bands.start - line) / spread);
      const said = yesOf(inside);
      yes[a * STARTS + i] = said * all[a * STARTS + i];
      no[a * STARTS + i] = (1 - said) * all[a * STARTS + i];
    }
  }
  const [paces, paceYes, paceNo] = out.paces;
  const paceSd = narrowed(Math.max(LEAST, player.paceSd), PACE_STEP, USUAL_PACE);
  let below = 0;
  for (let j = 0; j <= PACES; j++) {
    const upTo = normalBelow((PACE_EDGES[j] - player.paceBias) / paceSd);
    if (j > 0) paces[j - 1] = upTo - below;
    below = upTo;
  }
  if (!asked.pace) return;
  for (let j = 0; j < PACES; j++) {
    // Cells are narrower than any band: inside as far as the band covers them.
    const [low, high] = [PACE_EDGES[j], PACE_EDGES[j + 1]];
    const covered = Math.max(0, Math.min(high, bands.pace) - Math.max(low, -bands.pace)) / (high - low);
    const said = yesOf(covered);
    paceYes[j] = said * paces[j];
    paceNo[j] = (1 - said) * paces[j];
  }
}

/** Middle of a cell of pace error, share. */
export const paceMiddle = (cell: number): number => PACE_MIDDLES[cell];
