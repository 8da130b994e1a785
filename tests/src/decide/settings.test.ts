/** Settings found in storage are another program's text until checked. */
import { describe, expect, it } from 'vitest';
import { EARLIER_PRESETS } from '../../../sim/index.ts';
import { DEFAULT_PLAYER, parseSettings } from '../../../src/app/settings.ts';

describe('stored settings', () => {
  it.each([null, '', '{', '[]', '42', 'null', '{"units":7,"theme":{},"player":"tall"}'])(
    'falls back to defaults for %s',
    (text) => {
      expect(parseSettings(text)).toEqual({
        units: 'imperial',
        theme: 'auto',
        player: DEFAULT_PLAYER,
        skid: false,
        capture: 'rim',
        hand: 'right',
        fullRecord: false,
      });
    },
  );
  it('drops a player with an impossible error but keeps the good units', () => {
    const text = JSON.stringify({
      units: 'metric',
      theme: 'dark',
      player: { ...DEFAULT_PLAYER, paceSd: -1 },
    });
    expect(parseSettings(text)).toEqual({
      units: 'metric',
      theme: 'dark',
      player: DEFAULT_PLAYER,
      skid: false,
      capture: 'rim',
      hand: 'right',
      fullRecord: false,
    });
  });
  it('loads what was stored before there was a skid or a rule for the hole, and takes only what it knows of them', () => {
    const stored = { units: 'metric', theme: 'light', player: { ...DEFAULT_PLAYER, lineSd: 0.02 } };
    expect(parseSettings(JSON.stringify(stored))).toEqual({
      ...stored,
      skid: false,
      capture: 'rim',
      hand: 'right',
      fullRecord: false,
    });
    expect(parseSettings(JSON.stringify({ ...stored, skid: 'yes' })).skid).toBe(false);
    expect(parseSettings(JSON.stringify({ ...stored, capture: 'magnet' })).capture).toBe('rim');
  });
  it('loads a player who was an earlier preset with their own numbers', () => {
    for (const { player } of EARLIER_PRESETS)
      expect(parseSettings(JSON.stringify({ units: 'imperial', theme: 'auto', player })).player).toEqual(
        player,
      );
  });
  it('gives back what was written', () => {
    const stored = {
      units: 'metric',
      theme: 'light',
      player: { ...DEFAULT_PLAYER, readBias: -0.2 },
      skid: true,
      capture: 'freeFall',
      hand: 'left',
      fullRecord: true,
    } as const;
    expect(parseSettings(JSON.stringify(stored))).toEqual(stored);
  });
});
