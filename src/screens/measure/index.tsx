/**
 * Measuring at home and on the practice green: one guided form for each thing. Sentence first, then the rows, then how to do it.
 * Connects drafts, outcome and words; leaves out what they are.
 */
import { useEffect, useState } from 'preact/hooks';
import { Link, useLocation, useParams } from 'wouter-preact';
import { Choice } from '../../controls/Choice.tsx';
import { Narrowed } from '../../controls/Narrowed.tsx';
import { RulesCaution } from '../../controls/RulesCaution.tsx';
import { hasNarrowed, narrowedBy, presetInUse, step, units } from '../../state/settings.ts';
import { localDay } from '../../store/day.ts';
import { measuredWords } from '../../text/measure.ts';
import { oneTargetWords } from '../../text/narrowed.ts';
import { plural } from '../../text/phrases.ts';
import { chooseForm, keepDrafts, state } from './drafts.ts';
import { Entries } from './Entries.tsx';
import { FORM_NAMES, type FormId, formOf, isFormId } from './forms.ts';
import { type Guide, guideOf } from './guides.ts';
import { Kept } from './Kept.tsx';
import { keepMeasured } from './keeping.ts';
import './measure.css';
import { Sketch } from './Sketch.tsx';
import { TiltPanel } from './TiltPanel.tsx';
import { sittingOf, usesOf } from './uses.ts';
import { type Outcome, outcomeOf } from './work.ts';

const Answer = ({ form, outcome, question }: { form: FormId; outcome: Outcome; question: string }) => {
  const [done, setDone] = useState('');
  const { kept, leftOut } = outcome;
  const words = kept && measuredWords(kept, units.value);
  // What was said of one result is not said of the next.
  const answer = words?.answer ?? '';
  useEffect(() => setDone(''), [answer, form]);
  const uses = kept === undefined ? [] : usesOf(kept, units.value);
  const sitting = kept && sittingOf(kept);
  // What is left to press would put one number in the place of the family.
  const narrows = sitting !== undefined && hasNarrowed(sitting);
  const keep = (used: string): void => {
    if (kept === undefined) return;
    setDone(used);
    void keepMeasured(kept).then((words) => setDone(`${used} ${words}`.trim()));
  };
  return (
    <section class="card measure-answer" aria-label="Answer">
      <Choice
        legend="What to measure"
        name="measure-form"
        value={form}
        options={FORM_NAMES}
        onChange={chooseForm}
      />
      <h1>{question}</h1>
      <div aria-live="polite" data-testid="measured">
        {words === undefined ? (
          <p class="quiet">Enter what you measured below; the answer comes here, with its margin.</p>
        ) : (
          <>
            <p class="measure-says">{words.answer}</p>
            {words.more.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </>
        )}
        {leftOut > 0 && (
          <p class="quiet">{plural(leftOut, 'row')} not counted yet: not whole, or to be mended.</p>
        )}
      </div>
      {kept !== undefined && (
        <p class="measure-actions">
          {uses.map(({ label, take }, index) => (
            <button
              key={label}
              type="button"
              class={index === 0 && !narrows ? 'measure-main' : undefined}
              // Used is kept too: what every screen reckons with can be looked up later, with its day.
              onClick={() => keep(take())}
            >
              {label}
            </button>
          ))}
          <button
            type="button"
            class={uses.length === 0 ? 'measure-main' : undefined}
            onClick={() => keep('')}
          >
            Keep this
          </button>
        </p>
      )}
      {kept?.by === 'paceRolls' && kept.result.oneTarget && presetInUse.value && (
        <p class="hint">{oneTargetWords(presetInUse.value.name)}</p>
      )}
      <p role="status" class="measure-done">
        {done}
      </p>
      {(form === 'pace' || form === 'startLine') && <Narrowed />}
      {(form === 'pace' || form === 'startLine') && narrowedBy.value.length > 0 && (
        <p>
          <Link href="/">What it makes of die or firm</Link>
        </p>
      )}
    </section>
  );
};

const HowTo = ({ guide, form, choices }: { guide: Guide; form: FormId; choices: Record<string, string> }) => (
  <section class="card measure-how" aria-labelledby="measure-how">
    <h2 id="measure-how">How to</h2>
    <Sketch form={form} choices={choices} />
    <p>
      <strong>You need:</strong> {guide.need}
    </p>
    <ol>
      {guide.steps.map((one) => (
        <li key={one}>{one}</li>
      ))}
    </ol>
    {guide.mind.map((one) => (
      <p key={one} class="hint">
        {one}
      </p>
    ))}
  </section>
);

export const MeasureScreen = () => {
  useEffect(keepDrafts, []);
  const { form: wanted } = useParams<{ form?: string }>();
  const [, navigate] = useLocation();
  useEffect(() => {
    if (wanted === undefined) return;
    if (isFormId(wanted)) chooseForm(wanted);
    // Chosen once: what is chosen afterwards must survive a reload.
    navigate('/measure', { replace: true });
  }, [wanted, navigate]);
  const { form: id, drafts } = state.value;
  const form = formOf(id);
  const draft = drafts[id];
  const own = step.value;
  const guide = guideOf(id, draft.choices, units.value);
  const outcome = outcomeOf(id, draft, { day: localDay(Date.now()), step: own });
  return (
    <div class="measure">
      <Answer form={id} outcome={outcome} question={guide.question} />
      <div class="measure-left">
        {id === 'slope' && <TiltPanel draft={draft} />}
        <Entries form={form} draft={draft} units={units.value} step={own} />
        <Kept />
      </div>
      <div class="measure-right">
        <HowTo guide={guide} form={id} choices={draft.choices} />
        <RulesCaution />
        <p class="hint">
          Measure on practice days. During a round you may neither gauge a slope with a device (Rule 4.3a) nor
          roll a ball to test the green (Rule 13.1e).
        </p>
      </div>
    </div>
  );
};
