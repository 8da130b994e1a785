/** How far the table of costs is, and the way to stop it. */
import { behind, resumeWork, stopped, stopWork, work } from './work.ts';

const WORDS = 'Playing your putts with every error and without';

export const Working = () => {
  if (stopped.value)
    return (
      <>
        <span>Stopped.</span>
        <button type="button" class="plain" onClick={resumeWork}>
          Go on
        </button>
      </>
    );
  const share = work.value;
  if (share === undefined)
    return <span>{behind.value ? 'Waiting for your errors to keep still…' : 'All is worked out.'}</span>;
  return (
    <>
      <span data-testid="work">
        {WORDS}, {Math.floor(100 * share)}%
      </span>
      <progress aria-label={WORDS} max={1} value={share} />
      <button type="button" class="plain" onClick={stopWork}>
        Stop
      </button>
    </>
  );
};
