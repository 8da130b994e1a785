/** A comparison as chart data in the person's units. No statistics, no drawing. */
import type { Comparison } from '../../sim/index.ts';
import { metresToInches } from '../../sim/index.ts';
import type { Units } from '../text/format.ts';

export interface PacePoint {
  /** In or cm past the hole. */
  readonly pace: number;
  readonly metres: number;
  readonly holed: number;
  readonly threePutt: number;
}

export interface PaceChartData {
  /** Words of the pace axis, with its unit. */
  readonly paceLabel: string;
  readonly points: readonly PacePoint[];
  readonly die: number;
  readonly firm: number;
  readonly best: number | undefined;
  /** Upper end of the share axis. */
  readonly top: number;
  /** Words on the curves; they lie on the side on which the curve falls away from them. */
  readonly labels: readonly {
    readonly pace: number;
    readonly share: number;
    readonly words: string;
    readonly anchor: 'start' | 'end';
  }[];
  readonly marks: readonly {
    readonly pace: number;
    readonly name: 'die' | 'firm' | 'best';
    readonly words: string;
  }[];
}

export interface PaceChartInput {
  readonly comparison: Comparison;
  readonly die: number;
  readonly firm: number;
  readonly best: number | undefined;
  readonly units: Units;
}

export const paceChartData = ({ comparison, die, firm, best, units }: PaceChartInput): PaceChartData => {
  const shown = (metres: number): number => (units === 'imperial' ? metresToInches(metres) : metres * 100);
  const points = comparison.rows.flatMap(({ pace, odds }): PacePoint[] =>
    odds ? [{ pace: shown(pace), metres: pace, holed: odds.holed, threePutt: odds.threePutt }] : [],
  );
  const highest = points.reduce((most, { holed, threePutt }) => Math.max(most, holed, threePutt), 0.05);
  const at = (share: number): PacePoint | undefined => points[Math.round((points.length - 1) * share)];
  const holedLabel = at(0.72);
  const threeLabel = at(0.86);
  // Where two marks nearly meet their words would overprint: the best pace then keeps its line and gives up its word.
  const span = points.length > 0 ? points[points.length - 1].pace : 1;
  const clear =
    best !== undefined &&
    Math.min(Math.abs(shown(best) - shown(die)), Math.abs(shown(best) - shown(firm))) > span * 0.09;
  return {
    paceLabel: `past the hole (${units === 'imperial' ? 'in' : 'cm'})`,
    points,
    die: shown(die),
    firm: shown(firm),
    best: best === undefined ? undefined : shown(best),
    top: Math.min(1, highest * 1.15),
    labels: [
      ...(holedLabel
        ? [{ pace: holedLabel.pace, share: holedLabel.holed, words: 'holed', anchor: 'start' } as const]
        : []),
      ...(threeLabel
        ? [
            {
              pace: threeLabel.pace,
              share: threeLabel.threePutt,
              words: 'three putts',
              anchor: 'end',
            } as const,
          ]
        : []),
    ],
    marks: [
      { pace: shown(die), name: 'die', words: 'die' },
      { pace: shown(firm), name: 'firm', words: 'firm' },
      ...(best !== undefined && clear ? [{ pace: shown(best), name: 'best', words: 'best' } as const] : []),
    ],
  };
};
