/**
 * Long work in pieces: a generator that yields its share done, from 0 to 1, as often as it can be interrupted. Run at once where
 * nobody waits, in slices where a page must stay alive. Leaves out: what is worked on.
 */

/** Yields the share done; returns what came of it. */
export type Work<Result> = Generator<number, Result, void>;

/** A slice, ms: a page drops two frames at most, and stays under the 50 ms that count as a long task. */
const SLICE = 24;
/** Steps between two yields where a step takes microseconds: a yield costs about as much. */
const STRIDE = 128;

export const atOnce = <Result>(work: Work<Result>): Result => {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
};

export interface SlicesOptions {
  /** Share done, 0 to 1, after each slice. */
  readonly onProgress?: (share: number) => void;
  /** Aborted: rejects with the signal's reason at the end of the slice. */
  readonly signal?: AbortSignal;
}

export const inSlices = async <Result>(
  work: Work<Result>,
  { onProgress, signal }: SlicesOptions = {},
): Promise<Result> => {
  for (;;) {
    signal?.throwIfAborted();
    const end = performance.now() + SLICE;
    let share = 0;
    do {
      const step = work.next();
      if (step.done) return step.value;
      share = step.value;
    } while (performance.now() < end);
    onProgress?.(share);
    await new Promise((resolve) => setTimeout(resolve));
  }
};

/** Does something with each item; the share done runs over `from` to `to`. */
export function* each<Item>(
  items: readonly Item[],
  act: (item: Item, index: number) => void,
  [from, to]: readonly [number, number] = [0, 1],
): Work<void> {
  for (const [index, item] of items.entries()) {
    if (index % STRIDE === 0) yield from + (to - from) * (index / items.length);
    act(item, index);
  }
}

/** Parts of a share, each as large as its count of the whole: where the work on one of several lists begins and ends. */
export const shared = (
  counts: readonly number[],
  [from, to]: readonly [number, number] = [0, 1],
): (readonly [number, number])[] => {
  const whole = Math.max(
    1,
    counts.reduce((sum, count) => sum + count, 0),
  );
  let before = 0;
  return counts.map((count) => {
    const start = before;
    before += count;
    return [from + ((to - from) * start) / whole, from + ((to - from) * before) / whole];
  });
};
