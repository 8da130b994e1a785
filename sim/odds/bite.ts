/**
 * Bites out of the drop region: starts at which a soft and a firm ball drop and one between does not.
 *
 * They are common near the low edge of a breaking putt on ground that is no plane: a soft ball still breaks into the hole's
 * edge from above, a firm one holds its line to it, one between passes or lips out. Looked for at a few energies of each
 * start; narrower ones are missed. Leaves out: the region round them (drop-region.ts).
 */
import { edgeBeyond } from './edge.ts';

/** Energies (m^2/s^2) between which nothing drops. */
export interface Bite {
  readonly low: number;
  readonly high: number;
}

interface Interval {
  readonly start: number;
  readonly soft: number;
  readonly firm: number;
  readonly bite?: Bite | undefined;
}

/** A run of bitten starts, rising; a bite that begins or ends within the region has a tip there, where low and high meet. */
export interface BittenStarts {
  readonly starts: readonly number[];
  readonly bites: readonly Bite[];
  readonly tips: readonly [boolean, boolean];
}

/** Where an interval is looked into, shares of it: closest near the soft end, where bites begin. */
const LOOKS = [0.001, 0.06, 0.14, 0.28, 0.5, 0.75];
/** The start at which a bite begins is halved for this often between two cuts. */
const HALVINGS = 4;

/** The bite out of one interval. @param clearance above 0 where a ball of this energy drops, at this start */
export function biteIn(clearance: (energy: number) => number, { soft, firm }: Interval): Bite | undefined {
  const at = (look: number): number => soft + look * (firm - soft);
  let first = -1;
  let last = -1;
  for (let i = 1; i < LOOKS.length; i++) {
    if (clearance(at(LOOKS[i])) < 0) {
      if (first < 0) first = i;
      last = i;
    } else if (first >= 0) break;
  }
  if (first < 0) return undefined;
  const before = at(LOOKS[first - 1]);
  const after = last + 1 < LOOKS.length ? at(LOOKS[last + 1]) : firm - 0.001 * (firm - soft);
  return {
    // Nothing to spare just above the soft end: the bite takes all of it.
    low: clearance(before) > 0 ? edgeBeyond(clearance, before, at(LOOKS[first])) : soft,
    high: clearance(after) > 0 ? edgeBeyond(clearance, after, at(LOOKS[last])) : firm,
  };
}

/** Runs of bitten cuts, with their tips. @param cutAt a cut between the given ones; undefined outside the region */
export function bitesOf(
  cuts: readonly Interval[],
  cutAt: (start: number) => Interval | undefined,
): readonly BittenStarts[] {
  const runs: BittenStarts[] = [];
  for (let i = 0; i < cuts.length; i++) {
    if (cuts[i].bite === undefined) continue;
    let end = i;
    while (end + 1 < cuts.length && cuts[end + 1].bite !== undefined) end++;
    const run = cuts.slice(i, end + 1).map(({ start, bite }) => ({ start, bite: bite as Bite }));
    const before = tipBetween(cuts[i], cuts[i - 1], cutAt);
    const after = tipBetween(cuts[end], cuts[end + 1], cutAt);
    const all = [...[...before.nodes].reverse(), ...run, ...after.nodes];
    runs.push({
      starts: all.map(({ start }) => start),
      bites: all.map(({ bite }) => bite),
      tips: [before.tip, after.tip],
    });
    i = end;
  }
  return runs;
}

interface Node {
  readonly start: number;
  readonly bite: Bite;
}

/** Nodes from a bitten cut towards a whole one, the last of them the tip; towards a closed end the bite stays as it is. */
function tipBetween(
  bitten: Interval,
  whole: Interval | undefined,
  cutAt: (start: number) => Interval | undefined,
): { readonly nodes: readonly Node[]; readonly tip: boolean } {
  const last = bitten.bite as Bite;
  if (whole === undefined) return { nodes: [], tip: false };
  if (!(whole.firm > whole.soft)) return { nodes: [{ start: whole.start, bite: last }], tip: false };
  const nodes: Node[] = [];
  let [inside, outside] = [bitten.start, whole.start];
  for (let i = 0; i < HALVINGS; i++) {
    const start = (inside + outside) / 2;
    const bite = cutAt(start)?.bite;
    if (bite === undefined) outside = start;
    else {
      inside = start;
      nodes.push({ start, bite });
    }
  }
  const { low, high } = nodes[nodes.length - 1]?.bite ?? last;
  const middle = (low + high) / 2;
  nodes.push({ start: (inside + outside) / 2, bite: { low: middle, high: middle } });
  return { nodes, tip: true };
}

/** Cuts the bite at this start out of the interval in out[0], out[1]. Returns how many intervals are left, in `out`. */
export function cutOut(runs: readonly BittenStarts[], start: number, out: Float64Array): number {
  for (const { starts, bites, tips } of runs) {
    const last = starts.length - 1;
    if (start < starts[0] || start > starts[last]) continue;
    let i = 0;
    while (i < last - 1 && starts[i + 1] <= start) i++;
    let share = last === 0 ? 0 : (start - starts[i]) / (starts[i + 1] - starts[i]);
    // A bite opens as a square root from its tip.
    if (i === 0 && tips[0]) share = Math.sqrt(share);
    else if (i === last - 1 && tips[1]) share = 1 - Math.sqrt(1 - share);
    const next = Math.min(last, i + 1);
    const low = bites[i].low + share * (bites[next].low - bites[i].low);
    const high = bites[i].high + share * (bites[next].high - bites[i].high);
    const [soft, firm] = out;
    if (low <= soft) {
      out[0] = Math.max(soft, high);
      return out[0] < firm ? 1 : 0;
    }
    out[1] = Math.min(low, firm);
    if (high >= firm) return 1;
    out[2] = high;
    out[3] = firm;
    return 2;
  }
  return 1;
}
