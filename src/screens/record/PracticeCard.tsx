/** Practice sets: so many putts from one distance, entered without typing; the newest ones, and the way to be rid of one. */
import { useEffect, useState } from 'preact/hooks';
import type { MissCounts } from '../../../sim/index.ts';
import { RemoveButton } from '../../controls/RemoveButton.tsx';
import { followed, ownRecords, recordsLast } from '../../state/records.ts';
import { hand as handSetting, units as unitsSetting } from '../../state/settings.ts';
import { localDay } from '../../store/day.ts';
import { BREAK_WAYS, CLIMBS, GROUNDS } from '../../store/recordSchema.ts';
import { recordsOf } from '../../store/records.ts';
import { formatDay } from '../../text/format.ts';
import { BREAK_WORDS, CLIMB_WORDS, practiceWords } from '../../text/record.ts';
import { Bar } from './Bar.tsx';
import { MIDDLE_DISTANCE, usualDistances } from './distances.ts';
import { BreakDrawing, ClimbDrawing, Tick } from './drawings.tsx';
import { LengthPad } from './LengthPad.tsx';
import { Picks } from './Picks.tsx';
import { NO_PRACTICE, type PracticeDraft, setOf, withCount, withMiss } from './practice.ts';

const SHOWN = 10;
const MISSES = ['high', 'low', 'short', 'past'] as const satisfies readonly (keyof MissCounts)[];

interface CountProps {
  readonly name: string;
  readonly value: number;
  readonly steps: readonly number[];
  readonly onStep: (by: number) => void;
}

const Count = ({ name, value, steps, onStep }: CountProps) => (
  // biome-ignore lint/a11y/useSemanticElements: one number and its steps, not form fields
  <div class="rec-count" role="group" aria-label={name}>
    <span>
      <span class="quiet">{name}</span>
      <output>{value}</output>
    </span>
    {steps.map((by) => (
      <button
        key={by}
        type="button"
        aria-label={`${name}: ${Math.abs(by)} ${by > 0 ? 'more' : 'fewer'}`}
        onClick={() => onStep(by)}
      >
        {by > 0 ? `+${by}` : `−${-by}`}
      </button>
    ))}
  </div>
);

const Form = ({ draft, onDraft }: { draft: PracticeDraft; onDraft: (draft: PracticeDraft) => void }) => {
  const units = unitsSetting.value;
  return (
    <>
      <LengthPad
        legend="From how far?"
        value={draft.distance}
        usual={usualDistances(units)}
        middle={MIDDLE_DISTANCE[units]}
        units={units}
        hand={handSetting.value}
        onLength={(distance) => onDraft({ ...draft, distance })}
      />
      <Count
        name="Putts"
        value={draft.attempts}
        steps={[-10, -1, 1, 10]}
        onStep={(by) => onDraft(withCount(draft, 'attempts', by))}
      />
      <Count
        name="Holed"
        value={draft.holed}
        steps={[-5, -1, 1, 5]}
        onStep={(by) => onDraft(withCount(draft, 'holed', by))}
      />
      <Picks
        legend="On what?"
        picks={GROUNDS.map((value) => ({ value, label: value }))}
        isChosen={(value) => draft.ground === value}
        onPick={(ground) => onDraft({ ...draft, ground })}
      />
      <details>
        <summary>More about these putts</summary>
        {MISSES.map((which) => (
          <Count
            key={which}
            name={`Missed ${which}`}
            value={draft.misses[which] ?? 0}
            steps={[-1, 1]}
            onStep={(by) => onDraft(withMiss(draft, which, by))}
          />
        ))}
        <Picks
          legend="Up or down?"
          picks={CLIMBS.map((value) => ({
            value,
            label: CLIMB_WORDS[value],
            drawing: <ClimbDrawing climb={value} />,
          }))}
          isChosen={(value) => draft.climb === value}
          onPick={(climb) => onDraft({ ...draft, climb: draft.climb === climb ? undefined : climb })}
        />
        <Picks
          legend="Which way did they break?"
          picks={BREAK_WAYS.map((value) => ({
            value,
            label: BREAK_WORDS[value],
            drawing: <BreakDrawing breaks={value} />,
          }))}
          isChosen={(value) => draft.breaks === value}
          onPick={(breaks) => onDraft({ ...draft, breaks: draft.breaks === breaks ? undefined : breaks })}
        />
      </details>
    </>
  );
};

const Recent = () => {
  const [recent] = useState(() => followed((database) => recordsOf(database).recentPractice(SHOWN)));
  useEffect(() => recent.stop, [recent]);
  const units = unitsSetting.value;
  return (
    <ul class="rec-list" data-testid="practice-list">
      {recent.answer.value?.map((set) => (
        <li key={set.id}>
          <span>
            {practiceWords(set, units)}
            <span class="quiet">
              {formatDay(set.day)}, {recordsLast.value ? 'saved' : 'on this page only'}
            </span>
          </span>
          <RemoveButton
            what={`${practiceWords(set, units)} of ${formatDay(set.day)}`}
            onRemove={async () => (await ownRecords()).removePractice(set.id)}
          />
        </li>
      ))}
    </ul>
  );
};

type State = 'entering' | 'saving' | 'saved' | 'refused';

export const PracticeCard = () => {
  const [draft, setDraft] = useState(NO_PRACTICE);
  const [state, setState] = useState<State>('entering');
  const change = (next: PracticeDraft): void => {
    setDraft(next);
    setState('entering');
  };
  const save = async (): Promise<void> => {
    const now = Date.now();
    const set = setOf(draft, { id: crypto.randomUUID(), day: localDay(now), recordedAt: now });
    if (set === undefined || state === 'saving') return;
    setState('saving');
    try {
      await (await ownRecords()).keepPractice(set);
      // The next set is mostly from elsewhere on the same ground.
      setDraft({ ...NO_PRACTICE, attempts: draft.attempts, ground: draft.ground });
      setState('saved');
    } catch {
      setState('refused');
    }
  };
  return (
    <section class="card" data-testid="practice">
      <details>
        <summary>
          <h2>Enter a practice set</h2>
        </summary>
        <Form draft={draft} onDraft={change} />
        {state === 'refused' && (
          <p class="problem" role="alert">
            Not saved: the device refused to write (full or forbidden storage). Free some space, and press
            again; the set stays here.
          </p>
        )}
        <Bar
          hand={handSetting.value}
          other={
            <p role="status" class="quiet">
              {state === 'saving' && 'Saving…'}
              {state === 'saved' && (
                <span class="rec-saved">
                  <Tick /> {recordsLast.value ? 'saved' : 'on this page only'}
                </span>
              )}
            </p>
          }
          main={
            <button
              type="button"
              class="main"
              disabled={draft.distance === undefined}
              onClick={() => void save()}
            >
              Save the set
            </button>
          }
        />
      </details>
      <Recent />
    </section>
  );
};
