/**
 * The page kept on the device for use without a network, and newer versions of it. Answers for: nothing reloads by itself, and
 * nothing is offered while a putt is being entered. Leaves out: what is kept (vite.config.ts), words (UpdatePrompt.tsx).
 * The service worker is registered by hand: the usual helper reloads every tab once one of them has taken the newer version.
 */
import { computed, signal } from '@preact/signals';

/** A putt is being entered: the page is not to be changed now. */
export const entering = signal(false);

const newer = signal(false);
const postponed = signal(false);
export const offlineReady = signal(false);
export const updateWaiting = computed(() => newer.value && !postponed.value && !entering.value);

/** How long the page has to itself before the rest of the program is fetched, ms: what it shows first goes first. */
const REST = 3000;
/** How often a page that stays open asks for a newer version, ms; the browser itself asks when a page is loaded. */
const ASK_AGAIN = 3_600_000;

let registration: ServiceWorkerRegistration | undefined;
let asked = false;

/** Lets the newer version in and loads it. */
export const loadUpdate = (): void => {
  asked = true;
  const waiting = registration?.waiting;
  // None waits when another tab has let it in already.
  if (waiting) waiting.postMessage({ type: 'SKIP_WAITING' });
  else location.reload();
};
export const laterUpdate = (): void => {
  postponed.value = true;
};
export const readyWasRead = (): void => {
  offlineReady.value = false;
};

const follow = (worker: ServiceWorker, isFirst: boolean): void => {
  worker.addEventListener('statechange', () => {
    if (worker.state === 'installed' && !isFirst) newer.value = true;
    if (worker.state === 'activated' && isFirst) offlineReady.value = true;
  });
};

const register = async (): Promise<void> => {
  const { serviceWorker } = navigator;
  let isFirst = serviceWorker.controller === null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (!isFirst) {
      // Let in by another tab: late parts of this version are gone from the device, so it is said once more.
      newer.value = true;
      postponed.value = false;
    }
    isFirst = false;
  });
  registration = await serviceWorker.register('./sw.js', { scope: './' });
  const found = registration;
  if (found.waiting && serviceWorker.controller) newer.value = true;
  if (found.installing) follow(found.installing, isFirst);
  found.addEventListener('updatefound', () => {
    if (found.installing) follow(found.installing, isFirst && found.active === null);
  });
  let askedAt = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Math.abs(Date.now() - askedAt) < ASK_AGAIN) return;
    askedAt = Date.now();
    // Without a network there is nothing newer to be had.
    found.update().catch(() => undefined);
  });
};

/** Keeps the page on the device, once it has come to rest; where that is not allowed, it works with a network as before. */
export const keepForOffline = (): void => {
  if (!('serviceWorker' in navigator)) return;
  const begin = (): void => {
    setTimeout(() => register().catch(() => undefined), REST);
  };
  if (document.readyState === 'complete') begin();
  else addEventListener('load', begin, { once: true });
};
