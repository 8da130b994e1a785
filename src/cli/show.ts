/** Values from outside, shown in a message: short, on one line, whatever they hold. */

/** Longest piece of someone else's text worth repeating, characters. */
const LONGEST = 40;

/** Anything a terminal would take as a new line or a command. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are exactly what must go
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g;

/** One line of plain text. */
export const oneLine = (text: string): string => text.replace(CONTROL, ' ').trim();

const clip = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST)}...` : text);

/** "nothing", 40, "text", a list of 3 values, an object. */
export const showValue = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'string') return `"${clip(oneLine(value))}"`;
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : 'a number too large to use';
  if (typeof value === 'boolean') return String(value);
  if (!Array.isArray(value)) return 'an object';
  const short = value.length > 0 && value.length <= 3 && value.every((item) => typeof item === 'number');
  return short
    ? `[${value.join(', ')}]`
    : `a list of ${value.length} ${value.length === 1 ? 'value' : 'values'}`;
};
