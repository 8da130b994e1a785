/** The putt being entered, tap by tap. What is expected is written out by hand from the questions a player is asked. */
import { describe, expect, it } from 'vitest';
import {
  backFrom,
  draftOf,
  freshDraft,
  isComplete,
  isToBeSaved,
  isTouched,
  type PuttDraft,
  padOf,
  puttOf,
  type Tap,
  tapped,
} from '../../../src/screens/record/draft.ts';
import { puttSchema } from '../../../src/store/recordSchema.ts';

const FIRST = freshDraft({ id: 'putt-0001', roundId: 'round-0001', hole: 4 });
const entered = (draft: PuttDraft, ...taps: Tap[]): PuttDraft => taps.reduce(tapped, draft);
const distance = (metres: number): Tap => ({ kind: 'distance', metres });
const UP: Tap = { kind: 'climb', climb: 'up' };
const FROM_LEFT: Tap = { kind: 'breaks', breaks: 'leftToRight' };
const STRAIGHT: Tap = { kind: 'breaks', breaks: 'straight' };
const LOW_PAST: Tap = { kind: 'missed', side: 'low', reach: 'past' };
const leave = (metres: number): Tap => ({ kind: 'leave', metres });
const HOLED: Tap = { kind: 'holed' };

describe('a putt on the form', () => {
  it('asks for the putt, then where it went, then what was left, and is saved by the fifth tap', () => {
    const pads: string[] = [];
    let draft = FIRST;
    for (const tap of [distance(4), UP, FROM_LEFT, LOW_PAST, leave(0.5)]) {
      expect(isToBeSaved(draft)).toBe(false);
      pads.push(padOf(draft));
      draft = tapped(draft, tap);
    }
    expect(pads).toEqual(['putt', 'putt', 'putt', 'result', 'leave']);
    expect(isToBeSaved(draft)).toBe(true);
    expect(puttOf(draft, 77)).toEqual({
      id: 'putt-0001',
      roundId: 'round-0001',
      hole: 4,
      stroke: 1,
      kind: 'putt',
      distance: 4,
      climb: 'up',
      breaks: 'leftToRight',
      holed: false,
      miss: { side: 'low', reach: 'past', leave: 0.5 },
      recordedAt: 77,
    });
  });

  it('is holed in four taps, and in three when climb and break are left out', () => {
    expect(isToBeSaved(entered(FIRST, distance(4), UP, FROM_LEFT, HOLED))).toBe(true);
    const short = entered(FIRST, distance(4), { kind: 'goOn' }, HOLED);
    expect(isToBeSaved(short)).toBe(true);
    expect(puttOf(short, 1)).not.toHaveProperty('climb');
  });

  it('takes distance, climb and break in any order', () => {
    expect(padOf(entered(FIRST, FROM_LEFT, UP, distance(4)))).toBe('result');
    expect(padOf(entered(FIRST, UP, distance(4)))).toBe('putt');
  });

  it('does not go on by a fine step, and not without a distance', () => {
    const stepped = entered(FIRST, UP, FROM_LEFT, { kind: 'distance', metres: 4, fine: true });
    expect(padOf(stepped)).toBe('putt');
    expect(padOf(tapped(stepped, { kind: 'goOn' }))).toBe('result');
    expect(tapped(FIRST, { kind: 'goOn' })).toEqual(FIRST);
    const left = entered(FIRST, distance(4), UP, STRAIGHT, { kind: 'missed', side: 'left', reach: 'short' });
    expect(isToBeSaved(tapped(left, { kind: 'leave', metres: 1, fine: true }))).toBe(false);
  });

  it('goes on to the next one with the leave as its distance, finished by one tap', () => {
    const second = freshDraft({ id: 'putt-0002', roundId: 'round-0001', hole: 4, left: 0.5 });
    expect(padOf(second)).toBe('result');
    expect(isTouched(second)).toBe(false);
    expect(isToBeSaved(tapped(second, HOLED))).toBe(true);
    const again = entered(second, { kind: 'missed', reach: 'past' }, leave(0.2));
    expect(puttOf(again, 1).miss).toEqual({ reach: 'past', leave: 0.2 });
  });

  it('writes conceded putts and putts from off the green as kinds of their own', () => {
    const conceded = entered(FIRST, distance(0.4), { kind: 'goOn' }, { kind: 'conceded' });
    expect(puttOf(conceded, 1)).toMatchObject({ kind: 'conceded', holed: false, distance: 0.4 });
    expect(puttOf(conceded, 1)).not.toHaveProperty('miss');
    const off = entered(FIRST, { kind: 'offGreen', offGreen: true }, distance(9), { kind: 'goOn' }, LOW_PAST);
    expect(puttOf(tapped(off, leave(1)), 1).kind).toBe('offGreen');
  });

  it('asks again where it went when the break is corrected and the side no longer fits', () => {
    const missed = { ...entered(FIRST, distance(4), UP, FROM_LEFT, LOW_PAST, leave(0.5)), looked: true };
    const straight = entered(missed, { kind: 'ask', pad: 'putt' }, STRAIGHT);
    expect(padOf(straight)).toBe('result');
    expect(straight.side).toBeUndefined();
    const other = entered(missed, { kind: 'ask', pad: 'putt' }, { kind: 'breaks', breaks: 'rightToLeft' });
    expect(other.side).toBe('low');
  });

  it('goes one question back at a time, and says when nothing is left to take back', () => {
    const missed = entered(FIRST, distance(4), UP, FROM_LEFT, LOW_PAST);
    const result = backFrom(missed);
    expect(result && padOf(result)).toBe('result');
    const putt = result && backFrom(result);
    expect(putt && padOf(putt)).toBe('putt');
    // What was tapped there still stands: one more tap goes on.
    expect(putt).toMatchObject({ distance: 4, climb: 'up', breaks: 'leftToRight' });
    expect(putt && padOf(tapped(putt, UP))).toBe('result');
    const empty = putt && backFrom(putt);
    expect(empty).toEqual(FIRST);
    expect(backFrom(FIRST)).toBeUndefined();
  });

  it('is shown whole before it is saved when it was taken back, and each answer can be given anew', () => {
    const record = puttOf(entered(FIRST, distance(4), UP, FROM_LEFT, LOW_PAST, leave(0.5)), 9);
    const again = draftOf(record);
    expect(padOf(again)).toBe('check');
    expect(isToBeSaved(again)).toBe(false);
    expect(puttOf(again, 9)).toEqual(record);
    const asked = entered(again, { kind: 'ask', pad: 'leave' });
    expect(padOf(asked)).toBe('leave');
    const changed = tapped(asked, leave(0.9));
    expect(padOf(changed)).toBe('check');
    expect(puttOf(changed, 9).miss?.leave).toBe(0.9);
    expect(backFrom(asked)).toMatchObject({ leave: 0.5 });
    expect(backFrom(again)).toBeUndefined();
  });

  it('takes an optional word back by tapping it again, and leaves it out of the record', () => {
    const said = entered(FIRST, { kind: 'more', more: { paceMeant: 'die', startedAsMeant: false } });
    expect(isTouched(said)).toBe(true);
    const taken = entered(
      said,
      { kind: 'more', more: { paceMeant: undefined } },
      distance(3),
      { kind: 'goOn' },
      HOLED,
    );
    expect(puttOf(taken, 1)).not.toHaveProperty('paceMeant');
    expect(puttOf(taken, 1).startedAsMeant).toBe(false);
  });

  it('becomes a record the store takes, whatever was tapped in whatever order', () => {
    const taps: Tap[] = [
      distance(3),
      distance(12),
      UP,
      { kind: 'climb', climb: 'level' },
      FROM_LEFT,
      STRAIGHT,
      { kind: 'goOn' },
      LOW_PAST,
      { kind: 'missed', side: 'left', reach: 'short' },
      { kind: 'missed', reach: 'past' },
      leave(0.4),
      HOLED,
      { kind: 'conceded' },
      { kind: 'offGreen', offGreen: true },
      { kind: 'offGreen', offGreen: false },
      { kind: 'more', more: { slopeFelt: 'steep' } },
      { kind: 'ask', pad: 'putt' },
      { kind: 'ask', pad: 'result' },
    ];
    // A small linear congruence (Knuth's constants) in place of chance; only taps the shown question offers.
    let seed = 7;
    const next = (): number => {
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      return seed / 2 ** 32;
    };
    const offered = (draft: PuttDraft, tap: Tap): boolean => {
      const pad = padOf(draft);
      if (tap.kind === 'missed')
        return (
          pad === 'result' &&
          (draft.breaks === undefined
            ? tap.side === undefined
            : draft.breaks === 'straight'
              ? tap.side === 'left'
              : tap.side === 'low')
        );
      if (tap.kind === 'holed' || tap.kind === 'conceded')
        return pad === 'result' && draft.distance !== undefined;
      if (tap.kind === 'leave') return pad === 'leave';
      if (tap.kind === 'ask') return pad === 'check';
      if (tap.kind === 'distance' || tap.kind === 'climb' || tap.kind === 'breaks' || tap.kind === 'goOn')
        return pad === 'putt';
      return true;
    };
    let completed = 0;
    for (let run = 0; run < 2000; run += 1) {
      let draft = run % 2 === 0 ? FIRST : { ...FIRST, looked: true };
      for (let step = 0; step < 14; step += 1) {
        const tap = taps[Math.floor(next() * taps.length)];
        if (offered(draft, tap)) draft = tapped(draft, tap);
      }
      if (!isComplete(draft)) continue;
      completed += 1;
      expect(puttSchema.safeParse(puttOf(draft, 5)).error).toBeUndefined();
    }
    expect(completed).toBeGreaterThan(200);
  });
});
