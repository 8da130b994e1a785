/** Whose records these are: nothing recorded yet, the invented player, or one's own. */
import { Link } from 'wouter-preact';
import { useAttempt } from '../state/attempt.ts';
import { loadDemo, recordSource, removeDemo } from '../state/recordSource.ts';

const REFUSED = 'The invented player could not be put on this device: it may be full, or forbid records.';
const NOT_REMOVED = 'The invented player could not be removed now; your own records are not touched by that.';

const DemoButton = ({ name }: { name: string }) => {
  const { busy, problem, attempt } = useAttempt(REFUSED);
  const look = async (): Promise<void> => {
    await loadDemo();
    recordSource.value = 'demo';
  };
  return (
    <>
      <button type="button" disabled={busy} onClick={() => void attempt(look)}>
        {name}
      </button>
      <p class="problem" role="alert">
        {problem}
      </p>
    </>
  );
};

const REVIEW_TELLS =
  'Record where your putts start and finish on the course, three to six taps a hole; at home this page tells what you hole, what luck explains, and what is worth practising.';

/** @param tells what this page will say once there are records */
export const NoRecords = ({ tells = REVIEW_TELLS }: { tells?: string }) => (
  <section class="card review-none" aria-labelledby="review-none">
    <h1 id="review-none">Nothing is recorded yet.</h1>
    <p>{tells}</p>
    <p class="review-actions">
      <Link href="/record" class="review-link">
        Record a round
      </Link>
      <DemoButton name="Look at the invented player" />
    </p>
    <p class="quiet">
      The invented player has two dozen invented rounds. They are kept apart from yours and go when you say
      so.
    </p>
  </section>
);

export const DemoBanner = () => {
  const { problem, attempt } = useAttempt(NOT_REMOVED);
  return (
    <aside class="review-demo" aria-label="Invented records">
      <p>
        <strong>These records are invented</strong>, player, courses and all: to look round with. They never
        mix with yours.
      </p>
      <p class="review-actions">
        <button
          type="button"
          onClick={() => {
            recordSource.value = 'own';
          }}
        >
          Back to your own records
        </button>
        <button type="button" class="plain" onClick={() => void attempt(removeDemo)}>
          Remove the invented player
        </button>
      </p>
      <p class="problem" role="alert">
        {problem}
      </p>
    </aside>
  );
};

/** Below one's own review. */
export const DemoOffer = () => (
  <details class="review-offer">
    <summary>Compare with invented records</summary>
    <p class="quiet">An invented player with two dozen rounds, kept apart from yours.</p>
    <DemoButton name="Look at the invented player" />
  </details>
);
