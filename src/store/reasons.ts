/** Why a record is refused, in a sentence: what was got, where, and what was expected. */
import type * as z from 'zod';

/** Longest piece of a file repeated in a reason, characters. */
const LONGEST_QUOTE = 40;

/** A value of a file as text, short enough to stand in a sentence. */
export const quoted = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? typeof value);
  const short = text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
  return `“${short}”`;
};

const valueAt = (found: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    found,
  );

/** Fields that are lengths in metres: a bound without its unit would be taken for feet. */
const LENGTHS = new Set<PropertyKey | undefined>(['distance', 'leave', 'greenSpeed']);

/** "number to be <=61" as one says it: "at most 61". */
const plainly = (message: string, field: PropertyKey | undefined): string =>
  message
    .replace(/^(Invalid (input|option): |Too (big|small): )/, '')
    .replace(/^expected (number|string|array) to (be|have) (<=|>=)/, (_all, _kind, _verb, sign) =>
      sign === '<=' ? 'expected at most ' : 'expected at least ',
    )
    .replace(/(?<=(most|least) [\d.]+)$/, LENGTHS.has(field) ? ' m' : '');

/** The first thing the gate has against a record. */
export const reasonOf = (schema: z.ZodType, found: unknown): string | undefined => {
  const result = schema.safeParse(found);
  if (result.success) return undefined;
  const [issue] = result.error.issues;
  const where = issue.path.length > 0 ? ` for ${issue.path.join('.')}` : '';
  if (issue.code === 'unrecognized_keys')
    return `Got the field ${issue.keys.map(quoted).join(', ')}${where}, which no record has: take it out, or use a newer version of this page.`;
  const expected = plainly(issue.message, issue.path.at(-1));
  const asked = /^expected/.test(expected) ? expected : `expected ${expected}`;
  return `Got ${quoted(valueAt(found, issue.path))}${where}, ${asked}.`;
};
