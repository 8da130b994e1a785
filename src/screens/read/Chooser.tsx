/** What to practise: a set left unfinished, the drills, and earlier sets. */
import { READ_DRILLS } from '../../../drills/index.ts';
import type { ReadDrill } from '../../../sim/index.ts';
import { isFinished, type KeptSet } from '../../store/schema.ts';
import { formatDay } from '../../text/format.ts';
import { summaryOf } from './SummaryView.tsx';
import { formatInterval, formatShare, shownWords, verdictWords } from './words.ts';

export interface ChooserProps {
  readonly sets: readonly KeptSet[];
  readonly ready: boolean;
  readonly unreadable: number;
  /** The id of the drill whose putts are being drawn. */
  readonly making: string | undefined;
  readonly onStart: (drill: ReadDrill) => void;
  readonly onResume: (set: KeptSet) => void;
  readonly onLook: (set: KeptSet) => void;
}

/** How a drill file says that nobody in particular is to be thanked. */
const NO_SOURCE = 'common practice, no source';

/** The day a set was begun on, as the record has it, and the time of day by this device's clock. */
const when = ({ day, startedAt }: KeptSet): string =>
  `${formatDay(day)}, ${new Intl.DateTimeFormat(undefined, { hour: 'numeric', minute: '2-digit' }).format(startedAt)}`;

const Unfinished = ({ set, onResume }: { set: KeptSet; onResume: (set: KeptSet) => void }) => (
  <p class="read-unfinished" data-testid="unfinished">
    <span>
      {set.drillName}: {set.answers.length} of {set.questions.length} putts answered.
    </span>
    <button type="button" class="read-main" onClick={() => onResume(set)}>
      Go on with putt {set.answers.length + 1}
    </button>
  </p>
);

const Past = ({ set, onLook }: { set: KeptSet; onLook: (set: KeptSet) => void }) => {
  const bias = summaryOf(set)?.kinds[0]?.bias;
  return (
    <tr>
      <th scope="row">
        <button
          type="button"
          class="plain read-look"
          aria-label={`Look at ${set.drillName} of ${when(set)}`}
          onClick={() => onLook(set)}
        >
          {set.drillName}
        </button>
        <span class="quiet">
          {set.answers.length} of {set.questions.length} putts, {when(set)}
        </span>
      </th>
      <td>{bias === undefined ? 'none' : formatShare(bias.value)}</td>
      <td>
        {bias === undefined ? 'none' : formatInterval(bias)}
        <span class="quiet">{verdictWords(bias)}</span>
      </td>
    </tr>
  );
};

export const Chooser = ({ sets, ready, unreadable, making, onStart, onResume, onLook }: ChooserProps) => {
  const unfinished = sets.find((set) => !isFinished(set));
  const answered = sets.filter(({ answers }) => answers.length > 0);
  return (
    <div class="read-chooser">
      <section class="card">
        <h1>Read it yourself</h1>
        <p>
          Ten putts, each with a called pace. Aim, commit, and only then see the true line, how far off you
          were and what it cost. At the end: do you see too little break or too much, and where?
        </p>
        {unfinished && <Unfinished set={unfinished} onResume={onResume} />}
        <ul class="read-drills">
          {READ_DRILLS.map((drill) => (
            <li key={drill.id}>
              <div>
                <h2>{drill.name}</h2>
                <p>{drill.purpose}</p>
                <p class="quiet">
                  {shownWords(drill)}
                  {drill.source !== NO_SOURCE && `; source: ${drill.source}`}
                </p>
              </div>
              <button
                type="button"
                aria-label={`Start ${drill.name}`}
                data-drill={drill.id}
                disabled={making !== undefined}
                onClick={() => onStart(drill)}
              >
                {making === drill.id ? 'Drawing…' : 'Start'}
              </button>
            </li>
          ))}
        </ul>
        <p class="quiet">Drills without a named source are common practice.</p>
      </section>
      <section class="card" data-testid="past">
        <h2>Earlier sets</h2>
        {!ready && <p class="quiet">Looking up your records…</p>}
        {ready && answered.length === 0 && (
          <p class="quiet">
            None yet. Every committed answer is kept at once, on this device only. A finished set shows your
            bias with its margin, left to right and right to left, up and down, gentle and steep, short and
            long.
          </p>
        )}
        {unreadable > 0 && (
          <p class="problem">
            {unreadable} {unreadable === 1 ? 'record' : 'records'} could not be read, perhaps made by a later
            version; left untouched.
          </p>
        )}
        {answered.length > 0 && (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too
          <section class="scroll" tabIndex={0} aria-label="Earlier sets">
            <table>
              <thead>
                <tr>
                  <th scope="col">Set</th>
                  <th scope="col">Bias</th>
                  <th scope="col">95% interval</th>
                </tr>
              </thead>
              <tbody>
                {answered.map((set) => (
                  <Past key={set.id} set={set} onLook={onLook} />
                ))}
              </tbody>
            </table>
          </section>
        )}
      </section>
    </div>
  );
};
