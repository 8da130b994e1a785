/**
 * Plain text set out for a terminal of 80 columns: paragraphs, columns, name-and-value lists. Leaves out: what they say.
 */

/** Columns of the narrowest terminal in use. */
export const PAGE_WIDTH = 80;

/** A number and its unit, which stay on one line. */
const MEASURE = /(\d) (ft|in|cm|m|s)(?![a-z])/g;

/** Breaks one paragraph between words, never between a number and its unit; a word longer than the page stays whole. */
export const wrap = (text: string, width = PAGE_WIDTH): string => {
  const lines: string[] = [];
  for (const word of text.replace(MEASURE, '$1\u00a0$2').split(' ')) {
    const longer = lines.length === 0 ? word : `${lines[lines.length - 1]} ${word}`;
    if (lines.length > 0 && longer.length <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.join('\n').replaceAll('\u00a0', ' ');
};

/**
 * Columns as wide as their widest cell, flush right; the last one, which holds remarks, flush left. Two blanks apart, or one
 * where two would not fit the page.
 */
export const columns = (rows: readonly (readonly string[])[]): string => {
  const widths = rows[0].map((_, index) => Math.max(...rows.map((row) => row[index].length)));
  const last = widths.length - 1;
  const apart = (gap: string): string[] =>
    rows.map((row) =>
      row
        .map((cell, index) => (index === last ? cell : cell.padStart(widths[index])))
        .join(gap)
        .trimEnd(),
    );
  const wide = apart('  ');
  return (wide.every((line) => line.length <= PAGE_WIDTH) ? wide : apart(' ')).join('\n');
};

/** A list of names and values, the values under one another. */
export const facts = (rows: readonly (readonly [string, string])[]): string => {
  const width = Math.max(...rows.map(([name]) => name.length));
  return rows.map(([name, value]) => `${name.padEnd(width)}  ${value}`).join('\n');
};
