/**
 * The shape of every kept measurement: the entries as they were made and what was made of them (sim/measuring/results.ts), strict.
 * Answers for: shape, limits, and the way there and back. Leaves out: what the numbers mean (sim/measuring), where they are kept.
 * A file of JSON carries no infinite number: an end of an interval that is not there is an end that is not known.
 */
import * as z from 'zod';
import type { Measured, MeasuredGreen, MeasuredPlayer } from '../../sim/index.ts';
import { daySchema, GROUNDS, idSchema, momentSchema } from './recordSchema.ts';

export type AnyMeasured = MeasuredGreen | MeasuredPlayer;

/** More rows than any form has. */
const MOST_ROWS = 200;
const rows = <Row extends z.ZodType>(row: Row) => z.array(row).max(MOST_ROWS);

const number = z.number();
const positive = z.number().min(0);
const whole = z.number().int().min(0);
const interval = z.strictObject({ value: number, low: number.optional(), high: number.optional() });
const way = z.enum(['there', 'back']);
const pair = z.strictObject({ facing: number, turned: number });
const spread = z.strictObject({ sd: interval, bias: interval, count: whole });

const common = { id: idSchema, day: daySchema, recordedAt: momentSchema };
const onGround = { ...common, ground: z.enum(GROUNDS) };

const speedResult = z.strictObject({
  greenSpeed: interval,
  slope: interval.optional(),
  readings: z.strictObject({ there: positive.optional(), back: positive.optional() }),
  rolls: whole,
  scatter: positive,
  marginWithTwoMore: positive.optional(),
  marginAtBest: positive.optional(),
});

export const measurementSchema = z.discriminatedUnion('by', [
  z.strictObject({
    ...onGround,
    by: z.literal('timedRolls'),
    rolls: rows(z.strictObject({ way, distance: positive, seconds: positive })),
    result: speedResult,
  }),
  z.strictObject({
    ...onGround,
    by: z.literal('rampRolls'),
    height: positive,
    rolls: rows(z.strictObject({ way, distance: positive })),
    result: speedResult,
  }),
  z.strictObject({
    ...onGround,
    by: z.literal('level'),
    pairs: rows(pair),
    result: z.strictObject({ slope: interval, zeroError: number, pairs: whole, scatter: positive }),
  }),
  z.strictObject({
    ...onGround,
    by: z.literal('levelBothWays'),
    forwards: rows(pair),
    left: rows(pair),
    result: z.strictObject({
      slope: interval,
      uphill: interval.optional(),
      forwards: interval,
      left: interval,
      pairs: whole,
      scatter: positive,
    }),
  }),
  z.strictObject({
    ...common,
    by: z.literal('paceRolls'),
    rolls: rows(z.strictObject({ target: positive, past: number, left: number.optional() })),
    result: z.strictObject({
      pace: spread,
      direction: spread.optional(),
      rolls: whole,
      oneTarget: z.boolean(),
    }),
  }),
  z.strictObject({
    ...common,
    by: z.literal('gates'),
    gates: rows(z.strictObject({ width: positive, distance: positive, passes: whole, tries: whole })).min(1),
    result: z.strictObject({
      value: positive.optional(),
      low: positive,
      high: positive.optional(),
      passes: whole,
      tries: whole,
    }),
  }),
  z.strictObject({
    ...common,
    by: z.literal('walks'),
    walks: rows(z.strictObject({ length: positive, steps: positive })),
    result: z.strictObject({ step: interval, walks: whole }),
  }),
]);

export type KeptMeasurement = Readonly<z.infer<typeof measurementSchema>>;
type KeptInterval = z.infer<typeof interval>;

/** Without what JSON cannot carry: numbers that are not finite, and fields that hold nothing. */
const carriable = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(carriable);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, part]) => part !== undefined && (typeof part !== 'number' || Number.isFinite(part)))
      .map(([name, part]) => [name, carriable(part)]),
  );
};

/** A result as it is kept; not judged yet. */
export const toKeep = (
  measured: AnyMeasured,
  { id, recordedAt }: { readonly id: string; readonly recordedAt: number },
): KeptMeasurement => ({ ...(carriable(measured) as object), id, recordedAt }) as KeptMeasurement;

const withEnds = ({ value, low, high }: KeptInterval): Measured => ({
  value,
  low: low ?? Number.NEGATIVE_INFINITY,
  high: high ?? Number.POSITIVE_INFINITY,
});
const maybe = (kept: KeptInterval | undefined): Measured | undefined => kept && withEnds(kept);
const spreadOf = ({ sd, bias, count }: z.infer<typeof spread>) => ({
  sd: withEnds(sd),
  bias: withEnds(bias),
  count,
});
const speedOf = ({
  greenSpeed,
  slope,
  marginWithTwoMore,
  marginAtBest,
  ...rest
}: z.infer<typeof speedResult>) => ({
  ...rest,
  greenSpeed: withEnds(greenSpeed),
  slope: maybe(slope),
  marginWithTwoMore: marginWithTwoMore ?? Number.POSITIVE_INFINITY,
  marginAtBest: marginAtBest ?? Number.POSITIVE_INFINITY,
});

/** A kept measurement as the engine gave it, infinite ends and all. */
export const measuredOf = ({ id: _id, recordedAt: _recordedAt, ...kept }: KeptMeasurement): AnyMeasured => {
  switch (kept.by) {
    case 'timedRolls':
      return { ...kept, result: speedOf(kept.result) };
    case 'rampRolls':
      return { ...kept, result: speedOf(kept.result) };
    case 'level':
      return { ...kept, result: { ...kept.result, slope: withEnds(kept.result.slope) } };
    case 'levelBothWays': {
      const { slope, uphill, forwards, left, ...rest } = kept.result;
      const result = {
        ...rest,
        slope: withEnds(slope),
        uphill: maybe(uphill),
        forwards: withEnds(forwards),
        left: withEnds(left),
      };
      return { ...kept, result };
    }
    case 'paceRolls': {
      const { pace, direction, ...rest } = kept.result;
      return {
        ...kept,
        result: { ...rest, pace: spreadOf(pace), direction: direction && spreadOf(direction) },
      };
    }
    case 'gates': {
      const { value, high, ...rest } = kept.result;
      return { ...kept, result: { ...rest, value, high: high ?? Number.POSITIVE_INFINITY } };
    }
    case 'walks':
      return { ...kept, result: { ...kept.result, step: withEnds(kept.result.step) } };
  }
};
