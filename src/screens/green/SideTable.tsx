/** All round the hole at the distance asked: a row for every hour, and for the best and the worst place. */
import { units } from '../../state/settings.ts';
import { formatClock, formatLength, formatPercent, formatPutts } from '../../text/format.ts';
import { sides, stale } from './answer.ts';
import { distance } from './question.ts';
import { rowsOf } from './view.ts';
import { sideWords } from './words.ts';

export const SideTable = () => {
  const found = sides.value;
  if (found === undefined) return null;
  return (
    <section class="card" aria-labelledby="sides-title">
      <h2 id="sides-title">All round, from {formatLength(distance.value, units.value)}</h2>
      <table class={stale.value ? 'sides stale' : 'sides'} data-testid="sides">
        <thead>
          <tr>
            <th scope="col">side</th>
            <th scope="col">putts</th>
            <th scope="col">more</th>
            <th scope="col">one</th>
            <th scope="col">three +</th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(found).map((row) => (
            <tr key={row.clock} class={row.mark}>
              <th scope="row">
                <span class="hour">{formatClock(row.clock)}</span>{' '}
                <small>
                  {row.mark ??
                    sideWords(row.clock)
                      .replaceAll(/ ?(of )?the hole/g, '')
                      .replace('to the ', '')
                      .trim()}
                </small>
              </th>
              <td>{formatPutts(row.expectedPutts)}</td>
              <td>{row.more > 0.004 ? `+${formatPutts(row.more)}` : '0'}</td>
              <td>{formatPercent(row.onePutt, 0)}</td>
              <td>{formatPercent(row.threeOrMore).replace('under ', '<')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">
        12:00 is straight uphill of the hole, by the slope within five feet of it; left and right as you look
        uphill. “More”: putts more than from the best place.
      </p>
    </section>
  );
};
