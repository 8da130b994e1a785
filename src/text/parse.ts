/**
 * Typed input to SI, or a sentence that says what it got, what it expected and how to mend it.
 * Answers for: lengths, percentages, clock positions, green speeds and plain numbers as people type them.
 */
import { feetToMetres, inchesToMetres } from '../../sim/index.ts';
import { formatLength, formatShort, type Units } from './format.ts';

export type Parsed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly problem: string };

export interface Limits {
  readonly min: number;
  readonly max: number;
}

/** A number with a decimal point or comma; NaN when it is anything else. */
const toNumber = (text: string): number =>
  /^[+\-\u2212]?(\d+([.,]\d*)?|[.,]\d+)$/.test(text)
    ? Number(text.replace(',', '.').replace('\u2212', '-'))
    : Number.NaN;

const shown = (text: string): string => (text.trim() === '' ? 'nothing' : `“${text.trim().slice(0, 24)}”`);

const fail = (text: string, expected: string, mend: string): Parsed => ({
  ok: false,
  problem: `Got ${shown(text)}, expected ${expected}. ${mend}`,
});

const FOOT_AND_INCH =
  /^(\d+(?:[.,]\d*)?)\s*(?:ft|feet|foot|'|′)\s*(?:(\d+(?:[.,]\d*)?)\s*(?:in|inch|inches|"|″)?)?$/i;
const WITH_UNIT = /^([+\-\u2212]?[\d.,]+)\s*(m|metres?|meters?|cm|in|inch|inches|"|″)?$/i;

/** Metres from "12", "12 ft", `12'6"`, "3.5 m", "40 cm" or "18 in"; a bare number is in `bare` units. NaN: not a length. */
const toMetres = (text: string, bare: (value: number) => number): number => {
  const trimmed = text.trim();
  const imperial = FOOT_AND_INCH.exec(trimmed);
  if (imperial)
    return feetToMetres(toNumber(imperial[1])) + inchesToMetres(imperial[2] ? toNumber(imperial[2]) : 0);
  const plain = WITH_UNIT.exec(trimmed);
  if (!plain) return Number.NaN;
  const value = toNumber(plain[1]);
  const unit = plain[2]?.toLowerCase();
  if (unit === undefined) return bare(value);
  if (unit === 'cm') return value / 100;
  if (unit.startsWith('m')) return value;
  return inchesToMetres(value);
};

const between = (value: number, { min, max }: Limits): boolean => value >= min && value <= max;

/** The length of a putt; a bare number is feet or metres by the units in use. @returns metres */
export const parseLength = (text: string, units: Units, limits: Limits): Parsed => {
  const value = toMetres(text, units === 'imperial' ? feetToMetres : (metres) => metres);
  if (between(value, limits)) return { ok: true, value };
  return fail(
    text,
    `a length from ${formatLength(limits.min, units)} to ${formatLength(limits.max, units)}`,
    units === 'imperial' ? 'Type feet, such as 12 or 12 ft 6 in.' : 'Type metres, such as 3.5.',
  );
};

/** A short length, such as the width of a gate; a bare number is inches or centimetres. @returns metres */
export const parseShort = (text: string, units: Units, limits: Limits, what = 'a length'): Parsed => {
  const value = toMetres(text, units === 'imperial' ? inchesToMetres : (centimetres) => centimetres / 100);
  if (between(value, limits)) return { ok: true, value };
  return fail(
    text,
    `${what} from ${formatShort(limits.min, units)} to ${formatShort(limits.max, units)}`,
    units === 'imperial' ? 'Type inches, such as 18.' : 'Type centimetres, such as 45.',
  );
};

/** A pace past the hole; a bare number is inches or centimetres. @returns metres */
export const parsePace = (text: string, units: Units, limits: Limits): Parsed =>
  parseShort(text, units, limits, 'a distance past the hole');

export interface Quantity extends Limits {
  /** With its article: "a time". */
  readonly what: string;
  /** What may stand behind the number, the one shown first, longer ones later: s, seconds. */
  readonly unit: readonly string[];
  /** "such as 3.2" */
  readonly example: string;
  /** Smallest step; left out: any number. */
  readonly step?: number;
}

/** Any other number, with or without its unit. @returns the number in that unit */
export const parseQuantity = (text: string, quantity: Quantity): Parsed => {
  const { what, unit, example, step, min, max } = quantity;
  const typed = text.trim().toLowerCase();
  const suffix = unit.findLast((word) => typed.endsWith(word)) ?? '';
  const bare = typed.slice(0, typed.length - suffix.length).trim();
  const value = toNumber(bare);
  if (between(value, quantity) && (step === undefined || Number.isInteger(value / step)))
    return { ok: true, value };
  const shownUnit = unit.length > 0 ? ` ${unit[0]}` : '';
  return fail(text, `${what} from ${min} to ${max}${shownUnit}`, `Type a number such as ${example}.`);
};

/** A percentage such as a slope. @returns share */
export const parsePercent = (text: string, limits: Limits): Parsed => {
  const value = toNumber(text.trim().replace(/\s*%$/, '')) / 100;
  if (between(value, limits)) return { ok: true, value };
  return fail(
    text,
    `a percentage from ${+(limits.min * 100).toFixed(1)} to ${+(limits.max * 100).toFixed(1)}`,
    'Type rise over run in percent, such as 2.5.',
  );
};

/** A Stimpmeter reading in feet. @returns metres */
export const parseGreenSpeed = (text: string, limits: Limits): Parsed => {
  const value = feetToMetres(toNumber(text.trim().replace(/\s*(ft|feet)$/i, '')));
  if (between(value, limits)) return { ok: true, value };
  return fail(
    text,
    `a green speed from ${formatLength(limits.min, 'imperial')} to ${formatLength(limits.max, 'imperial')}`,
    'Type the Stimpmeter reading in feet, such as 10.',
  );
};

/** A clock position: "3:00", "3:30", "3.5" or "12". @returns hours in [0, 12) */
export const parseClock = (text: string): Parsed => {
  const face = /^(\d{1,2}):(\d{2})$/.exec(text.trim());
  const hours = face
    ? Number(face[1]) + (Number(face[2]) < 60 ? Number(face[2]) / 60 : Number.NaN)
    : toNumber(text.trim());
  if (hours >= 0 && hours < 13) return { ok: true, value: hours % 12 };
  return fail(
    text,
    'a clock position from 12:00 to 11:59',
    'Type the hour of the ball with the hole as the centre, such as 3:00 for pin-high.',
  );
};

/** Any name may seed a green, but not an empty or endless one. */
export const parseSeed = (text: string): { ok: true; value: string } | { ok: false; problem: string } => {
  const value = text.trim();
  if (value.length >= 1 && value.length <= 24) return { ok: true, value };
  return {
    ok: false,
    problem: `Got ${shown(text)}, expected a word or number of 1 to 24 characters. Type any, such as 7.`,
  };
};
