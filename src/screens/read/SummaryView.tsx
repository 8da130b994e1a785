/** A set summed up: the bias of each kind of putt with its interval, never without it. */
import { type KindSummary, type ReadingBias, summarizeReads } from '../../../sim/index.ts';
import { isFinished, type KeptSet } from '../../store/schema.ts';
import { formatShort, type Units } from '../../text/format.ts';
import { useFocusOn } from './Asking.tsx';
import { formatInterval, formatShare, kindNames, summaryHeadline, verdictWords } from './words.ts';

/** Half the drawn range of a bias, share: beyond it the bar runs off the edge. */
const DRAWN = 0.8;

export const summaryOf = (set: KeptSet) =>
  summarizeReads(
    set.answers.flatMap((answer) => {
      const question = set.questions.find(({ number }) => number === answer.number);
      return question === undefined ? [] : [{ ...answer, question }];
    }),
  );

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

export interface SummaryViewProps {
  readonly set: KeptSet;
  readonly units: Units;
  readonly onLeave: () => void;
  readonly onResume: () => void;
}

export const SummaryView = ({ set, units, onLeave, onResume }: SummaryViewProps) => {
  const heading = useFocusOn(set.id);
  const summary = summaryOf(set);
  const all = summary?.kinds[0]?.bias;
  return (
    <section class="card" aria-label="Summary" data-testid="summary">
      <p class="quiet">
        {set.drillName}, {set.answers.length} of {set.questions.length} putts answered
      </p>
      <h1 ref={heading} tabIndex={-1}>
        {summaryHeadline(all)}
      </h1>
      {summary && (
        <>
          <p>
            {all && `95% interval of your bias: ${formatInterval(all)}. `}
            Your aim was {formatShort(summary.meanError, units)} off on average
            {summary.meanCost !== undefined &&
              `, which cost ${Math.max(0, summary.meanCost * 100).toFixed(1)} holed putts in a hundred`}
            .
          </p>
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
      <p class="read-actions">
        {!isFinished(set) && (
          <button type="button" class="read-main" onClick={onResume}>
            Go on with this set
          </button>
        )}
        <button type="button" class={isFinished(set) ? 'read-main' : 'plain'} onClick={onLeave}>
          Back to the drills
        </button>
      </p>
    </section>
  );
};
