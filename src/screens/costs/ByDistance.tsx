/** Where the strokes are lost: putts by the distance of the first one, beside a benchmark, and what each step saves there. */
import { BENCHMARKS } from '../../../sim/index.ts';
import { view } from '../../state/costs/answer.ts';
import { benchmark, benchmarkId } from '../../state/costs/question.ts';
import { costJob } from '../../state/costs/work.ts';
import { units } from '../../state/settings.ts';
import { lostInterval, lostWords, STEP_WORDS } from '../../text/costs.ts';
import { bandName, formatSigned } from '../../text/phrases.ts';
import { Ranged } from './Ranged.tsx';

const BenchmarkField = () => (
  <div class="field">
    <label for="costs-benchmark">Beside</label>
    <select
      id="costs-benchmark"
      value={benchmark.value.id}
      onChange={(event) => {
        benchmarkId.value = event.currentTarget.value;
      }}
    >
      {BENCHMARKS.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  </div>
);

export const ByDistance = () => {
  const found = view.value;
  if (found === undefined) return null;
  const { bands } = found.costs;
  const now = units.value;
  return (
    <section class={costJob.behind.value ? 'card stale' : 'card'} aria-labelledby="where-title">
      <h2 id="where-title">Where the strokes are</h2>
      <p class="costs-answer" data-testid="where">
        {lostWords(found.costs, benchmark.value.name, now)}
      </p>
      <BenchmarkField />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too */}
      <section class="scroll" tabIndex={0} aria-label="Strokes by distance of the first putt">
        <table class="costs-table" data-testid="by-distance">
          <thead>
            <tr>
              <th scope="col">first putt from</th>
              <th scope="col">holes</th>
              <th scope="col">putts</th>
              <th scope="col">lost</th>
              {found.ranked.map(({ step }) => (
                <th key={step} scope="col">
                  {STEP_WORDS[step].name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {bands.map((cost, i) => (
              <tr key={cost.band.from}>
                <th scope="row">{bandName(cost.band, now)}</th>
                <td>{cost.holes.toFixed(1)}</td>
                <td>
                  <Ranged of={cost.putts} write={(value) => value.toFixed(1)} />
                </td>
                <td>
                  <Ranged of={lostInterval(cost)} write={formatSigned} />
                </td>
                {found.ranked.map(({ step, byBand }) => (
                  <td key={step}>
                    <Ranged of={byBand[i]} write={(value) => value.toFixed(2).replace('-', '−')} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="hint">
        “Lost” is against {benchmark.value.name}, from the very same places. The columns after it are what
        each step saves there, in strokes a round.
      </p>
    </section>
  );
};
