/**
 * What narrowed a preset's family, as settings keep it: days and figures of gates, balls to targets and slopes named, so that it is worked out
 * anew each time. Answers for: the gate for what is found in storage, when two sittings are one. Leaves out: Bayes' rule (sim/costs).
 */
import { BALL_RADIUS, type Measurement, type Sitting } from '../../sim/index.ts';
import { same } from '../store/same.ts';

/** More than anybody does. */
const MOST_SITTINGS = 50;
const MOST_RESULTS = 200;
/** No slope and no distance is off by more, and no gate is farther or wider, share, rise over run and m. */
const MOST_OFF = 3;
const FARTHEST = 30;
const DAY = /^\d{4}-\d{2}-\d{2}$/;

const fieldsOf = (value: unknown): Record<string, unknown> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
const isWithin = (value: unknown, low: number, high: number): value is number =>
  typeof value === 'number' && value >= low && value <= high;
const listOf = (value: unknown): readonly unknown[] | undefined =>
  Array.isArray(value) && value.length > 0 && value.length <= MOST_RESULTS ? value : undefined;

/** All of them, or none: half a measurement is none. */
const allOf = <Good>(
  list: readonly unknown[] | undefined,
  of: (one: unknown) => Good | undefined,
): Good[] => {
  const good = (list ?? []).map(of);
  return good.every((one) => one !== undefined) ? (good as Good[]) : [];
};

const resultOf = (value: unknown): Measurement | undefined => {
  const { kind, width, distance, passed, tries, errors, slopes } = fieldsOf(value);
  if (kind === 'gate') {
    if (!isWithin(width, 2 * BALL_RADIUS + 1e-6, FARTHEST) || !isWithin(distance, 1e-3, FARTHEST))
      return undefined;
    if (!isWithin(tries, 1, 1e4) || !isWithin(passed, 0, tries)) return undefined;
    return { kind, width, distance, passed, tries };
  }
  if (kind === 'ladder') {
    const good = allOf(listOf(errors), (one) => (isWithin(one, -MOST_OFF, MOST_OFF) ? one : undefined));
    return good.length > 0 ? { kind, errors: good } : undefined;
  }
  if (kind !== 'readingSet') return undefined;
  const good = allOf(listOf(slopes), (one) => {
    const { named, true: truth } = fieldsOf(one);
    return isWithin(named, -1, 1) && isWithin(truth, -1, 1) ? { named, true: truth } : undefined;
  });
  return good.length > 0 ? { kind, slopes: good } : undefined;
};

/** What can be read of it; a sitting of which anything cannot be read is left out. */
export const sittingsOf = (value: unknown): Sitting[] =>
  (listOf(value) ?? []).slice(0, MOST_SITTINGS).flatMap((one): Sitting[] => {
    const { day, results } = fieldsOf(one);
    const good = allOf(listOf(results), resultOf);
    return typeof day === 'string' && DAY.test(day) && good.length > 0 ? [{ day, results: good }] : [];
  });

/** The same figures of the same day: a measurement is kept once a day, and counts once. */
export const sameSitting = (one: Sitting, other: Sitting): boolean => same(one, other);

/**
 * Whether one stands in the place of another: balls counted on the same day, corrected or gone on with since. Counted twice they would
 * narrow twice. Every set of slopes is its own.
 */
export const replaces = (one: Sitting, other: Sitting): boolean => {
  const [kind] = one.results.map((result) => result.kind);
  return (
    one.day === other.day && kind !== 'readingSet' && other.results.some((result) => result.kind === kind)
  );
};
