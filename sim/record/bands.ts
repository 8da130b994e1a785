/**
 * Stretches of distance: the one meaning of "from x to y" for everything that counts putts.
 *
 * Answers for: what belongs to a band (its lower end does, its upper one does not), and the bands that are looked at, in feet and in
 * metres: round figures of each, not one converted into the other. Leaves out: counts (distance-bands.ts), what they tell.
 * A band is never "at": the share holed from 6 to 10 ft is not the share holed at 8 ft.
 */
import { feetToMetres } from '../units.ts';

/** m; `from` belongs to the band, `to` does not. Infinity: no upper end. */
export interface DistanceBand {
  readonly from: number;
  readonly to: number;
}

/**
 * Half a centimetre, m: 3 ft brought in from a file of whole centimetres is 0.91 m and still "from 3 ft". Nobody paces off nearer
 * than that.
 */
const ROUNDING = 0.005;

/** @param edges rising, m; the last band has no end */
export const bandsOf = (edges: readonly number[]): readonly DistanceBand[] =>
  edges.map((from, i) => ({ from, to: edges[i + 1] ?? Number.POSITIVE_INFINITY }));

const feet = (edges: readonly number[]): readonly DistanceBand[] => bandsOf(edges.map(feetToMetres));

/** Holed by distance: 0, 3, 6, 10, 15, 20, 30 and 40 ft. */
export const FEET_BANDS = feet([0, 3, 6, 10, 15, 20, 30, 40]);
export const METRE_BANDS = bandsOf([0, 1, 2, 3, 4.5, 6, 9, 12]);

/** Up to here a putt is a tap-in, m: 3 ft, of which tour players hole 96% (Broadie 2014); a metre for those who count in metres. */
export const TAP_IN = feetToMetres(3);
export const METRE_TAP_IN = 1;

/** What a round is judged in: everything from a tap-in on, then its parts. */
const roundBands = (parts: readonly DistanceBand[]): readonly DistanceBand[] => [
  { from: parts[0].from, to: Number.POSITIVE_INFINITY },
  ...parts,
];
export const ROUND_BANDS = roundBands(feet([3, 6, 12, 20]));
export const METRE_ROUND_BANDS = roundBands(bandsOf([1, 2, 4, 6]));

/** Where first putts lie; the long ones apart, because two putts gain strokes only there. */
export const FIRST_PUTT_BANDS = feet([0, 3, 6, 12, 20, 30, 40]);
export const METRE_FIRST_PUTT_BANDS = bandsOf([0, 1, 2, 4, 6, 9, 12]);

/** Does this distance (m) lie in the band? */
export const isInBand = ({ from, to }: DistanceBand, distance: number): boolean =>
  distance >= from - ROUNDING && distance < to - ROUNDING;

/** @returns which of rising bands that touch; -1 below the first or beyond the last */
export function bandIndex(bands: readonly DistanceBand[], distance: number): number {
  let low = 0;
  let high = bands.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (distance < bands[middle].to - ROUNDING) high = middle;
    else low = middle + 1;
  }
  return high >= 0 && isInBand(bands[low], distance) ? low : -1;
}

/** @param tapIn longest tap-in, m, which is one itself */
export const isLongerThan = (tapIn: number, distance: number): boolean => distance > tapIn + ROUNDING;
