/** Players between the fitted ones: laws of the straight line between anchors. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HANDICAPS, type Player, PRESETS, playerOfHandicap } from '../../../sim/index.ts';

const presetPlayer = (id: string): Player | undefined => PRESETS.find((preset) => preset.id === id)?.player;
const ERRORS = ['lineSd', 'paceSd', 'slopeSd', 'speedSd'] as const;

describe('players by handicap', () => {
  it('are the presets at the anchors: tour +5, scratch 0, averaging 90 at 16', () => {
    expect(playerOfHandicap(-5).player).toEqual(presetPlayer('tour'));
    expect(playerOfHandicap(0).player).toEqual(presetPlayer('scratch'));
    expect(playerOfHandicap(16).player).toEqual(presetPlayer('averaging-90'));
    for (const handicap of Object.values(HANDICAPS))
      expect(playerOfHandicap(handicap).clamped).toBeUndefined();
  });

  it('grow worse, or stay, in every error as the handicap grows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -8, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (h, more) => {
          const better = playerOfHandicap(h).player;
          const worse = playerOfHandicap(h + more).player;
          // Rounding of one multiplication.
          for (const name of ERRORS) expect(worse[name]).toBeGreaterThanOrEqual(better[name] - 1e-15);
        },
      ),
      { seed: 4711 },
    );
  });

  it('lie halfway between two anchors at the handicap halfway between them', () => {
    const [scratch, middle, ninety] = [0, 8, 16].map((handicap) => playerOfHandicap(handicap).player);
    for (const name of ERRORS) expect(middle[name]).toBeCloseTo((scratch[name] + ninety[name]) / 2, 12);
  });

  it('say when a handicap lies outside the records, and which was taken', () => {
    const beginner = playerOfHandicap(30);
    expect(beginner.player).toEqual(playerOfHandicap(16).player);
    expect(beginner.clamped).toMatch(/16 was taken for 30/);
    expect(playerOfHandicap(-9).clamped).toMatch(/\+5 was taken for \+9/);
    expect(playerOfHandicap(Number.NaN).clamped).toMatch(/no handicap/);
    expect(playerOfHandicap(Number.NaN).player).toEqual(playerOfHandicap(16).player);
  });

  it('say that they are interpolated, and between whom', () => {
    expect(playerOfHandicap(6).source).toMatch(/between the fitted players of handicap 0 and 16/);
    expect(playerOfHandicap(-2).source).toMatch(/handicap \+5 and 0/);
  });

  it('have families that lie between those of the anchors, member by member', () => {
    const [scratch, middle, ninety] = [0, 8, 16].map((handicap) => playerOfHandicap(handicap).family);
    middle.forEach((member, i) => {
      for (const name of ERRORS)
        expect(member[name]).toBeCloseTo((scratch[i][name] + ninety[i][name]) / 2, 12);
    });
  });

  it('give the single-digit preset, handicap 6', () => {
    expect(presetPlayer('handicap-6')).toEqual(playerOfHandicap(6).player);
  });
});
