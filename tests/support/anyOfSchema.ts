/**
 * Any values a shape lets pass, for fast-check: every field at the ends of its range, names that files and spreadsheets find hard. Taken
 * from the shape, so that a field nobody thought of here is tried too. Leaves out: texts of a pattern, and what fields ask of
 * one another beyond chance; give those by hand.
 */
import fc from 'fast-check';
import * as z from 'zod';

/** Names that break a careless writer: quotes, delimiters, line ends, formulas, markup, other scripts, prototype names. */
const HARD_NAMES = [
  '=1+1',
  "'=1+1",
  "''=x",
  "'t Zand",
  '+49 30',
  '-3',
  '@sum',
  'a, b; c\td',
  'two\nlines',
  'two\r\nlines',
  'a "quoted" name',
  '"',
  '<img src=x onerror=alert(1)>',
  '__proto__',
  'constructor',
  'Größe 北京 🏌️',
  '3,2',
  '0012',
  'null',
  '\ufeffmark inside? \ufeff!',
];
export const anyName = fc
  .oneof(fc.constantFrom(...HARD_NAMES), fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }))
  .map((text) => text.trim());
export const anyDay = fc
  .date({ min: new Date('0001-01-01'), max: new Date('9999-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

/** Without fields that hold nothing: that is how records are written. */
export const tidy = <Kept extends object>(record: Kept): Kept =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Kept;

/** Where a shape sets no end, m, ms, points: what fits into no field of ours by mistake. */
const FAR = 1e6;

const anyNumber = ({ minValue, maxValue, isInt }: z.ZodNumber): fc.Arbitrary<number> => {
  const min = Math.max(minValue ?? -FAR, -Number.MAX_SAFE_INTEGER);
  const max = Math.min(maxValue ?? FAR, Number.MAX_SAFE_INTEGER);
  const within = isInt
    ? fc.integer({ min, max: Math.min(max, min + 2e12) })
    : fc.double({ min, max, noNaN: true });
  // Minus zero does not survive JSON, nor does it say anything else than zero.
  return fc.oneof(within, fc.constantFrom(min, max)).map((value) => value + 0);
};

const any = (schema: unknown): fc.Arbitrary<unknown> => {
  if (schema instanceof z.ZodOptional) return fc.option(any(schema.unwrap()), { nil: undefined });
  if (schema instanceof z.ZodISODate) return anyDay;
  if (schema instanceof z.ZodString) return anyName.filter((text) => schema.safeParse(text).success);
  if (schema instanceof z.ZodNumber) return anyNumber(schema);
  if (schema instanceof z.ZodBoolean) return fc.boolean();
  if (schema instanceof z.ZodLiteral) return fc.constantFrom(...schema.values);
  if (schema instanceof z.ZodEnum) return fc.constantFrom(...schema.options);
  if (schema instanceof z.ZodUnion) return fc.oneof(...schema.options.map(any));
  if (schema instanceof z.ZodArray)
    return fc
      .array(any(schema.element), { maxLength: 4 })
      .filter((values) => schema.safeParse(values).success);
  if (schema instanceof z.ZodObject) return anyShape(schema.shape, {});
  throw new Error(`Got a shape of another kind, expected one that can be drawn from. Give it by hand.`);
};

const anyShape = (
  shape: Readonly<Record<string, unknown>>,
  given: Readonly<Record<string, fc.Arbitrary<unknown>>>,
): fc.Arbitrary<object> =>
  fc
    .record(
      Object.fromEntries(Object.entries(shape).map(([name, field]) => [name, given[name] ?? any(field)])),
    )
    .map(tidy);

export interface AnyOptions<Kept> {
  /** Fields given by hand. */
  readonly given?: { readonly [Field in keyof Kept]?: fc.Arbitrary<unknown> };
  /** Mends what fields ask of one another. */
  readonly mend?: (found: Kept) => Kept;
}

/** Any record of a shape; one in a few draws must pass it. */
export const anyOfSchema = <Kept extends object>(
  schema: z.ZodType<Kept>,
  { given = {}, mend = (found) => found }: AnyOptions<Kept> = {},
): fc.Arbitrary<Kept> => {
  if (!(schema instanceof z.ZodObject)) throw new Error('Got a shape without fields, expected an object’s.');
  return anyShape(schema.shape, given as Readonly<Record<string, fc.Arbitrary<unknown>>>)
    .map((found) => tidy(mend(found as Kept)))
    .filter((found) => schema.safeParse(found).success);
};
