/** Die, firm and best side by side: what each pace asks for and what it brings. */
import type { ComponentChildren } from 'preact';
import type { Line, Odds } from '../../../sim/index.ts';
import { units } from '../../app/settings.ts';
import {
  formatAim,
  formatLeave,
  formatPercent,
  formatPutts,
  formatSeconds,
  formatShort,
  holeWordsShort,
} from '../../text/format.ts';
import { answer, behind, type PaceAnswer, tableBehind } from './answer.ts';
import { problem } from './situation.ts';

interface Row {
  readonly name: string;
  readonly cell: (pace: PaceAnswer) => ComponentChildren;
  /** Depends on the next-putt table, so it waits for it. */
  readonly needsTable?: boolean;
}

const ofLine =
  (shown: (line: Line) => ComponentChildren) =>
  ({ read }: PaceAnswer): ComponentChildren =>
    read.status === 'ok' ? shown(read) : 'no line';
const ofOdds =
  (shown: (odds: Odds) => ComponentChildren) =>
  ({ odds }: PaceAnswer): ComponentChildren =>
    odds ? shown(odds) : '–';

const ROWS = (): readonly Row[] => {
  const unit = units.value;
  return [
    { name: 'stops past the hole', cell: ({ pace }) => formatShort(pace, unit) },
    {
      name: 'aim beside the hole centre',
      cell: ofLine(({ aimOffset }) =>
        aimOffset === undefined ? (
          'behind you'
        ) : (
          <>
            {formatAim(aimOffset, unit)}
            <small>{holeWordsShort(aimOffset)}</small>
          </>
        ),
      ),
    },
    { name: 'curve height', cell: ofLine(({ curveHeight }) => formatShort(Math.abs(curveHeight), unit)) },
    { name: 'holed', cell: ofOdds(({ holed }) => formatPercent(holed, 0)) },
    { name: 'short', cell: ofOdds(({ short }) => formatPercent(short, 0)) },
    { name: 'past, high side', cell: ofOdds(({ high }) => formatPercent(high, 0)) },
    { name: 'past, low side', cell: ofOdds(({ low }) => formatPercent(low, 0)) },
    { name: 'three putts', cell: ofOdds(({ threePutt }) => formatPercent(threePutt)), needsTable: true },
    {
      name: 'expected putts',
      cell: ofOdds(({ expectedPutts }) => formatPutts(expectedPutts)),
      needsTable: true,
    },
    {
      name: 'a miss is left',
      cell: ofOdds(({ leaveMedian, leaveP10, leaveP90 }) => (
        <>
          {formatLeave(leaveMedian, unit)}
          <small>
            {formatLeave(leaveP10, unit)} to {formatLeave(leaveP90, unit)}
          </small>
        </>
      )),
    },
    { name: 'time to the hole', cell: ofLine(({ time }) => formatSeconds(time)) },
  ];
};

export const PaceTable = () => {
  const now = answer.value;
  if (now === undefined) return null;
  const stale = behind.value || problem.value !== undefined;
  return (
    <section class="card" aria-labelledby="paces-title">
      <h2 id="paces-title" class="unseen">
        The paces compared
      </h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that may scroll must be reachable by keyboard */}
      <section class="scroll" tabIndex={0} aria-label="Table of the paces">
        <table class="paces" data-testid="paces">
          <thead>
            <tr>
              <td />
              <th scope="col" class="die">
                die <span aria-hidden="true">– –</span>
              </th>
              <th scope="col" class="firm">
                firm <span aria-hidden="true">—</span>
              </th>
              <th scope="col">best</th>
            </tr>
          </thead>
          <tbody>
            {ROWS().map((row) => (
              <tr key={row.name} class={stale || (row.needsTable && tableBehind.value) ? 'stale' : undefined}>
                <th scope="row">{row.name}</th>
                <td>{row.cell(now.die)}</td>
                <td>{row.cell(now.firm)}</td>
                <td>{now.best ? row.cell(now.best) : '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="hint">
        Break here means the aim: how far beside the hole centre the start line passes, measured at the hole.
        The curve height is how far the ball strays sideways from the straight line, and is smaller. Best is
        the pace with fewest expected putts. “A miss is left” gives the middle one, and the range of eight in
        ten under it. Further putts are hit 15 in (38 cm) past by the same player.
      </p>
    </section>
  );
};
