/**
 * Visible numbers. Expected words come from the sizes in the Rules of Golf (hole 4.25 in, ball 1.68 in) and exact unit
 * definitions (1 in = 25.4 mm, 1 ft = 0.3048 m), worked by hand.
 */
import { describe, expect, it } from 'vitest';
import {
  formatAim,
  formatClock,
  formatGreenSpeed,
  formatLeave,
  formatLength,
  formatPercent,
  formatShort,
  formatSpan,
  holeWords,
} from '../../../src/text/format.ts';

const inches = (value: number): number => value * 0.0254;

describe('lengths', () => {
  it('shows a range of leaves in one unit, that of its far end', () => {
    expect(formatSpan(inches(4.2), inches(23), 'imperial')).toBe('4.2 to 23 in');
    expect(formatSpan(inches(12), inches(48), 'imperial')).toBe('1.0 to 4.0 ft');
    expect(formatSpan(0.31, 0.8, 'metric')).toBe('31 to 80 cm');
    expect(formatSpan(0.31, 1.24, 'metric')).toBe('0.3 to 1.2 m');
  });
  it('shows an aim of 29 inches as 29 in or 74 cm', () => {
    expect(formatShort(inches(29), 'imperial')).toBe('29 in');
    expect(formatShort(inches(29), 'metric')).toBe('74 cm'); // 73.66
  });
  it('keeps half inches below ten inches', () => {
    expect(formatShort(inches(7.3), 'imperial')).toBe('7.3 in');
    expect(formatShort(inches(6), 'imperial')).toBe('6 in');
  });
  it('shows a 12-foot putt as 12 ft or 3.66 m', () => {
    expect(formatLength(3.6576, 'imperial')).toBe('12 ft');
    expect(formatLength(3.6576, 'metric')).toBe('3.66 m');
  });
  it('turns to feet for a leave of a yard or more', () => {
    expect(formatLeave(inches(31), 'imperial')).toBe('31 in');
    expect(formatLeave(1.2192, 'imperial')).toBe('4.0 ft');
    expect(formatLeave(1.2192, 'metric')).toBe('1.2 m');
  });
  it('quotes green speed in feet whatever the units', () => {
    expect(formatGreenSpeed(3.048)).toBe('10 ft');
  });
  it('never shows minus zero', () => {
    expect(formatShort(-0.00001, 'imperial')).toBe('0 in');
    expect(formatPercent(-0.00001)).toBe('0.0%');
  });
});

describe('percentages', () => {
  it('gives small shares a decimal and large ones none', () => {
    expect(formatPercent(0.012)).toBe('1.2%');
    expect(formatPercent(0.274)).toBe('27%');
  });
  it('does not call a small chance none', () => {
    expect(formatPercent(0.0004)).toBe('under 0.1%');
    expect(formatPercent(0)).toBe('0.0%');
  });
});

describe('the clock', () => {
  it('names quarter positions and wraps at twelve', () => {
    expect(formatClock(0)).toBe('12:00');
    expect(formatClock(3)).toBe('3:00');
    expect(formatClock(3.5)).toBe('3:30');
    expect(formatClock(11.99)).toBe('12:00');
  });
});

describe('hole words', () => {
  it.each([
    [0, 'dead centre'],
    [-0.8, 'just right of centre'],
    [1.5, 'inside the left edge'],
    [2.125, 'on the left edge'],
    [-2.125 - 1.68, 'a ball outside the right edge'],
    [2.125 + 2.125, 'half a cup outside the left edge'],
    [2.125 + 4.25, 'a cup outside the left edge'],
    [-(2.125 + 6.375), 'a cup and a half outside the right edge'],
    [2.125 + 8.5, 'two cups outside the left edge'],
    [2.125 + 10.625, 'two and a half cups outside the left edge'],
    [2.125 + 42.5, 'ten cups outside the left edge'],
  ])('calls %f inches left of centre "%s"', (offset, words) => {
    expect(holeWords(inches(offset))).toBe(words);
  });
  it('puts the side behind an aim', () => {
    expect(formatAim(inches(-29), 'imperial')).toBe('29 in right');
    expect(formatAim(0, 'metric')).toBe('0 cm');
  });
});
