/** What an import would do, before anything is written: the sentence, the choices, every line with its reason. */
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { RecordedRound } from '../../../sim/index.ts';
import { Choice } from '../../controls/Choice.tsx';
import { localDay } from '../../store/day.ts';
import { VERDICTS, type Verdict } from '../../store/importDraft.ts';
import { type ImportPlan, type PlanLine, writtenBy } from '../../store/importPlan.ts';
import { formatDay, type Units } from '../../text/format.ts';
import { counted } from './counted.ts';
import { changeWords, recordWords } from './recordWords.ts';
import type { DataSession, Preview } from './session.ts';
import { TABLE_WORDS, type Wording } from './tableWords.ts';
import { importWords, planSentence, VERDICT_WORDS } from './words.ts';

/** Lines shown at first, and with each asking after that: a page of 100,000 would stand still. */
const FIRST = 20;
const MORE = 2000;

type Filter = Verdict | 'all';

const roundsOf = ({ lines, now }: ImportPlan): Wording['roundOf'] => {
  const inFile = new Map<string, RecordedRound>();
  for (const { table, record } of lines)
    if (table === 'rounds' && record !== undefined) inFile.set(record.id, record as RecordedRound);
  return (id) => inFile.get(id) ?? now.rounds.get(id);
};

const Line = ({ line, wording }: { line: PlanLine; wording: Wording }) => {
  const { verdict, here, record, reason, place, table } = line;
  const changes =
    (verdict === 'change' || verdict === 'keep') && here && record
      ? changeWords(here, record, wording.units)
      : [];
  return (
    <tr data-verdict={verdict}>
      <th scope="row">
        {recordWords(line, wording)}
        <span class="quiet data-under">
          {TABLE_WORDS[table].name}; {place}
        </span>
      </th>
      <td>
        <strong>{VERDICT_WORDS[verdict]}</strong>
        {changes.map((change) => (
          <span key={change} class="data-under">
            {change}
          </span>
        ))}
        {reason && (
          <span class={verdict === 'refuse' ? 'problem data-under' : 'quiet data-under'}>{reason}</span>
        )}
      </td>
    </tr>
  );
};

const Lines = ({ plan, units }: { plan: ImportPlan; units: Units }) => {
  const [filter, setFilter] = useState<Filter>(plan.counts.refuse > 0 ? 'refuse' : 'all');
  const [most, setMost] = useState(FIRST);
  const wording = useMemo(() => ({ units, roundOf: roundsOf(plan) }), [plan, units]);
  const lines = useMemo(
    () =>
      filter === 'all'
        ? // What asks for attention first; the order of the file within.
          VERDICTS.flatMap((verdict) => plan.lines.filter((line) => line.verdict === verdict))
        : plan.lines.filter(({ verdict }) => verdict === filter),
    [plan, filter],
  );
  const rest = lines.length - most;
  const options = [
    { value: 'all' as Filter, label: `All ${plan.lines.length.toLocaleString('en')}` },
    ...VERDICTS.filter((verdict) => plan.counts[verdict] > 0).map((verdict) => ({
      value: verdict as Filter,
      label: `${VERDICT_WORDS[verdict]} ${plan.counts[verdict].toLocaleString('en')}`,
    })),
  ];
  return (
    <>
      {options.length > 2 && (
        <div class="data-filter">
          <Choice
            legend="Lines shown"
            name="lines"
            value={filter}
            options={options}
            onChange={(value) => {
              setFilter(value);
              setMost(FIRST);
            }}
          />
        </div>
      )}
      <table class="data-lines">
        <thead>
          <tr>
            <th scope="col">In the file</th>
            <th scope="col">What becomes of it</th>
          </tr>
        </thead>
        <tbody>
          {lines.slice(0, most).map((line) => (
            <Line key={`${line.table} ${line.place}`} line={line} wording={wording} />
          ))}
        </tbody>
      </table>
      {rest > 0 && (
        <button type="button" class="plain" onClick={() => setMost(most + MORE)}>
          {rest <= MORE
            ? `Show all ${lines.length.toLocaleString('en')}`
            : `Show ${MORE.toLocaleString('en')} more of ${lines.length.toLocaleString('en')}`}
        </button>
      )}
    </>
  );
};

const titleOf = ({ plan, name }: Preview): string =>
  plan.kind === 'backup' && plan.madeAt !== undefined
    ? `${name}, a backup of ${formatDay(localDay(plan.madeAt))}`
    : name;

export const PreviewCard = ({ on, preview, units }: { on: DataSession; preview: Preview; units: Units }) => {
  const { plan, differing, leaveOut, note } = preview;
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => heading.current?.focus(), [preview.file, note]);
  const { refuse, change, keep } = plan.counts;
  const writes = writtenBy(plan);
  return (
    <section class="card data-wide" aria-label="What this file would do" data-testid="preview">
      {note && (
        <p class="problem" role="alert">
          {note}
        </p>
      )}
      <h2 ref={heading} tabIndex={-1}>
        {planSentence(plan)}
      </h2>
      <p class="quiet">{titleOf(preview)}. Nothing is written yet.</p>
      {plan.remarks.map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
      {(change > 0 || keep > 0) && (
        <Choice
          legend="Where a record differs"
          name="differing"
          showLegend
          value={differing}
          options={[
            { value: 'take', label: 'Take it from the file' },
            { value: 'keep', label: 'Keep the one here' },
          ]}
          onChange={(value) => void on.chooseDiffering(value)}
        />
      )}
      {refuse > 0 && writes > 0 && (
        <label class="data-check">
          <input
            type="checkbox"
            checked={leaveOut}
            onChange={(event) => on.chooseLeaveOut(event.currentTarget.checked)}
          />
          <span>Leave out the {counted(refuse, 'refused record')} and import the rest</span>
        </label>
      )}
      {refuse > 0 && !leaveOut && (
        <p class="quiet" id="data-blocked">
          Nothing is imported while records are refused: mend the file and open it again
          {writes > 0 ? ', or leave them out' : ''}.
        </p>
      )}
      <div class="data-actions">
        {writes > 0 && (
          <button
            type="button"
            class="data-main"
            disabled={refuse > 0 && !leaveOut}
            aria-describedby={refuse > 0 && !leaveOut ? 'data-blocked' : undefined}
            onClick={() => void on.carryOut()}
          >
            {importWords(plan, leaveOut)}
          </button>
        )}
        <button type="button" onClick={on.cancel}>
          {writes > 0 ? 'Cancel' : 'Close'}
        </button>
      </div>
      {plan.lines.length > 0 && <Lines key={`${plan.kind} ${differing}`} plan={plan} units={units} />}
    </section>
  );
};
