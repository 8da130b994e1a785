/** Drawing from ranges and lists with a repeatable source of random numbers. */
import type { Range } from './drill.ts';

/** Uniform, 0 <= number < 1. */
export type Random = () => number;

export const within = ([low, high]: Range, random: Random): number => low + (high - low) * random();

export const oneOf = <Item>(items: readonly Item[], random: Random): Item =>
  items[Math.min(items.length - 1, Math.floor(random() * items.length))];

/** Fisher-Yates, in place. */
export const shuffle = <Item>(items: Item[], random: Random): Item[] => {
  for (let i = items.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [items[i], items[j]] = [items[j], items[i]];
  }
  return items;
};
