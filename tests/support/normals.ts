/** Standard normal numbers, the same on every machine. */
import { seededRandom } from '../../sim/random.ts';

export const normals = (seed: string): (() => number) => {
  const random = seededRandom(seed);
  // Box & Muller 1958; 1 - u keeps the logarithm finite.
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
};
