/**
 * The stretches of distance a round is judged in. Answers for: where they begin and end, and which putt belongs to which. Leaves
 * out: anything about a putt at exactly one distance: a band is "from x to y", never "at".
 */
import { feetToMetres } from '../units.ts';

/** m; `from` belongs to the band, `to` does not. Infinity: no upper end. */
export interface RoundBand {
  readonly from: number;
  readonly to: number;
}

/** Up to here a putt is a tap-in, m: 3 ft, of which tour players hole 96% (Broadie 2014). */
export const TAP_IN = feetToMetres(3);

/** Half a centimetre, m: 3 ft brought in from a file of whole centimetres is 0.91 m and still 3 ft. Nobody paces off nearer than that. */
const ROUNDING = 0.005;

const bandsOfFeet = (edges: readonly number[]): readonly RoundBand[] =>
  edges.map((edge, i) => ({
    from: feetToMetres(edge),
    to: i + 1 < edges.length ? feetToMetres(edges[i + 1]) : Number.POSITIVE_INFINITY,
  }));

/** Everything from 3 ft on, then its parts. */
export const ROUND_BANDS: readonly RoundBand[] = [
  { from: TAP_IN, to: Number.POSITIVE_INFINITY },
  ...bandsOfFeet([3, 6, 12, 20]),
];

/** Where first putts lie; the long ones apart, because two putts gain strokes only there. */
export const FIRST_PUTT_BANDS: readonly RoundBand[] = bandsOfFeet([0, 3, 6, 12, 20, 30, 40]);

/** @param distance m */
export const belongsTo = ({ from, to }: RoundBand, distance: number): boolean =>
  distance >= from - ROUNDING && distance < to - ROUNDING;

/** @param tapIn longest tap-in, m, which is one itself */
export const isLongerThan = (tapIn: number, distance: number): boolean => distance > tapIn + ROUNDING;
