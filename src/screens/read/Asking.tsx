/** The question beside the map: what is given, the aim as words and as typed, the commitment. */
import { useLayoutEffect, useRef } from 'preact/hooks';
import { readDrill } from '../../../drills/index.ts';
import { Choice } from '../../app/Choice.tsx';
import { Field } from '../../app/Field.tsx';
import {
  formatAim,
  formatGreenSpeed,
  formatLength,
  formatShort,
  formatSlope,
  holeWords,
  sideOf,
  type Units,
} from '../../text/format.ts';
import { aimFieldText, parseAim } from './aimText.ts';
import type { Asked } from './session.ts';

/** Moves the focus to a new heading, so that keyboard and screen reader follow the step. */
export const useFocusOn = (key: unknown) => {
  const heading = useRef<HTMLHeadingElement>(null);
  // Before anything is painted: a focus that arrives later would take it from whoever has moved on.
  useLayoutEffect(() => heading.current?.focus(), [key]);
  return heading;
};

export const Given = ({ asked, units, all = false }: { asked: Asked; units: Units; all?: boolean }) => {
  const { question, set } = asked;
  const slopeShown = all || readDrill(set.drillId)?.shown.slope === true;
  return (
    <dl class="read-given">
      <div>
        <dt>Length</dt>
        <dd>{formatLength(question.length, units)}</dd>
      </div>
      <div>
        <dt>Green speed</dt>
        <dd>{formatGreenSpeed(question.greenSpeed)}</dd>
      </div>
      <div>
        <dt>Pace</dt>
        <dd>{formatShort(question.pace, units)} past</dd>
      </div>
      {slopeShown && (
        <div>
          <dt>{question.ground.kind === 'plane' ? 'Slope' : 'Mean slope'}</dt>
          <dd>{formatSlope(question.slope)}</dd>
        </div>
      )}
    </dl>
  );
};

export interface AskingProps {
  readonly asked: Asked;
  /** m, positive left */
  readonly aim: number;
  readonly units: Units;
  readonly onAim: (aim: number) => void;
  readonly onCommit: () => void;
  readonly onLeave: () => void;
}

export const Asking = ({ asked, aim, units, onAim, onCommit, onLeave }: AskingProps) => {
  const { question, set } = asked;
  const heading = useFocusOn(`${set.id} ${question.number}`);
  const side = sideOf(aim);
  return (
    <section class="card read-panel" aria-label="Question">
      <p class="quiet">{set.drillName}</p>
      <h1 ref={heading} tabIndex={-1}>
        Putt {question.number} of {set.questions.length}: where do you aim?
      </h1>
      <Given asked={asked} units={units} />
      <p class="quiet">
        Pace is how far past a covered hole the ball would stop. Drag on the map, type it, or use the arrow
        keys on the aim (Shift: finer steps; Enter: commit).
      </p>
      <div class="read-aim-fields">
        <Field
          id="read-aim"
          label={`Aim beside the hole centre (${units === 'imperial' ? 'in' : 'cm'})`}
          text={aimFieldText(aim, units)}
          inputMode="text"
          onText={(text) => {
            const parsed = parseAim(text, units);
            if (!parsed.ok) return parsed.problem;
            onAim((parsed.side ?? side) === 'left' ? parsed.size : -parsed.size);
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
          onChange={(value) => onAim(value === 'left' ? Math.abs(aim) : -Math.abs(aim))}
        />
      </div>
      <p>
        <output class="read-aim-words" data-testid="aim-words">
          {formatAim(aim, units)}: {holeWords(aim)}
        </output>
      </p>
      <p class="read-actions">
        <button type="button" class="read-main" onClick={onCommit}>
          Commit to this aim
        </button>
        <button type="button" class="plain" onClick={onLeave}>
          Leave the set
        </button>
      </p>
    </section>
  );
};
