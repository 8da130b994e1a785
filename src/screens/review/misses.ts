/** Where misses finish and which way they lean. Pure; shares 0..1, m. Leaves out: words. */
import {
  type ChosenPutts,
  type Counted,
  type DistanceBand,
  judgeLean,
  type Lean,
  type LeanKind,
  type Leaves,
  leavesByBand,
  leavesOf,
  type MeantCounts,
  missesAsMeant,
  type Proportion,
  proportionInterval,
} from '../../../sim/index.ts';

export interface MissRow {
  readonly band: DistanceBand;
  readonly leaves: Leaves;
  readonly short: Proportion;
  readonly high: Proportion;
}

export interface MissesView {
  readonly all: Leaves;
  readonly rows: readonly MissRow[];
  /** Of all chosen misses, each against a half, the three considered together. */
  readonly leans: Readonly<Record<LeanKind, Lean>>;
  readonly asMeant: readonly MeantCounts[];
}

const interval = ({ hits, tries }: Counted): Proportion => proportionInterval(hits, tries);

export const missesView = ({ struck, sets }: ChosenPutts, bands: readonly DistanceBand[]): MissesView => {
  const all = leavesOf(struck, sets);
  const lean = ({ hits, tries }: Counted): Lean =>
    judgeLean({ first: hits, second: tries - hits }, { looks: 3 });
  return {
    all,
    rows: leavesByBand(struck, sets, bands).map((leaves, i) => ({
      band: bands[i],
      leaves,
      short: interval(leaves.short),
      high: interval(leaves.high),
    })),
    leans: { highLow: lean(all.high), leftRight: lean(all.left), shortPast: lean(all.short) },
    asMeant: missesAsMeant(struck),
  };
};
