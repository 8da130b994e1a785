/** What went into the fit, what did not and why, and what is assumed. */
import { ASSUMED, type CountedFacts, countedWords, passedOverWords } from '../../text/errors.ts';
import { asked, passedOverBy } from './question.ts';
import { view } from './view.ts';
import { behind } from './work.ts';

export const Counted = () => {
  const found = view.value;
  const record = asked.value?.record;
  // Of another state of the record the counts are not known any more.
  const now = behind.value ? undefined : record;
  const facts: CountedFacts | undefined = found &&
    now && {
      putts: found.answer.putts,
      practicePutts: found.answer.practicePutts,
      measuredStrokes: found.answer.measuredStrokes,
      sets: now.sets?.length ?? 0,
      ...passedOverBy(now, found.answer.passedOver),
    };
  const passed = facts && passedOverWords(facts);
  return (
    <section class="card" aria-labelledby="counted-title">
      <h2 id="counted-title">What this rests on</h2>
      {facts && <p data-testid="counted">{countedWords(facts)}</p>}
      {passed !== undefined && <p data-testid="passed-over">{passed}</p>}
      <ul class="errors-list">
        {ASSUMED.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p class="hint">
        Thousands of players are played over every putt, and those who would have written such a record count
        most (Bayes’ rule). The equations, and how often such ranges held the truth of simulated players, are
        in sim/evidence/MODEL.md of the program, “The player from the record”.
      </p>
    </section>
  );
};
