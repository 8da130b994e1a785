/** Plain text for a terminal of 80 columns. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columns, facts, wrap } from '../../../src/cli/layout.ts';

describe('a paragraph', () => {
  it('breaks between words only, no line longer than asked, no word lost', () => {
    const word = fc.stringMatching(/^[a-z]{1,12}$/);
    fc.assert(
      fc.property(fc.array(word, { minLength: 1, maxLength: 40 }), (words) => {
        const lines = wrap(words.join(' '), 20).split('\n');
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(20);
        expect(lines.join(' ')).toBe(words.join(' '));
        // No line ends before it must: the next word would not have fitted.
        for (let i = 1; i < lines.length; i += 1)
          expect(lines[i - 1].length + 1 + lines[i].split(' ')[0].length).toBeGreaterThan(20);
      }),
      { seed: 2026 },
    );
  });
  it('keeps a number and its unit on one line', () => {
    expect(wrap('it stops 12 ft away', 11)).toBe('it stops\n12 ft away');
    expect(wrap('of 12 inches', 5)).toBe('of 12\ninches');
  });
  it('leaves a word whole that is longer than the line', () => {
    expect(wrap('a {"kind":"grid"} b', 6)).toBe('a\n{"kind":"grid"}\nb');
  });
});

describe('columns', () => {
  it('stand flush right, the last one flush left, without blanks at the end of a line', () => {
    expect(
      columns([
        ['past', 'aim', ''],
        ['2 in', '18 in right', 'die'],
        ['12 in', '9 in right', ''],
      ]),
    ).toBe([' past          aim', ' 2 in  18 in right  die', '12 in   9 in right'].join('\n'));
  });
  it('stand one blank apart where two would not fit 80 columns', () => {
    const forty = 'x'.repeat(38);
    expect(columns([[forty, forty, '']])).toBe(`${forty}  ${forty}`);
    const wider = 'x'.repeat(39);
    expect(columns([[wider, forty, 'no']])).toBe(`${wider} ${forty} no`);
  });
});

describe('facts', () => {
  it('have their values under one another', () => {
    expect(
      facts([
        ['time', '2.5 s'],
        ['launch speed', '1.90 m/s'],
      ]),
    ).toBe('time          2.5 s\nlaunch speed  1.90 m/s');
  });
});
