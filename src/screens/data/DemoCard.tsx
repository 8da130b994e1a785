/** The invented player: loaded and removed by choice, in a database of his own. */
import { useEffect } from 'preact/hooks';
import { useAttempt } from '../../state/attempt.ts';
import { demoLoaded, loadDemo, lookForDemo, removeDemo } from '../../state/recordSource.ts';

const REFUSED = 'The device refused (full or forbidden storage). Your own records are untouched.';

export const DemoCard = () => {
  const { busy, problem, attempt } = useAttempt(REFUSED);
  const loaded = demoLoaded.value;
  useEffect(() => {
    void lookForDemo();
  }, []);
  return (
    <section class="card" aria-label="Invented player" data-testid="demo">
      <h2>An invented player</h2>
      <p>
        Two dozen rounds of somebody who does not exist, on courses that do not exist, to try the review with.
        Kept apart from your own records: never mixed, never in a backup.
      </p>
      <p class="problem" role="alert">
        {problem}
      </p>
      <div class="data-actions">
        {loaded ? (
          <button type="button" disabled={busy} onClick={() => void attempt(removeDemo)}>
            Remove the invented player
          </button>
        ) : (
          <button
            type="button"
            disabled={busy || loaded === undefined}
            onClick={() => void attempt(loadDemo)}
          >
            {busy ? 'Inventing…' : 'Load the invented player'}
          </button>
        )}
        <span class="quiet" role="status">
          {loaded ? 'On this device.' : ''}
        </span>
      </div>
    </section>
  );
};
