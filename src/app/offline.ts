/**
 * The page kept on the device for use without a network, and newer versions of it. Answers for: nothing reloads by itself, and
 * nothing is offered while a putt is being entered. Leaves out: what is kept (vite.config.ts), words (UpdatePrompt.tsx).
 */
import { computed, signal } from '@preact/signals';

/** A putt is being entered: the page is not to be changed now. */
export const entering = signal(false);

const newer = signal(false);
const postponed = signal(false);
export const offlineReady = signal(false);
export const updateWaiting = computed(() => newer.value && !postponed.value && !entering.value);

let update: (() => Promise<void>) | undefined;

export const loadUpdate = async (): Promise<void> => update?.();
export const laterUpdate = (): void => {
  postponed.value = true;
};
export const readyWasRead = (): void => {
  offlineReady.value = false;
};
