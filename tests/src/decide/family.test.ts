/** Die or firm for a whole family, in words: sentences for verdicts made by hand. */
import { describe, expect, it } from 'vitest';
import type { DieOrFirm, DieOrFirmVerdict } from '../../../sim/index.ts';
import { familyDetail, familyHeadline, middleOnlyWords, type TEST_WORDS } from '../../../src/text/family.ts';

/** @param low @param high putts that firm takes more than die */
const found = (verdict: DieOrFirmVerdict, low: number, high: number, asked = 9): DieOrFirm => ({
  verdict,
  difference: { value: (low + high) / 2, low, high },
  asked,
  of: 9,
  all: 9,
});
const turns = (by: 'reading' | 'line', more: 'first' | 'second', test: keyof typeof TEST_WORDS) =>
  found({ kind: 'turns', on: { by, more, test, apart: 1.4 }, firm: 0.4 }, -0.03, 0.05);

describe('the answer for everybody one may be', () => {
  it('is one pace for all, with what it gains over the other, least and most', () => {
    expect(familyHeadline(found({ kind: 'die' }, 0.03, 0.08))).toBe(
      'Die it in here, whoever of these you are: 0.03 to 0.08 putts better than firm.',
    );
    expect(familyHeadline(found({ kind: 'firm' }, -0.08, -0.03))).toBe(
      'Firm it in here, whoever of these you are: 0.03 to 0.08 putts better than dying it in.',
    );
    expect(familyHeadline(found({ kind: 'die' }, -0.004, 0.08))).toMatch(/: up to 0\.08 putts/);
    expect(familyHeadline(found({ kind: 'close' }, -0.004, 0.004))).toMatch(/^Die or firm: no difference/);
  });

  it('names what it turns on, both ways round, and what would tell', () => {
    // first: whom dying it in suits. More reading on the second side: those who misread play firm.
    expect(familyHeadline(turns('reading', 'second', 'gate'))).toBe(
      'It turns on your errors: firm if you misread more than you mis-strike, die it in if you mis-strike more than you misread; twenty balls through a gate would tell.',
    );
    expect(familyHeadline(turns('reading', 'first', 'readingSet'))).toMatch(
      /firm if you mis-strike more than you misread, die it in if you misread more.*ten slopes to name/,
    );
    expect(familyHeadline(turns('line', 'first', 'ladder'))).toMatch(
      /firm if your pace is worse than your start line, die it in if your start line is worse.*to targets near and far/,
    );
  });

  it('says who they are, how many are asked and how far they lie apart', () => {
    expect(familyDetail(turns('reading', 'second', 'gate'), { kind: 'preset', id: 'tour' }, 'Tour')).toBe(
      'These: 9 players who hole about as much as Tour, from mostly stroke to mostly reading (all asked; die over firm −0.03 to +0.05 putts; firm suits 40% of those whom it concerns).',
    );
    expect(
      familyDetail(found({ kind: 'die' }, 0.03, 0.08, 4), { kind: 'fit', source: 'own' }, undefined),
    ).toMatch(
      /^These: 9 players who would have written your record as likely as one another \(4 of 9 asked so far;/,
    );
  });

  it('says whom the asked stand for where not all are asked, and whose answer stands there before', () => {
    const some = { ...found({ kind: 'die' }, 0.03, 0.08, 4), all: 200 };
    expect(familyDetail(some, { kind: 'fit', source: 'own' }, undefined)).toMatch(
      /^These: 200 players who would have written your record as likely as one another \(4 of the 9 of them that span the others asked so far;/,
    );
    expect(middleOnlyWords(5, false)).toBe(
      'So far of the middle one of 5 likely players alone; the others are asked next.',
    );
    expect(middleOnlyWords(5, true)).toMatch(/^Of the middle one .* the others were not asked\.$/);
  });

  it('says nothing where nobody can play both', () => {
    expect(
      familyHeadline({ verdict: { kind: 'noLine' }, difference: undefined, asked: 9, of: 9, all: 9 }),
    ).toBeUndefined();
  });
});
