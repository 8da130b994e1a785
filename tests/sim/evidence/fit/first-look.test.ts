/** The part of a long record that is fitted first. */
import { describe, expect, it } from 'vitest';
import { type FitRecord, firstLook } from '../../../../sim/index.ts';
import { FITTED_PLAYERS } from '../../../../sim/player/fitted.ts';
import { ORDINARY, recordRounds } from '../../../support/recordingPlayer.ts';

const recordOf = (putts: number): FitRecord =>
  recordRounds({ player: FITTED_PLAYERS.averaging90 }, { says: ORDINARY }, 'first look', putts);

describe('a first look at a record', () => {
  it('is of putts all through it, near and far, in one kind as often as in the whole', () => {
    const record = recordOf(900);
    const look = firstLook(record);
    if (look === undefined) throw new Error('a long record has a first look');
    const share = ({ putts }: FitRecord, of: (putt: FitRecord['putts'][number]) => boolean): number =>
      putts.filter(of).length / putts.length;
    // Two SD of a share of so few putts: what an even sample stays well within.
    const chance = 2 * Math.sqrt(0.25 / look.putts.length);
    for (const of of [
      ({ holed }: { holed: boolean }) => holed,
      ({ distance }: { distance: number }) => distance < 2,
      ({ distance }: { distance: number }) => distance > 5,
    ])
      expect(Math.abs(share(look, of) - share(record, of))).toBeLessThan(chance);
    const roundsOf = ({ putts }: FitRecord): number => new Set(putts.map(({ roundId }) => roundId)).size;
    expect(roundsOf(look)).toBe(roundsOf(record));
    expect(new Set(look.putts.map(({ id }) => id)).size).toBe(look.putts.length);
    expect(look.putts.length).toBeLessThan(record.putts.length / 2);
  });

  it('is left out where the whole is as quick, and where nothing counts', () => {
    expect(firstLook(recordOf(120))).toBeUndefined();
    const conceded = recordOf(900).putts.map((putt) => ({ ...putt, kind: 'conceded' as const }));
    expect(firstLook({ putts: conceded })).toBeUndefined();
  });
});
