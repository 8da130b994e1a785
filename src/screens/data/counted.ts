/** Numbers of things, and several things in a row, in words. */

export const grouped = (count: number): string => count.toLocaleString('en');

/** "1 putt", "1,204 putts". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${grouped(count)} ${count === 1 ? one : many}`;

/** "a", "a and b", "a, b and c". */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
