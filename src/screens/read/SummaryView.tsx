/** A set summed up: the answer in a sentence, the rest by the kind of question. */
import { isFinished, type KeptSet } from '../../store/schema.ts';
import type { Units } from '../../text/format.ts';
import { AimSummary } from './AimSummary.tsx';
import { useFocusOn } from './Asking.tsx';
import { headlineOf, isShown } from './headlines.ts';
import { NarrowBySlopes } from './NarrowBySlopes.tsx';
import { PaceSummaryView, SlopeSummaryView } from './TaskSummaries.tsx';

export interface SummaryViewProps {
  readonly set: KeptSet;
  readonly units: Units;
  readonly onLeave: () => void;
  readonly onResume: () => void;
}

const Body = ({ set, units }: { set: KeptSet; units: Units }) => {
  if (set.kind === 'paces') return <PaceSummaryView set={set} units={units} />;
  if (set.kind === 'slope')
    return (
      <>
        <SlopeSummaryView set={set} />
        {isFinished(set) && <NarrowBySlopes set={set} />}
      </>
    );
  return <AimSummary set={set} units={units} />;
};

export const SummaryView = ({ set, units, onLeave, onResume }: SummaryViewProps) => {
  const heading = useFocusOn(set.id);
  return (
    <section class="card" aria-label="Summary" data-testid="summary">
      <p class="quiet">
        {set.drillName} ({set.answers.length} of {set.size} putts answered)
      </p>
      <h1 ref={heading} tabIndex={-1}>
        {headlineOf(set)}
      </h1>
      {isShown(set) && <Body set={set} units={units} />}
      <p class="read-actions">
        {!isFinished(set) && (
          <button type="button" class="read-main" onClick={onResume}>
            Go on with this set
          </button>
        )}
        <button type="button" class={isFinished(set) ? 'read-main' : 'plain'} onClick={onLeave}>
          Back to the drills
        </button>
      </p>
    </section>
  );
};
