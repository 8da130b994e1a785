/**
 * The last fit of a player's errors to their record (sim/evidence/fit), one of the person's own record and one of the invented player's:
 * kept on this device (kept.ts) under a versioned key, through a strict gate.
 * It follows from the record and takes a minute to make again: so it is in no backup, and what cannot be read is dropped. A change
 * of the fit that moves its answers raises the number in the key. Leaves out: making it (screens/errors/work.ts), whether its
 * player is the one in use (settings.ts).
 */
import { computed, signal } from '@preact/signals';
import * as z from 'zod';
import { ERRORS, type FittedErrors, type Player, TAPS } from '../../sim/index.ts';
import type { RecordSizes } from '../store/records.ts';
import { keptText, keptValue } from './kept.ts';
import { withinRanges } from './playerRanges.ts';

const VERSION = 3;

/** Whose record it was: as in recordSource.ts, which forgets the invented player's fit with him. */
export type FitSource = 'own' | 'demo';

/** Fits of the version before say too little of their doubt: dropped once there is one of this. */
const before = keptText(`borrow.fit.${VERSION - 1}`);

/** Of a fit what screens show. */
export type FitAnswer = Omit<FittedErrors, 'status' | 'correlations'>;

export interface KeptFit {
  readonly source: FitSource;
  /** Calendar day of the fit, YYYY-MM-DD. */
  readonly day: string;
  /** Of the record it was made from (screens/errors/question.ts): the same digits, the same record. */
  readonly digits: string;
  /** Of the tables at the time: more by now, and the record has grown. */
  readonly sizes: RecordSizes;
  readonly answer: FitAnswer;
}

const count = z.number().int().min(0);
const share = z.number().min(0).max(1);
/** Spreads and habits beyond these are no player's, whatever the record: a radian and more, three times the break or distance. */
const spread = z.number().min(0).max(3);
const habit = z.number().min(-3).max(3);

const playerSchema = z.strictObject({
  lineSd: spread,
  paceSd: spread,
  slopeSd: spread,
  speedSd: spread,
  paceBias: habit,
  readBias: habit,
});

const fittedSchema = (value: z.ZodNumber) => {
  const range = z
    .strictObject({ low: value, high: value })
    .refine(({ low, high }) => low <= high, 'expected the low end below the high one');
  return z.strictObject({
    median: value,
    range90: range,
    range95: range,
    before90: range,
    before95: range,
    told: share,
  });
};
const errorSchema = fittedSchema(habit);
/** Metres past the hole: farther is no green. */
const paceSchema = fittedSchema(z.number().min(-30).max(30));
/** Degrees of freedom. */
const tailsSchema = fittedSchema(z.number().min(0).max(1e6));
const perError = <Schema extends z.ZodType>(of: Schema) =>
  z.strictObject({ lineSd: of, paceSd: of, slopeSd: of, speedSd: of, paceBias: of, readBias: of });

const answerSchema = z.strictObject({
  putts: count,
  practicePutts: count,
  passedOver: count,
  measuredStrokes: count,
  player: playerSchema,
  errors: perError(errorSchema),
  readBias: z.strictObject({
    tooLittle: share,
    tooMuch: share,
    verdict: z.enum(['tooLittle', 'tooMuch', 'cannotTell']),
  }),
  tellApart: z.strictObject({
    taps: z
      .array(z.strictObject({ tap: z.enum(TAPS), putts: count, spread: perError(z.number().min(0)) }))
      .max(TAPS.length),
    pairs: z
      .array(
        z.strictObject({
          errors: z.tuple([z.enum(ERRORS), z.enum(ERRORS)]),
          correlation: z.number().min(-1.001).max(1.001),
          tap: z.enum(TAPS).optional(),
          area: z.number().min(0),
        }),
      )
      .max(15),
  }),
  players: z.array(playerSchema).min(1).max(1000),
  pace: z.strictObject({ intentKnown: z.boolean(), usual: paceSchema, rolledPast: paceSchema }),
  tails: tailsSchema,
  worth: z.number().min(0),
  rough: z.boolean(),
});

const fitSchema = z.strictObject({
  source: z.enum(['own', 'demo']),
  day: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/)
    .refine((text) => !Number.isNaN(Date.parse(`${text}T00:00:00Z`)), 'expected a day of the calendar'),
  digits: z.string().regex(/^[0-9a-f]{8}$/),
  sizes: z.strictObject({ putts: count, sets: count }),
  answer: answerSchema,
});
const keptSchema = z
  .strictObject({ version: z.literal(VERSION), fits: z.array(fitSchema).max(2) })
  .refine(
    ({ fits }) => new Set(fits.map(({ source }) => source)).size === fits.length,
    'expected one of each',
  );

const fitsIn = ({ fits }: z.infer<typeof keptSchema>): readonly KeptFit[] => fits as readonly KeptFit[];
const kept = keptValue<z.infer<typeof keptSchema>>({
  key: `borrow.fit.${VERSION}`,
  schema: keptSchema,
  otherwise: () => ({ version: VERSION, fits: [] }),
});
/** Fits out of a stored text; whatever is not as we would have written it counts as none. */
export const parseFits = (text: string | null): readonly KeptFit[] => fitsIn(kept.parse(text));

const fits = signal(fitsIn(kept.load()));
/** At most one of each source. */
export const keptFits = computed(() => fits.value);
export const keptFitOf = (source: FitSource): KeptFit | undefined =>
  fits.value.find((fit) => fit.source === source);

// What another tab has fitted, or forgotten.
kept.follow((found) => {
  fits.value = fitsIn(found);
});

const keep = (next: readonly KeptFit[]): void => {
  fits.value = next;
  if (kept.save({ version: VERSION, fits: next as z.infer<typeof keptSchema>['fits'] })) before.forget();
};

/** The medians as errors for every screen: a player whose errors may be set by hand, too. */
export const playerOfFit = ({ answer }: Pick<KeptFit, 'answer'>): Player => withinRanges(answer.player);

/** Keeps a fit in the place of the one before from the same record. */
export const keepFit = (fit: KeptFit): void =>
  keep([fit, ...fits.peek().filter(({ source }) => source !== fit.source)]);

export const forgetFit = (source: FitSource): void => {
  const rest = fits.peek().filter((fit) => fit.source !== source);
  if (rest.length < fits.peek().length) keep(rest);
};
