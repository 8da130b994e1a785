/** The round that is open, one hole at a time: its putts, and the question that comes next. Connects recorder and pads. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { EndRound } from '../../controls/EndRound.tsx';
import { recordsLast } from '../../state/records.ts';
import { type Hand, hand as handSetting, units as unitsSetting } from '../../state/settings.ts';
import { localDay } from '../../store/day.ts';
import type { RoundInHand } from '../../store/records.ts';
import type { Units } from '../../text/format.ts';
import {
  APART_WORDS,
  countWords,
  holesWritten,
  puttsCounted,
  puttWords,
  roundName,
} from '../../text/record.ts';
import { CheckPad } from './CheckPad.tsx';
import { backFrom, isComplete, type Pad, type PuttDraft, padOf, puttOf, type Tap } from './draft.ts';
import { Tick } from './drawings.tsx';
import { HandChoice } from './HandChoice.tsx';
import { HoleStrip } from './HoleStrip.tsx';
import { isFinished, nextHole, puttsOfHole, takenAway, undoTarget } from './hole.ts';
import { BeforePad, LeavePad, ResultPad } from './PuttPads.tsx';
import { Notice, Refused } from './Refusals.tsx';
import type { Recorder } from './recorder.ts';

const QUESTIONS: Readonly<Record<Pad, string>> = {
  putt: 'How far, up or down, which way?',
  result: 'Holed, or how did it miss?',
  leave: 'How much is left?',
  check: 'As entered',
};

/** What stands beside a putt the store has written. */
const SavedMark = () =>
  recordsLast.value ? (
    <span class="rec-saved" data-testid="saved">
      <Tick /> saved
    </span>
  ) : (
    <span class="rec-unsaved">on this page only</span>
  );

const HolePutts = ({ on, inHand, draft, units }: ViewProps) => {
  const putts = puttsOfHole(inHand, draft.hole);
  if (putts.length === 0) return null;
  return (
    <ol class="rec-putts" data-testid="putts">
      {putts.map((putt) => (
        <li key={putt.id} data-putt={putt.id}>
          <button type="button" class="plain" onClick={() => on.correct(putt)}>
            <span class="unseen">Correct putt </span>
            {putt.stroke}. {puttWords(putt, units)}
          </button>
          <SavedMark />
        </li>
      ))}
    </ol>
  );
};

/** The last thing on this page that can be taken back: a tap, or what was saved last. */
const Undo = ({ on, inHand, draft }: ViewProps) => {
  const back = backFrom(draft);
  if (back)
    return (
      <button type="button" data-testid="undo" onClick={on.back}>
        {draft.looked ? 'To the whole putt' : 'Back'}
      </button>
    );
  const target = undoTarget(inHand, draft.hole);
  if (target === undefined) return null;
  return (
    <button type="button" data-testid="undo" onClick={() => void on.undo()}>
      {target.kind === 'putt'
        ? `Undo hole ${target.hole}, putt ${target.putt.stroke}`
        : `Undo hole ${target.hole}, no putt`}
    </button>
  );
};

const FinishedHole = (props: ViewProps) => {
  const { on, inHand, draft } = props;
  const next = nextHole(inHand, draft.hole);
  const without = inHand.round.withoutPutt.includes(draft.hole);
  return (
    <>
      <p class="rec-asked">
        {without
          ? 'Finished without a putt: holed from off the green, or picked up.'
          : 'Finished. Tap a putt above to correct it.'}
        {next === undefined && ' Every hole is written down.'}
      </p>
      {without && (
        <p>
          <button type="button" onClick={() => void on.setWithoutPutt(false)}>
            There was a putt after all
          </button>
        </p>
      )}
      <div class="rec-bar">
        <div class="rec-bar-other">
          <Undo {...props} />
        </div>
        {next !== undefined && (
          <button type="button" class="main" onClick={() => on.goTo(next)}>
            On to hole {next}
          </button>
        )}
      </div>
    </>
  );
};

interface ViewProps {
  readonly on: Recorder;
  readonly inHand: RoundInHand;
  readonly draft: PuttDraft;
  readonly units: Units;
  readonly hand: Hand;
}

const Question = (props: ViewProps & { pad: Pad }) => {
  const { on, inHand, draft, units, hand, pad } = props;
  const onTap = (tap: Tap): void => void on.tap(tap);
  const pads = { draft, units, hand, onTap, undo: <Undo {...props} /> };
  if (pad === 'putt') return <BeforePad {...pads} />;
  if (pad === 'result') return <ResultPad {...pads} />;
  if (pad === 'leave') return <LeavePad {...pads} />;
  const putts = puttsOfHole(inHand, draft.hole);
  return (
    <CheckPad
      {...pads}
      corrects={putts.some(({ id }) => id === draft.id)}
      takesAway={isComplete(draft) ? takenAway(putts, puttOf(draft, 0)) : 0}
      onSave={() => void on.save()}
      onDrop={on.drop}
      onRemove={() => void on.remove()}
    />
  );
};

/** Kinds of strokes that stay out of statistics: small, and explained once. */
const Apart = ({ on, inHand, draft, pad }: ViewProps & { pad: Pad }) => (
  <div class="rec-apart">
    <button
      type="button"
      aria-pressed={draft.offGreen}
      onClick={() => void on.tap({ kind: 'offGreen', offGreen: !draft.offGreen })}
    >
      From off the green
    </button>
    {pad === 'result' && (
      <button type="button" onClick={() => void on.tap({ kind: 'conceded' })}>
        Conceded
      </button>
    )}
    {pad === 'putt' && puttsOfHole(inHand, draft.hole).length === 0 && (
      <button type="button" onClick={() => void on.setWithoutPutt(true)}>
        No putt on this hole
      </button>
    )}
    <details class="rec-why">
      <summary>What are these?</summary>
      <p class="hint">
        {APART_WORDS} From off the green: struck with the putter, but not on the green. No putt: holed from
        off the green, or picked up.
      </p>
    </details>
  </div>
);

const Status = ({ on }: { on: Recorder }) => {
  const saved = on.lastSaved.value;
  return (
    <p class="rec-status" role="status">
      {on.saving.value ? (
        'Saving…'
      ) : saved ? (
        <>
          Hole {saved.hole}, putt {saved.stroke}:{' '}
          <span data-last={saved.id}>
            <SavedMark />
          </span>
        </>
      ) : (
        ''
      )}
    </p>
  );
};

const Leaving = ({ on }: { on: Recorder }) => {
  const leave = on.leaving.value;
  if (leave === undefined) return null;
  return (
    <Notice of="leaving">
      <p>The putt you are entering is not saved. Leave it?</p>
      <div class="rec-choices">
        <button type="button" onClick={on.stay}>
          Stay with it
        </button>
        <button type="button" onClick={leave}>
          Leave it unsaved
        </button>
      </div>
    </Notice>
  );
};

const Hole = (props: ViewProps) => {
  const { on, inHand, draft, units } = props;
  const putts = puttsOfHole(inHand, draft.hole);
  const at = putts.findIndex(({ id }) => id === draft.id);
  const stroke = at < 0 ? putts.length + 1 : at + 1;
  const finished = isFinished(inHand, draft.hole) && !on.unsaved.value;
  const pad = padOf(draft);
  const refusal = on.refusal.value;
  const question = useRef<HTMLHeadingElement>(null);
  const key = finished ? 'finished' : `${draft.hole} ${stroke} ${pad}`;
  const shown = useRef(key);
  // The button that was pressed is gone with its question: whoever goes by keys goes on from the next one.
  useEffect(() => {
    if (shown.current === key) return;
    shown.current = key;
    const active = document.activeElement;
    if (active === null || active === document.body) question.current?.focus({ preventScroll: true });
  }, [key]);
  return (
    <>
      <HoleStrip inHand={inHand} hole={draft.hole} onHole={on.goTo} />
      <header class="rec-head">
        <h1>Hole {draft.hole}</h1>
        <Status on={on} />
      </header>
      {refusal && (
        <Refused
          refusal={refusal}
          hole={draft.hole}
          onDevice={putts}
          corrects={at >= 0}
          units={units}
          onSave={(over) => void on.save(over)}
          onDrop={on.drop}
        />
      )}
      <Leaving on={on} />
      <HolePutts {...props} />
      <section class="rec-pad" data-pad={finished ? 'finished' : pad} aria-labelledby="rec-question">
        <h2 id="rec-question" ref={question} tabIndex={-1}>
          {finished ? `Hole ${draft.hole} is finished` : `Putt ${stroke}: ${QUESTIONS[pad]}`}
        </h2>
        {finished ? <FinishedHole {...props} /> : <Question {...props} pad={pad} />}
      </section>
      {!finished && (pad === 'putt' || pad === 'result') && <Apart {...props} pad={pad} />}
    </>
  );
};

/** A round begun on another day: it may have been forgotten. */
const Forgotten = ({ inHand, onGoOn }: { inHand: RoundInHand; onGoOn: () => void }) => (
  <section class="card" data-testid="forgotten">
    <h1>A round is still open</h1>
    <p>
      {roundName(inHand.round)}: {countWords(puttsCounted(inHand.putts), 'putt')} on{' '}
      {countWords(holesWritten(inHand.round, inHand.putts), 'hole')} of {inHand.round.holes}. Go on with it,
      or end it?
    </p>
    <div class="rules-ways">
      <button type="button" class="main" onClick={onGoOn}>
        Go on with it
      </button>
      <EndRound inHand={inHand} />
    </div>
  </section>
);

export const RoundView = ({ on, inHand }: { on: Recorder; inHand: RoundInHand }) => {
  // Asked when the page opens, not when midnight passes on the last green.
  const [goesOn, setGoesOn] = useState(() => inHand.round.day === localDay(Date.now()));
  const draft = on.draft.value;
  if (!goesOn) return <Forgotten inHand={inHand} onGoOn={() => setGoesOn(true)} />;
  if (draft === undefined) return null;
  return (
    <div class="rec-round">
      <Hole on={on} inHand={inHand} draft={draft} units={unitsSetting.value} hand={handSetting.value} />
      <footer class="rec-end">
        <EndRound inHand={inHand} unsaved={on.unsaved.value} />
        <HandChoice />
      </footer>
    </div>
  );
};
