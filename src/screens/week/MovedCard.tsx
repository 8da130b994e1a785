/** After the next rounds: what moved since the plan began, and what cannot be said yet. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { benchmark } from '../../state/costs/question.ts';
import { followed, ownDatabase } from '../../state/records.ts';
import { shownRecords, shownSource } from '../../state/shownRecords.ts';
import { drillResultsOf } from '../../store/drillResults.ts';
import type { Plan } from '../../store/planSchema.ts';
import { readStoreOf } from '../../store/readSets.ts';
import type { KeptSet } from '../../store/schema.ts';
import { formatDay } from '../../text/format.ts';
import { benchmarkWords } from '../../text/phrases.ts';
import { movedSince } from './moved.ts';
import { testScores } from './testScores.ts';
import { betweenWords, MOVED_MEANING, movedHeadline, movedWords } from './words.ts';

/** The person's own read sets; the invented player has none. */
const useReadSets = (): readonly KeptSet[] => {
  const [sets, setSets] = useState<readonly KeptSet[]>([]);
  useEffect(() => {
    let over = false;
    const look = async (): Promise<void> => {
      const { records: found } = await readStoreOf((await ownDatabase()).database).list();
      if (!over) setSets(found);
    };
    // Without them reading counts as not known; the records' own problem is told by the screen.
    look().catch(() => undefined);
    return () => {
      over = true;
    };
  }, []);
  return sets;
};

export const MovedCard = ({ plan }: { plan: Plan }) => {
  const sets = useReadSets();
  const [scores] = useState(() => followed((database) => drillResultsOf(database).list()));
  useEffect(() => scores.stop, [scores]);
  const results = scores.answer.value?.records;
  const records = shownRecords.value;
  const judge = benchmark.value;
  const own = shownSource.value === 'own';
  const moved = useMemo(
    () =>
      records &&
      results &&
      movedSince({ plan, records, results, readSets: own ? sets : [], benchmark: judge }),
    [plan, records, results, sets, own, judge],
  );
  const between = (results && testScores(plan, results)?.between) ?? [];
  return (
    <section class="card" aria-labelledby="moved-title" data-testid="week-moved">
      <h2 id="moved-title">What has moved since {formatDay(plan.start)}?</h2>
      {moved === undefined ? (
        <p class="quiet">Looking up the records…</p>
      ) : (
        <>
          <p class="week-words">{movedHeadline(moved)}</p>
          <ul class="week-list">
            {moved.map((one) => (
              <li key={one.topic}>{movedWords(one)}</li>
            ))}
          </ul>
          {between.length > 0 && <p>{betweenWords(between.length)}</p>}
          <p class="quiet">
            {MOVED_MEANING} Strokes and putts are against {benchmarkWords(judge.name)}.
          </p>
        </>
      )}
    </section>
  );
};
