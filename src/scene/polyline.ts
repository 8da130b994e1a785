/** Walking along a polyline by its length. Leaves out: dashes (primitives.ts). Places are x, y pairs in pixels. */
import type { Places } from './primitives.ts';

/** Length from the start to each corner. */
export function lengthsAlong(places: Places): Float64Array {
  const lengths = new Float64Array(places.length / 2);
  for (let corner = 1; corner < lengths.length; corner++)
    lengths[corner] =
      lengths[corner - 1] +
      Math.hypot(
        places[2 * corner] - places[2 * corner - 2],
        places[2 * corner + 1] - places[2 * corner - 1],
      );
  return lengths;
}

/** The place this far along. */
export function placeAlong(places: Places, lengths: Float64Array, distance: number): [number, number] {
  let corner = 1;
  while (corner < lengths.length - 1 && lengths[corner] < distance) corner++;
  const length = lengths[corner] - lengths[corner - 1];
  const share = length > 0 ? Math.max(0, Math.min(1, (distance - lengths[corner - 1]) / length)) : 0;
  const at = 2 * corner - 2;
  return [
    places[at] + share * (places[at + 2] - places[at]),
    places[at + 1] + share * (places[at + 3] - places[at + 1]),
  ];
}

/** The part between two distances along. */
export function partOf(places: Places, lengths: Float64Array, from: number, to: number): number[] {
  const part = [...placeAlong(places, lengths, from)];
  for (let corner = 0; corner < lengths.length; corner++)
    if (lengths[corner] > from && lengths[corner] < to) part.push(places[2 * corner], places[2 * corner + 1]);
  part.push(...placeAlong(places, lengths, to));
  return part;
}
