/** The scores of this drill: what they say together, test against retest, and each of them, to be taken back if wrong. */
import { useSignal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import { RemoveButton } from '../../controls/RemoveButton.tsx';
import { type DrillHistory, type HistoryRow, historyOf } from '../../state/likeScores.ts';
import { followed, ownDatabase } from '../../state/records.ts';
import { drillResultsOf } from '../../store/drillResults.ts';
import { isOfPlan } from '../../store/planScores.ts';
import type { KeptResult } from '../../store/recordSchema.ts';
import { formatDay, formatGreenSpeed } from '../../text/format.ts';
import { plural } from '../../text/phrases.ts';
import { chosen, groundKind } from './state.ts';
import { changeSentences, judgedWords, missingWords } from './words.ts';
import { expectation } from './work.ts';

/** Scores shown before the person asks for all. */
const SHOWN = 12;

const store = async () => drillResultsOf((await ownDatabase()).database);

const whereWords = ({ id, ground, greenSpeed, version }: KeptResult, now: number): string =>
  [
    ground,
    ...(greenSpeed === undefined ? [] : [formatGreenSpeed(greenSpeed)]),
    ...(isOfPlan(id) ? ['from The week'] : []),
    ...(version === now ? [] : [`version ${version} of the drill`]),
  ].join(', ');

const Row = ({ row: { result, passed }, version }: { row: HistoryRow; version: number }) => {
  const when = formatDay(result.day);
  return (
    <li>
      <span>
        <strong>{result.score}</strong>
        {passed !== undefined && (passed ? ', passed' : ', not passed')}
        <span class="quiet">
          {when}; {whereWords(result, version)}
          {result.note !== undefined && `; ${result.note}`}
        </span>
      </span>
      <RemoveButton
        what={`${result.score} of ${when}`}
        onRemove={async () => (await store()).remove(result.id)}
      />
    </li>
  );
};

const Retest = ({ history, onRetest }: { history: DrillHistory; onRetest: (id: string) => void }) => {
  const { retests, retest, change, counts } = history;
  if (retest === undefined || change === undefined) return null;
  return (
    <>
      <h3>Test and retest</h3>
      <div class="field">
        <label for="retest-from">The retest begins with</label>
        <select id="retest-from" value={retest.id} onChange={(event) => onRetest(event.currentTarget.value)}>
          {retests.map(({ id, day, score }) => (
            <option key={id} value={id}>
              {formatDay(day)}: {score}
            </option>
          ))}
        </select>
      </div>
      <div data-testid="change" aria-live="polite">
        {changeSentences(change, counts).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </>
  );
};

const Said = ({ history }: { history: DrillHistory }) => {
  const { judged, unlike, impossible } = history;
  return (
    <>
      {judged && (
        <p data-testid="judged">
          {judgedWords(judged)} {missingWords(judged)}
        </p>
      )}
      {unlike && (
        <p data-testid="unlike">
          {plural(unlike.count, 'score')} not compared with the others. {unlike.reason}
        </p>
      )}
      {impossible > 0 && (
        <p>
          {plural(impossible, 'score')} left out: this drill cannot give such a score. Look at the list below.
        </p>
      )}
    </>
  );
};

export const History = () => {
  const [found] = useState(() => followed((database) => drillResultsOf(database).list()));
  useEffect(() => found.stop, [found]);
  const retestFrom = useSignal<string | undefined>(undefined);
  const everything = useSignal(false);
  const drill = chosen.value;
  const list = found.answer.value;
  if (list === undefined) return null;
  const expected = expectation.value;
  const history = historyOf({
    drill,
    results: list.records,
    kind: groundKind.value,
    expectation: expected?.status === 'ok' ? expected : undefined,
    retestFrom: retestFrom.value,
  });
  const rows = everything.value ? history.rows : history.rows.slice(0, SHOWN);
  return (
    <section class="card practice-history" aria-labelledby="history-title" data-testid="history">
      <h2 id="history-title">Your scores</h2>
      {history.rows.length === 0 && <p class="quiet">No score of this drill yet.</p>}
      <Said history={history} />
      <Retest
        history={history}
        onRetest={(id) => {
          retestFrom.value = id;
        }}
      />
      <ul data-testid="scores">
        {rows.map((row) => (
          <Row key={row.result.id} row={row} version={drill.version} />
        ))}
      </ul>
      {history.rows.length > rows.length && (
        <button
          type="button"
          class="plain"
          onClick={() => {
            everything.value = true;
          }}
        >
          Show all {history.rows.length}
        </button>
      )}
      {list.unreadable > 0 && (
        <p class="hint">
          {plural(list.unreadable, 'score')} on this device cannot be read by this version of the page; they
          stay there.
        </p>
      )}
    </section>
  );
};
