/** Beginning a round: one tap; course and green speed only for whoever wants to say them. */
import { useState } from 'preact/hooks';
import { feetToMetres } from '../../../sim/index.ts';
import { Field } from '../../controls/Field.tsx';
import { type RoundChange, startRound } from '../../state/rounds.ts';
import { LONGEST_NAME } from '../../store/recordSchema.ts';
import { formatGreenSpeed } from '../../text/format.ts';
import { parseGreenSpeed } from '../../text/parse.ts';
import { HandChoice } from './HandChoice.tsx';

/** Of a green that is putted on, m. */
const SPEEDS = { min: feetToMetres(4), max: feetToMetres(16) };

const PROBLEMS: Readonly<Record<Exclude<RoundChange, 'done'>, string>> = {
  changedElsewhere: 'A round is open already, begun in another tab: it is about to be shown here.',
  refused:
    'The round was not begun: the device refused to write (full or forbidden storage). Free some space, and press again.',
};

export const StartRound = () => {
  const [course, setCourse] = useState('');
  const [speed, setSpeed] = useState<number | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const start = async (holes: 9 | 18): Promise<void> => {
    const change = await startRound({ holes, course: course.trim() || undefined, greenSpeed: speed });
    setProblem(change === 'done' ? undefined : PROBLEMS[change]);
  };
  return (
    <section class="card rec-start">
      <h1>Record putts</h1>
      <p>
        On the course: a few taps for each hole, no typing, no network needed. While the round is open nothing
        here gives advice.
      </p>
      <div class="rec-begin">
        <button type="button" class="main" onClick={() => void start(18)}>
          Start 18 holes
        </button>
        <button type="button" class="main" onClick={() => void start(9)}>
          Start 9 holes
        </button>
      </div>
      {problem && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      <details>
        <summary>Course, green speed and thumb, if you like</summary>
        <div class="rec-fields">
          <Field
            id="course"
            label="Course"
            inputMode="text"
            text={course}
            onText={(text) => {
              if (text.trim().length > LONGEST_NAME)
                return `Got ${text.trim().length} characters, expected ${LONGEST_NAME} at most. Take a shorter name.`;
              setCourse(text);
              return undefined;
            }}
          />
          <Field
            id="round-speed"
            label="Green speed (Stimpmeter, ft)"
            text={speed === undefined ? '' : formatGreenSpeed(speed)}
            onText={(text) => {
              if (text.trim() === '') {
                setSpeed(undefined);
                return undefined;
              }
              const parsed = parseGreenSpeed(text, SPEEDS);
              if (!parsed.ok) return parsed.problem;
              setSpeed(parsed.value);
              return undefined;
            }}
          />
        </div>
        <HandChoice />
      </details>
    </section>
  );
};
