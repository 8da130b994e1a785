/**
 * Says that a newer version waits, and that the page now works without a network. Nothing is loaded anew without a press. The
 * second stands at the foot of the page: nobody waits for it, and it must not move what one is dragging or tapping.
 */
import { laterUpdate, loadUpdate, offlineReady, readyWasRead, updateWaiting } from '../state/offline.ts';

export const UpdatePrompt = () =>
  updateWaiting.value ? (
    <section class="notice" aria-label="Newer version" role="status">
      <p>A newer version is ready. Your records stay as they are.</p>
      <button type="button" onClick={loadUpdate}>
        Load it now
      </button>
      <button type="button" class="plain" onClick={laterUpdate}>
        Later
      </button>
    </section>
  ) : null;

export const OfflineReady = () =>
  offlineReady.value ? (
    <section class="notice foot" aria-label="Offline" role="status">
      <p>Ready to use without a network.</p>
      <button type="button" class="plain" onClick={readyWasRead}>
        Good
      </button>
    </section>
  ) : null;
