/** Typed input. Expected metres by the exact definitions 1 ft = 0.3048 m, 1 in = 0.0254 m. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Parsed,
  parseClock,
  parseGreenSpeed,
  parseLength,
  parsePace,
  parsePercent,
} from '../../../src/text/parse.ts';

const wide = { min: 0.1, max: 30 };
const read = (parsed: Parsed): number => (parsed.ok ? parsed.value : Number.NaN);
/** Unit conversion is one multiplication: nothing beyond rounding. */
const DIGITS = 9;

describe('typed lengths', () => {
  it.each([
    ['12', 3.6576],
    ['12 ft', 3.6576],
    ['12,5', 3.81],
    [`12'6"`, 3.81],
    ['12 ft 6 in', 3.81],
    ['3.5 m', 3.5],
    ['40 in', 1.016],
    ['250 cm', 2.5],
  ])('reads "%s" with feet in use', (text, metres) => {
    expect(read(parseLength(text, 'imperial', wide))).toBeCloseTo(metres, DIGITS);
  });
  it('reads a bare number as metres with metres in use', () => {
    expect(read(parseLength('3.5', 'metric', wide))).toBe(3.5);
  });
  it('reads a bare pace as inches or centimetres', () => {
    expect(read(parsePace('18', 'imperial', { min: 0, max: 2 }))).toBeCloseTo(0.4572, DIGITS);
    expect(read(parsePace('45', 'metric', { min: 0, max: 2 }))).toBeCloseTo(0.45, DIGITS);
  });
  it('says what it got, expected and how to mend it', () => {
    const parsed = parseLength('0', 'imperial', wide);
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) {
      expect(parsed.problem).toContain('Got “0”');
      expect(parsed.problem).toContain('expected a length from 0.3 ft to 98.4 ft');
      expect(parsed.problem).toContain('Type feet');
    }
  });
  it('gives either a value inside the limits or a problem for any text', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.double().map(String), fc.constant('1e999'), fc.constant('NaN')),
        (text) => {
          for (const parsed of [
            parseLength(text, 'imperial', wide),
            parseLength(text, 'metric', wide),
            parsePace(text, 'imperial', wide),
            parsePercent(text, wide),
            parseGreenSpeed(text, wide),
          ])
            if (parsed.ok) expect(parsed.value >= wide.min && parsed.value <= wide.max).toBe(true);
            else expect(parsed.problem).toMatch(/^Got .+, expected .+\. .+/);
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });
});

describe('typed clock positions', () => {
  it.each([
    ['3:00', 3],
    ['3:30', 3.5],
    ['12', 0],
    ['12:30', 0.5],
    ['4.5', 4.5],
  ])('reads "%s"', (text, hours) => {
    expect(read(parseClock(text))).toBe(hours);
  });
  it.each(['13:00', '3:75', '-1', '', 'noon'])('refuses "%s"', (text) => {
    expect(parseClock(text).ok).toBe(false);
  });
});
