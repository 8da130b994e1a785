/**
 * Tour professionals as published. Answers for: the benchmark made of the tour's own rows, nothing modelled. Leaves out: the rows
 * (player/published.ts).
 * Holed: the fine table of 2016-18. Three-putts: the rounded figures of 2014. Mean putts of 2014 are not used but checked against
 * (tests): they are 1 + missed + three-putted in their own rounding, so a fourth putt is too rare to show.
 */
import { type HoledRow, PUBLISHED_FIGURES, TOUR_HOLED } from '../player/published.ts';
import { type Benchmark, benchmarkOf, type ShareRow } from './putting-benchmark.ts';

/**
 * Rows put together until the share holed falls from each to the next: the best falling curve through counts (pool adjacent
 * violators; Barlow et al. 1972, memory). Only the thin rows beyond 48 ft need it.
 */
export function fallingRows(rows: readonly HoledRow[]): HoledRow[] {
  const pooled: HoledRow[] = [];
  for (const row of rows) {
    let next = row;
    for (let last = pooled.at(-1); last !== undefined; last = pooled.at(-1)) {
      if (next.holed / next.tries < last.holed / last.tries) break;
      pooled.pop();
      const tries = last.tries + next.tries;
      next = {
        feet: (last.feet * last.tries + next.feet * next.tries) / tries,
        tries,
        holed: last.holed + next.holed,
      };
    }
    pooled.push(next);
  }
  return pooled;
}

const missedRow = ({ feet, tries, holed }: HoledRow): ShareRow => [feet, 1 - holed / tries];

export const TOUR_RECORD: Benchmark = benchmarkOf({
  id: 'tour-record',
  name: 'Tour record (published)',
  source:
    'Holed: 1.25 million putts of tour professionals, 2016-18 (Broadie, in Gelman 2019; read). Three-putts: Broadie 2014, 20 and 40 ft read, the other distances from memory. Expected putts follow from the two.',
  missed: fallingRows(TOUR_HOLED).map(missedRow),
  threePutts: PUBLISHED_FIGURES.filter(({ player, what }) => player === 'tour' && what === 'threePutt').map(
    ({ feet, value }) => [feet, value],
  ),
  // Three-putts are printed from 3 to 60 ft; nearer than 3 ft they hardly exist and holing is known from 0.28 ft on.
  range: [TOUR_HOLED[0].feet, 60],
});
