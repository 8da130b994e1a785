/** The published tables as copied: what their sources say of them, and one against another. */
import { describe, expect, it } from 'vitest';
import { BERRY_HOLED, PUBLISHED_FIGURES, TOUR_HOLED } from '../../../sim/index.ts';

describe('the published holing tables', () => {
  it('have the rows and the putts their sources speak of: 19 distances; 31 distances, 1.25 million putts', () => {
    expect(BERRY_HOLED).toHaveLength(19);
    expect(TOUR_HOLED).toHaveLength(31);
    const putts = TOUR_HOLED.reduce((sum, { tries }) => sum + tries, 0);
    // "1.25 million": to ten thousand.
    expect(Math.abs(putts - 1.25e6)).toBeLessThan(1e4);
  });

  it.each([
    ['Berry', BERRY_HOLED],
    ['tour', TOUR_HOLED],
  ])('never hole more than were tried, and go outward: %s', (_, rows) => {
    for (const [index, { feet, tries, holed }] of rows.entries()) {
      expect(holed).toBeLessThan(tries);
      if (index > 0) expect(feet).toBeGreaterThan(rows[index - 1].feet);
    }
  });

  it('agree with the one-putt per cents of the tour, which another source gives', () => {
    const between = (feet: number): number => {
      const after = TOUR_HOLED.findIndex((row) => row.feet >= feet);
      const [near, far] = [TOUR_HOLED[after - 1], TOUR_HOLED[after]];
      const part = (feet - near.feet) / (far.feet - near.feet);
      return (1 - part) * (near.holed / near.tries) + part * (far.holed / far.tries);
    };
    const rounded = PUBLISHED_FIGURES.filter(({ player, what }) => player === 'tour' && what === 'holed');
    expect(rounded).toHaveLength(10);
    // Whole per cents (half a point), of other years (a point and a half).
    for (const { feet, value } of rounded)
      expect(Math.abs(value - between(feet)), `${feet} ft`).toBeLessThan(0.02);
  });
});
