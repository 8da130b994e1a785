/** Everybody the person may be, one a row, with the pace that suits them: from whom dying it in suits most to whom firm does. */
import { ERROR_NAMES, errorWords, PLAYER_ERRORS } from '../../text/player.ts';
import { formatWorth } from '../../text/verdict.ts';
import { family, familyBehind, type MemberAnswer } from './family.ts';

/** Of two hundred players some are enough to see. */
const MOST_ROWS = 9;

const spread = (members: readonly MemberAnswer[]): MemberAnswer[] => {
  const known = members.filter((one) => one.difference !== undefined);
  const inOrder = known.sort((one, other) => (other.difference ?? 0) - (one.difference ?? 0));
  if (inOrder.length <= MOST_ROWS) return inOrder;
  return Array.from(
    { length: MOST_ROWS },
    (_, i) => inOrder[Math.round((i * (inOrder.length - 1)) / (MOST_ROWS - 1))],
  );
};

export const FamilyTable = () => {
  const now = family.value;
  if (now === undefined) return null;
  const rows = spread([...now.members]);
  const shown = PLAYER_ERRORS.filter((name) => rows.some(({ player }) => player[name] !== 0));
  return (
    <details class={familyBehind.value ? 'family stale' : 'family'}>
      <summary>
        {rows.length < now.members.length ? `${rows.length} of these players` : 'Each of these players'}
      </summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too */}
      <section class="scroll" tabIndex={0} aria-label="Players you may be, and the pace that suits each">
        <table data-testid="family">
          <thead>
            <tr>
              <th scope="col">better</th>
              {shown.map((name) => (
                <th key={name} scope="col">
                  {ERROR_NAMES[name].toLowerCase()}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ player, difference }) => (
              <tr key={Object.values(player).join()}>
                <th scope="row">{formatWorth(difference ?? 0)}</th>
                {shown.map((name) => (
                  <td key={name}>{errorWords(name, player[name])}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
};
