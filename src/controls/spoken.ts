/**
 * What a screen reader is told of something that moves: the words once they have come to rest, not every step on the way.
 */
import { effect, type ReadonlySignal, signal } from '@preact/signals';

export interface Spoken {
  readonly words: ReadonlySignal<string>;
  /** Starts following; returns the function that stops. */
  follow(): () => void;
}

/**
 * @param wordsNow what would be said now, from signals; undefined: nothing is known yet, and what was said stays
 * @param pause quiet time before it is said, ms
 */
export const spokenAtRest = (wordsNow: () => string | undefined, pause: number): Spoken => {
  const words = signal('');
  return {
    words,
    follow() {
      let timer: ReturnType<typeof setTimeout> | undefined;
      const stop = effect(() => {
        const now = wordsNow();
        clearTimeout(timer);
        if (now !== undefined)
          timer = setTimeout(() => {
            words.value = now;
          }, pause);
      });
      return () => {
        stop();
        clearTimeout(timer);
      };
    },
  };
};
