/** Long work in slices: the same result as at once, progress that grows, an end when it is cancelled. */
import { expect, it } from 'vitest';
import { atOnce, each, inSlices, type Work } from '../../../src/store/work.ts';

function* sumOf(count: number): Work<number> {
  let sum = 0;
  yield* each(
    Array.from({ length: count }, (_unused, index) => index),
    (one) => {
      for (let turn = 0; turn < 200; turn += 1) sum += one / 200;
    },
  );
  return Math.round(sum);
}

it('gives in slices what it gives at once, with progress from 0 towards 1', async () => {
  const shares: number[] = [];
  const sum = await inSlices(sumOf(200_000), { onProgress: (share) => shares.push(share) });
  // n (n - 1) / 2.
  expect(sum).toBe((200_000 * 199_999) / 2);
  expect(atOnce(sumOf(200_000))).toBe(sum);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(shares.every((share) => share >= 0 && share < 1)).toBe(true);
});

it('lets other work run in between, and ends where it is cancelled', async () => {
  const cancel = new AbortController();
  setTimeout(() => cancel.abort(new Error('enough')), 0);
  await expect(inSlices(sumOf(50_000_000 / 200), { signal: cancel.signal })).rejects.toThrow('enough');
});
