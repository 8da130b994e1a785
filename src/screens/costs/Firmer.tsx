/** "Hit them firmer and play less break", answered for this player by length and slope. */

import { Link } from 'wouter-preact';
import { Choice } from '../../controls/Choice.tsx';
import { firmerDirection } from '../../state/costs/question.ts';
import { costJob } from '../../state/costs/work.ts';
import { units } from '../../state/settings.ts';
import {
  dieWords,
  FIRMER_VERDICTS,
  firmerSaves,
  firmerWords,
  paceCell,
  turnsWords,
} from '../../text/costs.ts';
import { TEST_WORDS } from '../../text/family.ts';
import { formatLength, formatShort, formatSlope } from '../../text/format.ts';
import { Ranged } from './Ranged.tsx';

const DIRECTIONS = [
  { value: 'any', label: 'all round' },
  { value: 'uphill', label: 'uphill' },
  { value: 'sidehill', label: 'sidehill' },
  { value: 'downhill', label: 'downhill' },
] as const;

export const Firmer = () => {
  const table = costJob.shown.value?.found;
  if (table === undefined) return null;
  const now = units.value;
  const rows = table.firmer.filter(({ direction }) => direction === firmerDirection.value);
  const paces = table.firmer[0]?.paces;
  const many = table.weights.length > 1;
  const turns = turnsWords(table.firmer, now);
  return (
    <section class={costJob.behind.value ? 'card stale' : 'card'} aria-labelledby="firmer-title">
      <h2 id="firmer-title">“Hit them firmer and play less break”</h2>
      <p class="costs-answer" data-testid="firmer">
        {firmerWords(table.firmer, now)}
      </p>
      <p>{dieWords(table.firmer, now)}</p>
      {turns && (
        <p data-testid="firmer-turns">
          {turns.words} <Link href={TEST_WORDS[turns.test].link}>{TEST_WORDS[turns.test].linkWords}</Link>
        </p>
      )}
      <Choice
        legend="Putts"
        name="firmer-direction"
        value={firmerDirection.value}
        options={DIRECTIONS}
        onChange={(value) => {
          firmerDirection.value = value;
        }}
      />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too */}
      <section class="scroll" tabIndex={0} aria-label="Die, usual and firm by length and slope">
        <table class="costs-table" data-testid="firmer-table">
          <thead>
            <tr>
              <th scope="col">from</th>
              <th scope="col">on</th>
              <th scope="col">firm saves</th>
              {paces && (
                <>
                  <th scope="col" class="die">
                    die, {formatShort(paces.die.pace, now)}
                  </th>
                  <th scope="col">usual, {formatShort(paces.usual.pace, now)}</th>
                  <th scope="col" class="firm">
                    firm, {formatShort(paces.firm.pace, now)}
                  </th>
                </>
              )}
              <th scope="col">says</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ length, slope, paces: { die, usual, firm }, firm: saves, verdict }) => (
              <tr key={`${length} ${slope}`}>
                <th scope="row">{formatLength(length, now)}</th>
                <td>{formatSlope(slope)}</td>
                <td>
                  <Ranged of={saves} write={firmerSaves} />
                </td>
                <td>{paceCell(die)}</td>
                <td>{paceCell(usual)}</td>
                <td>{paceCell(firm)}</td>
                <td>{FIRMER_VERDICTS[verdict]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="hint">
        Each cell: holed · three putts · putts needed, with your errors{many ? ' in the middle' : ''}. “Firm
        saves” is putts against your usual pace; below half a hundredth there is no difference worth having.
        The deciding screen answers for one putt, with the best pace between.
      </p>
    </section>
  );
};
