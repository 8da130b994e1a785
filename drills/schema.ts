/**
 * The shape of a drill file, checked strictly: an unknown field is a mistake, not a hint. Units are in the field names.
 * How to add a drill: one JSON file here, one line in index.ts; tests/sim/training then asks it for sets.
 */
import * as z from 'zod';
import type { ReadDrill } from '../sim/index.ts';

/** No compiled checks: the page's content policy forbids making code from text, and asking for it logs an error. */
z.config({ jitless: true });

const range = (low: number, high: number) =>
  z
    .tuple([z.number().min(low).max(high), z.number().min(low).max(high)])
    .refine(([from, to]) => from <= to, 'expected the smaller number first: swap them');

export const readDrillSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z][a-z0-9-]{2,40}$/, 'expected small letters, digits and hyphens'),
    name: z.string().min(3).max(60),
    purpose: z.string().min(10).max(200),
    source: z.string().min(3).max(200),
    surface: z.enum(['plane', 'green']),
    lengthM: range(0.6, 20),
    slope: range(0, 0.06),
    clock: z.array(range(0, 24)).min(1).max(4),
    greenSpeedM: range(1.5, 4.3),
    paceM: z.array(z.number().min(0.05).max(1.5)).min(1).max(5),
    group: z.enum(['none', 'leftAndRight', 'upAndDown', 'greenSpeeds', 'paces']),
    shown: z.strictObject({ slope: z.boolean() }),
  })
  .refine(
    ({ surface, group }) => surface === 'plane' || (group !== 'leftAndRight' && group !== 'upAndDown'),
    'expected a plane for mirrored and up-and-down pairs: a green has no mirror image',
  )
  .refine(
    ({ group, paceM }) => group !== 'paces' || paceM.length >= 2,
    'expected at least two paces for a drill that compares them',
  ) satisfies z.ZodType<ReadDrill>;
