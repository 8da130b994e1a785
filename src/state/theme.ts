/**
 * Which theme is on the page: the person's choice, or the system's; and whether the page is a telephone's. Sets data-theme on
 * <html>; css does the rest.
 */
import { computed, effect, signal } from '@preact/signals';
import { theme } from './settings.ts';

const query = globalThis.matchMedia?.('(prefers-color-scheme: dark)');
const systemDark = signal(query?.matches ?? false);
query?.addEventListener('change', (event) => {
  systemDark.value = event.matches;
});

const phoneQuery = globalThis.matchMedia?.('(max-width: 40rem)');
/** Whether the page is as narrow as a telephone (the same width as in app.css). */
export const onPhone = signal(phoneQuery?.matches ?? false);
phoneQuery?.addEventListener('change', (event) => {
  onPhone.value = event.matches;
});

/** The theme in force, for canvases and charts that cannot follow css by themselves. */
export const themeInForce = computed<'light' | 'dark'>(() =>
  theme.value === 'auto' ? (systemDark.value ? 'dark' : 'light') : theme.value,
);

/** Starts keeping <html data-theme> in step; returns the function that stops it. */
export const followTheme = (): (() => void) =>
  effect(() => {
    document.documentElement.dataset.theme = themeInForce.value;
  });
