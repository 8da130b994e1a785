/** Writing a score down: a button for each number, or a field where there are many. Saved is said only when the store has said so. */
import { useEffect } from 'preact/hooks';
import { type PuttingDrill, scoreRange } from '../../../sim/index.ts';
import { Choice } from '../../controls/Choice.tsx';
import { Field } from '../../controls/Field.tsx';
import { ownDatabase, recordsLast } from '../../state/records.ts';
import { localDay } from '../../store/day.ts';
import { drillResultsOf } from '../../store/drillResults.ts';
import { LONGEST_NAME } from '../../store/recordSchema.ts';
import { scoreWords } from '../../text/drills.ts';
import { formatGreenSpeed } from '../../text/format.ts';
import { parseQuantity } from '../../text/parse.ts';
import {
  changeEntry,
  type Entry,
  type EntryWorld,
  entryOf,
  forgetWritten,
  saveEntry,
  stepScore,
} from './entry.ts';
import { chooseGround, chosen, GROUND_OPTIONS, ground } from './state.ts';

/** More numbers than this are typed or stepped. */
const MOST_BUTTONS = 21;

const WORLD: EntryWorld = {
  keep: async (result) => drillResultsOf((await ownDatabase()).database).keep(result),
  newId: () => crypto.randomUUID(),
  now: Date.now,
  dayOf: localDay,
};

interface ScoreProps {
  readonly drill: PuttingDrill;
  readonly entry: Entry;
}

const Buttons = ({ drill, entry }: ScoreProps) => {
  const { least, most } = scoreRange(drill);
  return (
    <fieldset class="practice-numbers">
      <legend>Score: {scoreWords(drill)}</legend>
      {Array.from({ length: most - least + 1 }, (_, index) => least + index).map((score) => (
        <label key={score}>
          <input
            type="radio"
            name="score"
            value={score}
            checked={entry.score === score}
            onChange={() => changeEntry(drill, { score })}
          />
          <span>{score}</span>
        </label>
      ))}
    </fieldset>
  );
};

const Typed = ({ drill, entry }: ScoreProps) => {
  const { least: min, most: max } = scoreRange(drill);
  return (
    <div class="practice-typed">
      <Field
        id={`score-${drill.id}`}
        label={`Score: ${scoreWords(drill)}`}
        text={entry.score === undefined ? '' : String(entry.score)}
        onText={(text) => {
          const parsed = parseQuantity(text, {
            what: 'a whole score',
            unit: [],
            example: String(Math.round((min + max) / 2)),
            step: 1,
            min,
            max,
          });
          changeEntry(drill, { score: parsed.ok ? parsed.value : undefined });
          return parsed.ok ? undefined : parsed.problem;
        }}
      />
      {[-5, -1, 1, 5].map((by) => (
        <button
          key={by}
          type="button"
          aria-label={`${Math.abs(by)} ${by > 0 ? 'more' : 'fewer'}`}
          onClick={() => stepScore(drill, by)}
        >
          {by > 0 ? `+${by}` : `−${-by}`}
        </button>
      ))}
    </div>
  );
};

const STATES: Readonly<Record<Entry['state'], () => string>> = {
  entering: () => '',
  refused: () => '',
  saving: () => 'Saving…',
  saved: () => (recordsLast.value ? 'Saved.' : 'Kept on this page only, until you close it.'),
};

/** What an earlier page left on the form, and had written all the same. */
const useWritten = (): void =>
  useEffect(() => {
    const look = async (): Promise<void> => {
      const { records } = await drillResultsOf((await ownDatabase()).database).list();
      forgetWritten(new Set(records.map(({ id }) => id)));
    };
    // Where the records cannot be read the entry stays.
    look().catch(() => undefined);
  }, []);

export const ScoreForm = () => {
  useWritten();
  const drill = chosen.value;
  const entry = entryOf(drill);
  const { least, most } = scoreRange(drill);
  const on = ground.value;
  const Score = most - least < MOST_BUTTONS ? Buttons : Typed;
  return (
    <section class="card practice-score" aria-labelledby="score-title" data-testid="score">
      <h2 id="score-title">Record a score</h2>
      <Score key={drill.id} drill={drill} entry={entry} />
      {drill.ground === 'both' && (
        <Choice
          legend="On what?"
          name="score-ground"
          showLegend
          value={on.kind}
          options={GROUND_OPTIONS}
          onChange={chooseGround}
        />
      )}
      <label class="tick">
        <input
          type="checkbox"
          checked={entry.speedKnown}
          onChange={(event) => changeEntry(drill, { speedKnown: event.currentTarget.checked })}
        />
        <span>
          {on.kind === 'grass' ? 'Green speed' : 'Speed of the carpet'} known:{' '}
          {formatGreenSpeed(on.greenSpeed)}
        </span>
      </label>
      <div class="field">
        <label for="score-note">Note, if you like</label>
        <input
          id="score-note"
          type="text"
          maxLength={LONGEST_NAME}
          autocomplete="off"
          value={entry.note}
          onInput={(event) => changeEntry(drill, { note: event.currentTarget.value })}
        />
      </div>
      {entry.state === 'refused' && (
        <p class="problem" role="alert">
          Not saved: the device refused to write (full or forbidden storage). Free some space, and press
          again; the score stays here.
        </p>
      )}
      <div class="practice-save">
        <button
          type="button"
          class="main"
          disabled={entry.score === undefined || entry.state === 'saving'}
          onClick={() => void saveEntry(drill, on, WORLD)}
        >
          {entry.score === undefined ? 'Save the score' : `Save ${entry.score} on ${on.kind}`}
        </button>
        <p role="status" class="quiet">
          {STATES[entry.state]()}
        </p>
      </div>
    </section>
  );
};
