/** Sets answered before, newest first, a page at a time. */
import { type PageInHand, Pages } from '../../controls/Pages.tsx';
import type { KeptSet } from '../../store/schema.ts';
import { formatDay } from '../../text/format.ts';
import { headlineOf } from './headlines.ts';

export interface EarlierSetsProps {
  readonly sets: readonly KeptSet[];
  readonly ready: boolean;
  readonly unreadable: number;
  /** Of the answered ones. */
  readonly page: PageInHand;
  readonly onLook: (set: KeptSet) => void;
}

/** Those with an answer, newest first. */
export const answeredSets = (sets: readonly KeptSet[]): readonly KeptSet[] =>
  sets.filter(({ answers }) => answers.length > 0).sort((a, b) => b.startedAt - a.startedAt);

/** The day a set was begun on, as the record has it, and the time of day by this device's clock. */
const when = ({ day, startedAt }: KeptSet): string =>
  `${formatDay(day)}, ${new Intl.DateTimeFormat(undefined, { hour: 'numeric', minute: '2-digit' }).format(startedAt)}`;

const Past = ({ set, onLook }: { set: KeptSet; onLook: (set: KeptSet) => void }) => {
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
          {set.answers.length} of {set.size} putts, {when(set)}
        </span>
      </th>
      <td>{headlineOf(set)}</td>
    </tr>
  );
};

export const EarlierSets = ({ sets, ready, unreadable, page, onLook }: EarlierSetsProps) => {
  const answered = answeredSets(sets);
  return (
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
          <table class="read-past">
            <thead>
              <tr>
                <th scope="col">Set</th>
                <th scope="col">What it showed</th>
              </tr>
            </thead>
            <tbody>
              {answered.slice(page.from, page.to).map((set) => (
                <Past key={set.id} set={set} onLook={onLook} />
              ))}
            </tbody>
          </table>
        </section>
      )}
      <Pages what="Sets" page={page} count={answered.length} number={page.number} onTurn={page.turn} />
    </section>
  );
};
