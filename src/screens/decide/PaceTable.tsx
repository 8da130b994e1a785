/** Die, firm and best side by side: what each pace asks for and what it brings. */
import type { ComponentChildren } from 'preact';
import type { Line, Odds, Read } from '../../../sim/index.ts';
import { units } from '../../state/settings.ts';
import { diePace, firmPace, problem } from '../../state/situation.ts';
import {
  formatAim,
  formatLeave,
  formatPercent,
  formatPutts,
  formatSeconds,
  formatShort,
  formatSpan,
  holeWordsShort,
} from '../../text/format.ts';
import { answer, behind, paces, pacesBehind, tableBehind } from './answer.ts';
import { lines } from './lines.ts';

/** What one column shows: lines follow the putt at once, odds when they are there. */
interface Column {
  readonly pace: number | undefined;
  readonly read: Read | undefined;
  readonly odds: Odds | undefined;
}

interface Row {
  readonly name: string;
  readonly hint?: string;
  readonly cell: (column: Column) => ComponentChildren;
  /** What it waits for: nothing, the odds, or the odds with a table of next putts. */
  readonly needs?: 'odds' | 'table';
}

const NOTHING = '–';
const WAITING = '…';
/** Which column is the best pace: it comes later than the other two. */
const BEST = 2;

const ofLine =
  (shown: (line: Line) => ComponentChildren) =>
  ({ read }: Column): ComponentChildren =>
    read === undefined ? NOTHING : read.status === 'ok' ? shown(read) : 'no line';
const ofOdds =
  (shown: (odds: Odds) => ComponentChildren) =>
  ({ odds }: Column): ComponentChildren =>
    odds ? shown(odds) : NOTHING;

const ROWS = (): readonly Row[] => {
  const unit = units.value;
  return [
    {
      name: 'stops past',
      cell: ({ pace }) => (pace === undefined ? NOTHING : formatShort(pace, unit)),
    },
    {
      name: 'aim beside the hole',
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
    { name: 'holed', cell: ofOdds(({ holed }) => formatPercent(holed, 0)), needs: 'odds' },
    { name: 'three putts', cell: ofOdds(({ threePutt }) => formatPercent(threePutt)), needs: 'table' },
    {
      name: 'expected putts',
      cell: ofOdds(({ expectedPutts }) => formatPutts(expectedPutts)),
      needs: 'table',
    },
    {
      name: 'a miss is left',
      cell: ofOdds(({ leaveMedian, leaveP10, leaveP90 }) => (
        <>
          {formatLeave(leaveMedian, unit)}
          <small>{formatSpan(leaveP10, leaveP90, unit)}</small>
        </>
      )),
      needs: 'odds',
    },
    { name: 'short', cell: ofOdds(({ short }) => formatPercent(short, 0)), needs: 'odds' },
    { name: 'high side', cell: ofOdds(({ high }) => formatPercent(high, 0)), needs: 'odds' },
    { name: 'low side', cell: ofOdds(({ low }) => formatPercent(low, 0)), needs: 'odds' },
    { name: 'lips out', cell: ofOdds(({ lippedOut }) => formatPercent(lippedOut)), needs: 'odds' },
    { name: 'time to the hole', cell: ofLine(({ time }) => formatSeconds(time)) },
  ];
};

const Explained = () => (
  <details>
    <summary>What these figures mean</summary>
    <dl class="terms">
      <dt>Aim beside the hole, or break</dt>
      <dd>
        How far beside the hole centre the start line passes, measured at the hole. The words under it count
        from the edge of the hole; a cup is {formatShort(0.10795, units.value)} wide.
      </dd>
      <dt>Curve height</dt>
      <dd>The farthest the ball strays sideways from the straight line: about a third of the break.</dd>
      <dt>Expected putts</dt>
      <dd>
        The mean number of strokes to hole out from here. The next putt is played from where the miss stopped,
        by the same player, at the pace and the aim that need the fewest putts from there.
      </dd>
      <dt>Best</dt>
      <dd>The pace with the fewest expected putts.</dd>
      <dt>A miss is left</dt>
      <dd>Half of the misses stop nearer than this, half farther; eight in ten lie in the range under it.</dd>
      <dt>Short, high side, low side</dt>
      <dd>
        Where misses finish. High is past on the side the ball breaks from, low past on the side it breaks to.
        Shares are of all putts.
      </dd>
      <dt>Lips out</dt>
      <dd>Touches the hole and stays out, turned aside by the rim. These are among the high and low ones.</dd>
    </dl>
  </details>
);

export const PaceTable = () => {
  const now = answer.value;
  const best = paces.value?.best;
  const both = lines.value;
  const counted = now?.counted ?? false;
  const waiting = behind.value || problem.value !== undefined;
  const columns: readonly Column[] = [
    { pace: diePace.value, read: both?.die, odds: now?.dieOdds },
    { pace: firmPace.value, read: both?.firm, odds: now?.firmOdds },
    { pace: best?.pace, read: best?.read, odds: best?.odds },
  ];
  const isStale = ({ needs }: Row): boolean =>
    (needs !== undefined && waiting) || (needs === 'table' && tableBehind.value);
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
              <tr key={row.name} class={isStale(row) ? 'stale' : undefined}>
                <th scope="row">{row.name}</th>
                {columns.map((column, index) => (
                  <td key={index} class={index === BEST && pacesBehind.value ? 'stale' : undefined}>
                    {row.needs === 'table' && !counted ? WAITING : row.cell(column)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <Explained />
    </section>
  );
};
