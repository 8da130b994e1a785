/** What the page says about its own work: how far, stopped, failed. */
import { signal } from '@preact/signals';

/** An engine failure, told to the person instead of swallowed. */
export const failure = signal<string | undefined>(undefined);
/** The person stopped the work; it resumes with the next change. */
export const stopped = signal(false);

export const tell = (cause: unknown): void => {
  failure.value = `The engine could not answer: ${cause instanceof Error ? cause.message : String(cause)}. Change the putt to try again.`;
};

const timers = new Map<string, ReturnType<typeof setTimeout>>();

/** Does the work after this quiet time, ms, unless the same name asks again before. */
export const after = (name: string, pause: number, work: () => void): void => {
  clearTimeout(timers.get(name));
  timers.set(name, setTimeout(work, pause));
};

export const forgetAll = (): void => {
  for (const timer of timers.values()) clearTimeout(timer);
  timers.clear();
};
