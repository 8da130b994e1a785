/**
 * How fast the person's carpet is, for every screen that reckons with one. Answers for: the newest kept measurement of a carpet's speed, or
 * what was set by hand since. Leaves out: measuring (screens/measure), keeping measurements (store/measurements.ts), words.
 * What is set by hand counts until another measurement is kept: the last act wins, and no clock is asked.
 */
import { computed, signal } from '@preact/signals';
import * as z from 'zod';
import { feetToMetres } from '../../sim/index.ts';
import type { KeptMeasurement } from '../store/measurementSchema.ts';
import { measurementsOf } from '../store/measurements.ts';
import { daySchema, idSchema, speed } from '../store/recordSchema.ts';
import { follow } from './follow.ts';
import { keptValue } from './kept.ts';
import { ownDatabase } from './records.ts';
import { LIMITS } from './situation.ts';

/** A carpet's speed before one was measured, m: 11 ft (common practice, no source). */
export const USUAL_CARPET = feetToMetres(11);

const carpetSchema = z.strictObject({
  /** Set by hand; `over`: the id of the newest measurement then. */
  typed: z.strictObject({ speed, over: idSchema.optional() }).optional(),
  /** The newest measurement, so that the first picture need not wait for the database. */
  measured: z.strictObject({ id: idSchema, day: daySchema, speed: z.number().min(0) }).optional(),
});
export type Carpet = Readonly<z.infer<typeof carpetSchema>>;

export type CarpetBasis =
  | { readonly kind: 'usual' }
  | { readonly kind: 'typed'; readonly measured: Carpet['measured'] }
  | { readonly kind: 'measured'; readonly day: string };

/** Where the speed was kept before, among the settings of the practice screen. */
const old = keptValue<number | undefined>({
  key: 'borrow.practice.1',
  schema: z.object({ carpetSpeed: speed }).transform(({ carpetSpeed }) => carpetSpeed),
  otherwise: () => undefined,
});
const kept = keptValue<Carpet | undefined>({
  key: 'borrow.carpet.1',
  schema: carpetSchema,
  otherwise: () => undefined,
});

const startWith = (found: Carpet | undefined, before: number | undefined): Carpet => {
  if (found !== undefined) return found;
  // The usual speed was written down whether anybody had set it or not.
  return before !== undefined && before !== USUAL_CARPET ? { typed: { speed: before } } : {};
};
/** Reads stored texts; what is not ours is dropped. @param older text of the practice screen's settings */
export const parseCarpet = (text: string | null, older: string | null): Carpet =>
  startWith(kept.parse(text), old.parse(older));

const within = (value: number): number =>
  Math.min(Math.max(value, LIMITS.greenSpeed.min), LIMITS.greenSpeed.max);

/** Stimpmeter reading, m, as far as the screens take it, and what it rests on. */
export const carpetOf = ({
  typed,
  measured,
}: Carpet): { readonly speed: number; readonly basis: CarpetBasis } => {
  if (typed !== undefined && typed.over === measured?.id)
    return { speed: within(typed.speed), basis: { kind: 'typed', measured } };
  if (measured !== undefined)
    return { speed: within(measured.speed), basis: { kind: 'measured', day: measured.day } };
  return { speed: USUAL_CARPET, basis: { kind: 'usual' } };
};

/** The newest of a carpet's speed. @param measurements newest first */
export const newestCarpet = (measurements: readonly KeptMeasurement[]): Carpet['measured'] => {
  for (const one of measurements)
    if ((one.by === 'timedRolls' || one.by === 'rampRolls') && one.ground === 'carpet')
      return { id: one.id, day: one.day, speed: one.result.greenSpeed.value };
  return undefined;
};

const carpet = signal(startWith(kept.load(), old.load()));
const keep = (next: Carpet): void => {
  carpet.value = next;
  kept.save(next);
};

const now = computed(() => carpetOf(carpet.value));
/** m */
export const carpetSpeed = computed(() => now.value.speed);
export const carpetBasis = computed(() => now.value.basis);

/** Set by hand. @param metres Stimpmeter reading */
export const setCarpetSpeed = (metres: number): void => {
  const { measured } = carpet.peek();
  keep({ typed: { speed: metres, ...(measured && { over: measured.id }) }, ...(measured && { measured }) });
};
/** Back to the newest measurement. */
export const takeMeasuredCarpet = (): void => {
  const { measured } = carpet.peek();
  keep({ ...(measured && { measured }) });
};

/** Follows the kept measurements, whichever tab writes them; returns the function that stops. */
export const followCarpet = (): (() => void) =>
  follow({
    open: async () => measurementsOf((await ownDatabase()).database).list,
    next({ records }) {
      const measured = newestCarpet(records);
      const { typed, measured: before } = carpet.peek();
      if (measured?.id !== before?.id) keep({ ...(typed && { typed }), ...(measured && { measured }) });
    },
  });
