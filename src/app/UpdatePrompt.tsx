/** Says that a newer version waits, and that the page now works without a network. Nothing is loaded anew without a press. */
import { laterUpdate, loadUpdate, offlineReady, readyWasRead, updateWaiting } from './offline.ts';

export const UpdatePrompt = () => {
  if (updateWaiting.value)
    return (
      <section class="notice" aria-label="Newer version" role="status">
        <p>A newer version is ready. Your records stay as they are.</p>
        <button type="button" onClick={() => void loadUpdate()}>
          Load it now
        </button>
        <button type="button" class="plain" onClick={laterUpdate}>
          Later
        </button>
      </section>
    );
  if (offlineReady.value)
    return (
      <section class="notice" aria-label="Offline" role="status">
        <p>Ready to use without a network.</p>
        <button type="button" class="plain" onClick={readyWasRead}>
          Good
        </button>
      </section>
    );
  return null;
};
