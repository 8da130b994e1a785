/** What the practice screen is set to: the filter, and settings that come back from the device or are dropped. */
import { describe, expect, it } from 'vitest';
import { PUTTING_DRILLS } from '../../../drills/putting-drills.ts';
import { filterDrills, parsePractice, type StoredPractice } from '../../../src/screens/practice/state.ts';

const names = (filter: StoredPractice['filter']): string[] =>
  filterDrills(PUTTING_DRILLS, filter).map(({ id }) => id);

describe('the library', () => {
  it('shows all drills where nothing is asked, and both-ground drills under either ground', () => {
    expect(names({ ground: 'any', trains: 'any', minutes: 'any' })).toHaveLength(PUTTING_DRILLS.length);
    for (const ground of ['grass', 'carpet'] as const)
      expect(names({ ground, trains: 'line', minutes: 'any' })).toContain('start-gate');
  });

  it('shows a drill of exactly as many minutes as asked, and none longer', () => {
    const shown = names({ ground: 'carpet', trains: 'any', minutes: '8' });
    expect(shown).toContain('carpet-gate');
    expect(shown).not.toContain('carpet-two-gates');
  });
});

describe('settings of the practice screen', () => {
  const GOOD: StoredPractice = {
    drillId: 'carpet-gate',
    ground: 'carpet',
    filter: { ground: 'carpet', trains: 'pace', minutes: '12' },
  };
  it('come back as they were kept', () => {
    expect(parsePractice(JSON.stringify(GOOD))).toEqual(GOOD);
  });

  it.each([
    ['nothing', null],
    ['no JSON', '{'],
    ['another thing', '[1]'],
    [
      'values of no meaning',
      JSON.stringify({ drillId: '__proto__', ground: 'sand', filter: { minutes: 8 } }),
    ],
  ])('begin anew from %s', (_what, text) => {
    expect(parsePractice(text)).toEqual(parsePractice('{}'));
    expect(parsePractice(text)).toMatchObject({ drillId: PUTTING_DRILLS[0].id, ground: 'grass' });
  });
});
