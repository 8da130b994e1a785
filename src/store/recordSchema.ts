/**
 * The shape of every round, putt, practice set and drill score kept on this device, strict: nothing passes in either direction that is not
 * written here. What the fields mean: sim/record/record.ts. Leaves out: read sets (schema.ts), measurements (measurementSchema.ts),
 * plans of weeks (planSchema.ts), where records are kept.
 */
import * as z from 'zod';
import type { DrillResult, PracticeSet, RecordedPutt, RecordedRound } from '../../sim/index.ts';

/** No compiled checks: the page's content policy forbids making code from text, and asking for it logs an error. */
z.config({ jitless: true });

/** Longest putt and leave that count as putting, m (200 ft). */
export const LONGEST_PUTT = 61;
/** Shortest that is written down, m (an inch). */
export const SHORTEST_PUTT = 0.025;
/** Longest name of a course or note, characters. */
export const LONGEST_NAME = 80;

/** The end of the year 9999, ms since 1970: what can be written as a date of four digits. */
const LAST_MOMENT = 253_402_300_799_999;

/** What a text file can carry: half of a surrogate pair or a zero character would not come back from one. */
export const carried = (text: string): boolean => !/[\p{Surrogate}\0]/u.test(text);
const UNCARRIED = { error: 'expected whole characters, and none that is zero' };

/** Of a record. */
export const idSchema = z
  .string()
  .min(8)
  .max(64)
  .refine((text) => carried(text) && text === text.trim(), {
    error: 'expected whole characters, none that is zero, no blanks at the ends',
  });
/** ms since 1970. */
export const momentSchema = z.number().int().min(0).max(LAST_MOMENT);
/** A calendar day, YYYY-MM-DD, one that exists. */
export const daySchema = z.iso.date({ error: 'expected a day such as 2026-05-02' });
const length = z.number().min(SHORTEST_PUTT).max(LONGEST_PUTT);
const name = z.string().trim().min(1).max(LONGEST_NAME).refine(carried, UNCARRIED);
const hole = z.number().int().min(1).max(18);
/** Stimpmeter reading, m. */
export const speed = z.number().min(0.5).max(6);

export const CLIMBS = ['up', 'down', 'level'] as const;
export const BREAK_WAYS = ['leftToRight', 'rightToLeft', 'straight'] as const;
export const SLOPES_FELT = ['gentle', 'medium', 'steep'] as const;
export const PACES_MEANT = ['die', 'normal', 'firm'] as const;
export const MISS_SIDES = ['high', 'low', 'left', 'right', 'online'] as const;
export const MISS_REACHES = ['short', 'past'] as const;
export const PUTT_KINDS = ['putt', 'conceded', 'offGreen'] as const;
export const GROUNDS = ['grass', 'carpet'] as const;

const missSchema = z.strictObject({
  side: z.enum(MISS_SIDES).optional(),
  reach: z.enum(MISS_REACHES).optional(),
  leave: length,
});

const sideFits = (side: string | undefined, breaks: string | undefined): boolean =>
  breaks === 'straight' ? side !== 'high' && side !== 'low' : side !== 'left' && side !== 'right';

export const puttSchema = z
  .strictObject({
    id: idSchema,
    roundId: idSchema,
    hole,
    stroke: z.number().int().min(1).max(20),
    kind: z.enum(PUTT_KINDS),
    distance: length,
    climb: z.enum(CLIMBS).optional(),
    breaks: z.enum(BREAK_WAYS).optional(),
    slopeFelt: z.enum(SLOPES_FELT).optional(),
    paceMeant: z.enum(PACES_MEANT).optional(),
    startedAsMeant: z.boolean().optional(),
    paceAsMeant: z.boolean().optional(),
    holed: z.boolean(),
    miss: missSchema.optional(),
    recordedAt: momentSchema,
  })
  .refine(({ kind, holed, miss }) => kind !== 'conceded' || (!holed && miss === undefined), {
    path: ['kind'],
    error: 'expected a conceded putt to be neither holed nor missed',
  })
  .refine(({ kind, holed, miss }) => kind === 'conceded' || holed === (miss === undefined), {
    path: ['miss'],
    error: 'expected a miss exactly when the putt was not holed',
  })
  .refine(({ miss, breaks }) => sideFits(miss?.side, breaks), {
    path: ['miss', 'side'],
    error: 'expected high, low or online of a putt that breaks, left, right or online of a straight one',
  }) satisfies z.ZodType<RecordedPutt>;

export const roundSchema = z
  .strictObject({
    id: idSchema,
    day: daySchema,
    startedAt: momentSchema,
    // Not held to come after the start: clocks get set.
    endedAt: momentSchema.optional(),
    holes: z.union([z.literal(9), z.literal(18)]),
    course: name.optional(),
    greenSpeed: speed.optional(),
    withoutPutt: z.array(hole).max(18),
  })
  .refine(({ holes, withoutPutt }) => withoutPutt.every((one) => one <= holes), {
    path: ['withoutPutt'],
    error: 'expected only holes of this round',
  })
  .refine(({ withoutPutt }) => new Set(withoutPutt).size === withoutPutt.length, {
    path: ['withoutPutt'],
    error: 'expected each hole once',
  }) satisfies z.ZodType<RecordedRound>;

/** Of tries, of misses, of points. */
export const count = z.number().int().min(0).max(1000);

export const practiceSchema = z
  .strictObject({
    id: idSchema,
    day: daySchema,
    recordedAt: momentSchema,
    distance: length,
    attempts: count.min(1),
    holed: count,
    misses: z
      .strictObject({
        high: count.optional(),
        low: count.optional(),
        short: count.optional(),
        past: count.optional(),
      })
      .optional(),
    climb: z.enum(CLIMBS).optional(),
    breaks: z.enum(BREAK_WAYS).optional(),
    ground: z.enum(GROUNDS),
    note: name.optional(),
  })
  .refine(({ holed, attempts }) => holed <= attempts, {
    path: ['holed'],
    error: 'expected no more holed than tried',
  })
  .refine(
    ({ attempts, holed, misses: { high = 0, low = 0, short = 0, past = 0 } = {} }) =>
      high + low <= attempts - holed && short + past <= attempts - holed,
    { path: ['misses'], error: 'expected no more misses of a kind than putts missed' },
  ) satisfies z.ZodType<PracticeSet>;

/** A putting drill done once, as it is kept. */
export interface KeptResult extends DrillResult {
  readonly id: string;
  readonly day: string;
  /** ms since 1970 */
  readonly recordedAt: number;
  readonly note?: string;
}

/** Drills come and go with versions of the page: the gate asks for the look of an id, not for a drill that is known here. */
export const drillResultSchema = z.strictObject({
  id: idSchema,
  day: daySchema,
  recordedAt: momentSchema,
  drillId: z.string().regex(/^[a-z][a-z0-9-]{2,40}$/, 'expected small letters, digits and hyphens'),
  version: z.number().int().min(1).max(99),
  ground: z.enum(GROUNDS),
  greenSpeed: speed.optional(),
  score: count,
  note: name.optional(),
}) satisfies z.ZodType<KeptResult>;
