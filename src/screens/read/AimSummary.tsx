/** A set of aims summed up: the bias of each kind of putt with its interval, never without it. */
import { isHit, type KindSummary, type ReadingBias, WANTED_HITS } from '../../../sim/index.ts';
import { isAdaptive } from '../../state/readOffers.ts';
import { answeredOf, type KeptSet } from '../../store/schema.ts';
import { formatPercent, formatShort, type Units } from '../../text/format.ts';
import { summaryOf } from './headlines.ts';
import { formatInterval, formatShare, kindNames, verdictWords } from './words.ts';

/** Half the drawn range of a bias, share: beyond it the bar runs off the edge. */
const DRAWN = 0.8;

/** The interval as a stroke, its mean as a dot, the truth (no bias) as the upright line. */
const Bar = ({ bias }: { bias: ReadingBias }) => {
  const at = (share: number): number => 50 + 50 * Math.max(-1, Math.min(1, share / DRAWN));
  return (
    <svg class="read-bias" viewBox="0 0 100 14" preserveAspectRatio="none" aria-hidden="true">
      <line class="read-bias-zero" x1="50" x2="50" y1="0" y2="14" />
      <line class="read-bias-interval" x1={at(bias.low)} x2={at(bias.high)} y1="7" y2="7" />
      <line class="read-bias-mean" x1={at(bias.value)} x2={at(bias.value)} y1="2" y2="12" />
    </svg>
  );
};

const Row = ({ kind, count, bias, units }: KindSummary & { units: Units }) => (
  <tr>
    <th scope="row">{kindNames(units)[kind]}</th>
    <td>{count}</td>
    <td>{bias === undefined ? 'none' : formatShare(bias.value)}</td>
    <td>
      {bias === undefined ? 'none' : formatInterval(bias)}
      {bias && bias.verdict !== 'tooFew' && <span class="read-says-narrow">{verdictWords(bias)}</span>}
    </td>
    <td class="read-bias-cell">{bias && <Bar bias={bias} />}</td>
    <td class="read-says">{verdictWords(bias)}</td>
  </tr>
);

/** How many aims counted, in a set that goes by it. */
const Hits = ({ set }: { set: KeptSet }) => {
  const judged = answeredOf(set, 'aim').flatMap(({ question, aim }) => isHit(question, aim) ?? []);
  if (!isAdaptive({ id: set.drillId }) || judged.length === 0) return null;
  return (
    <p data-testid="hits">
      {judged.filter((hit) => hit).length} of {judged.length} aims counted. The putts get harder after a hit
      and easier after a miss, so that in the long run {formatPercent(WANTED_HITS, 0)} count whatever your eye
      is like: look at the bias, not at this number.
    </p>
  );
};

export const AimSummary = ({ set, units }: { set: KeptSet; units: Units }) => {
  const summary = summaryOf(set);
  const all = summary?.kinds[0]?.bias;
  return (
    <>
      {summary && (
        <>
          <p>
            {all && `95% interval of your bias: ${formatInterval(all)}. `}
            Your aim was {formatShort(summary.meanError, units)} off on average
            {summary.meanCost !== undefined &&
              `, which cost ${Math.max(0, summary.meanCost * 100).toFixed(1)} holed putts in a hundred`}
            .
          </p>
          <Hits set={set} />
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too */}
          <section class="scroll" tabIndex={0} aria-label="Bias by kind of putt">
            <table class="read-kinds">
              <thead>
                <tr>
                  <th scope="col">Kind</th>
                  <th scope="col">Putts</th>
                  <th scope="col">Bias</th>
                  <th scope="col">95% interval</th>
                  <th scope="col" class="read-bias-cell">
                    <span class="read-ends">
                      <span>too little</span> <span>too much</span>
                    </span>
                  </th>
                  <th scope="col" class="read-says">
                    Says
                  </th>
                </tr>
              </thead>
              <tbody>
                {summary.kinds.map((kind) => (
                  <Row key={kind.kind} {...kind} units={units} />
                ))}
              </tbody>
            </table>
          </section>
        </>
      )}
      <p class="quiet">
        Break is the aim offset: how far beside the hole centre the start line passes. Bias is the mean share
        of it by which you were off, minus for too little; nearly straight putts count less, since a share of
        no break means nothing. One interval in twenty misses the truth by chance, and here are several:
        believe a kind when a second set says the same.
      </p>
    </>
  );
};
