/** The question beside the map: what is given, the aim as words and as typed, the commitment. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { readDrill } from '../../../drills/index.ts';
import { Choice } from '../../controls/Choice.tsx';
import { Field } from '../../controls/Field.tsx';
import {
  formatGreenSpeed,
  formatLength,
  formatShort,
  formatSlope,
  holeWordsShort,
  sideOf,
  type Units,
} from '../../text/format.ts';
import { aimFieldText, ownAimText, parseAim } from './aimText.ts';
import type { Asked } from './asked.ts';
import { QUESTION_WORDS } from './words.ts';

/** Moves the focus to a new heading, so that keyboard and screen reader follow the step. */
export const useFocusOn = (key: unknown) => {
  const heading = useRef<HTMLHeadingElement>(null);
  // Before anything is painted: a focus that arrives later would take it from whoever has moved on.
  useLayoutEffect(() => heading.current?.focus(), [key]);
  return heading;
};

const Fact = ({ name, value }: { name: string; value: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </div>
);

/** What is given with a question; `all`: after the commitment. */
export const Given = ({ asked, units, all = false }: { asked: Asked; units: Units; all?: boolean }) => {
  const { question, set } = asked;
  const { pace, firmPace } = question;
  return (
    <dl class="read-given">
      <Fact name="Length" value={formatLength(question.length, units)} />
      <Fact name="Green speed" value={formatGreenSpeed(question.greenSpeed)} />
      {firmPace !== undefined ? (
        <>
          <Fact name="Die" value={`${formatShort(pace, units)} past`} />
          <Fact name="Firm" value={`${formatShort(firmPace, units)} past`} />
        </>
      ) : (
        // How fast it is to be played says nothing of how steep it is.
        (set.kind !== 'slope' || all) && <Fact name="Pace" value={`${formatShort(pace, units)} past`} />
      )}
      {(all || readDrill(set.drillId)?.shown.slope === true) && (
        <Fact
          name={question.ground.kind === 'plane' ? 'Slope' : 'Mean slope'}
          value={formatSlope(question.slope)}
        />
      )}
    </dl>
  );
};

/** Which putt of the set this is, as a row of ticks; the words beside it say the same. */
export const Progress = ({ asked: { set, question } }: { asked: Asked }) => (
  <p class="quiet read-progress">
    <span>{set.drillName}</span>
    <span class="read-ticks" aria-hidden="true">
      {Array.from({ length: set.size }, (_unused, index) => index + 1).map((number) => (
        <i key={number} class={number < question.number ? 'done' : number === question.number ? 'now' : ''} />
      ))}
    </span>
  </p>
);

export const QuestionCard = ({ asked, units }: { asked: Asked; units: Units }) => {
  const { question, set } = asked;
  const heading = useFocusOn(`${set.id} ${question.number}`);
  return (
    <section class="card read-head" aria-label="Question">
      <Progress asked={asked} />
      <h1 ref={heading} tabIndex={-1}>
        Putt {question.number} of {set.size}: {QUESTION_WORDS[set.kind]}
      </h1>
      <Given asked={asked} units={units} />
    </section>
  );
};

type Side = ReturnType<typeof sideOf>;

export interface AimPanelProps {
  /** Changes with the question: what was typed for one putt is not left standing for the next. */
  readonly asked: Asked;
  /** m, positive left */
  readonly aim: number;
  readonly units: Units;
  readonly onAim: (aim: number) => void;
  readonly onCommit: () => void;
  readonly onLeave: () => void;
}

export const AimPanel = ({ asked, aim, units, onAim, onCommit, onLeave }: AimPanelProps) => {
  // An aim at the middle of the hole has no side of its own: that is the one chosen, or typed or shown before.
  const question = `${asked.set.id} ${asked.question.number}`;
  const [chosen, setChosen] = useState<{ readonly question: string; readonly side: Side }>();
  const side = aim === 0 ? (chosen?.question === question ? chosen.side : 'left') : sideOf(aim);
  const aimAt = (size: number, to: Side): void => {
    setChosen({ question, side: to });
    onAim(to === 'left' || size === 0 ? size : -size);
  };
  return (
    <form
      class="card read-panel"
      aria-label="Your aim"
      onSubmit={(event) => {
        event.preventDefault();
        // What is typed but not understood is not what would be committed: back to it and its sentence.
        const bad = event.currentTarget.querySelector<HTMLElement>('[aria-invalid="true"]');
        if (bad === null) onCommit();
        else bad.focus();
      }}
    >
      <p>
        <output class="read-aim-words" data-testid="aim-words">
          {ownAimText(aim, units)}: {holeWordsShort(aim)}
        </output>
      </p>
      <p class="read-actions">
        <button type="submit" class="read-main">
          Commit to this aim
        </button>
        <button type="button" class="plain" onClick={onLeave}>
          Leave the set
        </button>
      </p>
      <div class="read-aim-fields">
        <Field
          key={`${asked.set.id} ${asked.question.number} ${units}`}
          id="read-aim"
          label={`Or type it (${units === 'imperial' ? 'inches' : 'cm'} from centre)`}
          text={aimFieldText(aim, units)}
          inputMode="text"
          onText={(text) => {
            const parsed = parseAim(text, units);
            if (!parsed.ok) return parsed.problem;
            aimAt(parsed.size, parsed.side ?? side);
            return undefined;
          }}
        />
        <Choice
          legend="Side of the hole"
          name="read-side"
          value={side}
          options={[
            { value: 'left', label: 'left' },
            { value: 'right', label: 'right' },
          ]}
          onChange={(value) => aimAt(Math.abs(aim), value)}
        />
      </div>
      <p class="hint">
        The aim is where your start line passes the hole. Pace is how far past a covered hole the ball would
        stop. Strokes run downhill from their thick end and are longer where it is steeper. Keys: the aim on
        the map moves by arrow keys, with Shift in finer steps; Enter commits.
      </p>
    </form>
  );
};
