/** What a foot of green speed and half a percent of slope do to both aims and to the choice of pace. */
import { units } from '../../state/settings.ts';
import { putt } from '../../state/situation.ts';
import { formatAim } from '../../text/format.ts';
import { caseLabels, formatWorth } from '../../text/verdict.ts';
import type { SensitivityCase } from '../../worker/messages.ts';
import { answer, behind } from './answer.ts';
import { lines } from './lines.ts';
import { margin, marginBehind } from './margin.ts';

const aim = (offset: number | undefined): string =>
  offset === undefined ? 'no line' : formatAim(offset, units.value);

const CaseRow = ({
  words,
  one,
  stale,
}: {
  words: string;
  one: Omit<SensitivityCase, 'name'>;
  stale: boolean;
}) => (
  <tr class={stale ? 'stale' : undefined}>
    <th scope="row">{words}</th>
    <td>{aim(one.dieAim)}</td>
    <td>{aim(one.firmAim)}</td>
    <td>{one.difference === undefined ? '–' : formatWorth(one.difference)}</td>
  </tr>
);

export const MarginTable = () => {
  const now = answer.value;
  const both = lines.value;
  const cases = margin.value?.cases;
  if (now === undefined || both === undefined || cases === undefined || !now.counted) return null;
  const land = putt.value.surface;
  const words = caseLabels(putt.value.greenSpeed, land.kind === 'plane' ? land.slope : undefined);
  const thought = {
    dieAim: both.die.status === 'ok' ? both.die.aimOffset : undefined,
    firmAim: both.firm.status === 'ok' ? both.firm.aimOffset : undefined,
    difference:
      now.dieOdds && now.firmOdds ? now.firmOdds.expectedPutts - now.dieOdds.expectedPutts : undefined,
  };
  return (
    <section class="card" aria-labelledby="margin-title">
      <h2 id="margin-title">If the green is not as you think</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that may scroll must be reachable by keyboard */}
      <section class="scroll" tabIndex={0} aria-label="Table of other green speeds and slopes">
        <table class="cases" data-testid="cases">
          <thead>
            <tr>
              <td />
              <th scope="col" class="die">
                aim to die
              </th>
              <th scope="col" class="firm">
                aim firm
              </th>
              <th scope="col">better</th>
            </tr>
          </thead>
          <tbody>
            <CaseRow words="as you think" one={thought} stale={behind.value} />
            {cases.map((one) => (
              <CaseRow key={one.name} words={words[one.name]} one={one} stale={marginBehind.value} />
            ))}
          </tbody>
        </table>
      </section>
      <p class="hint">“Better” names the pace that takes fewer putts, and how many fewer on average.</p>
    </section>
  );
};
