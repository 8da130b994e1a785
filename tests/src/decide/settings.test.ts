/** Settings found in storage are another program's text until checked; those of the version before are taken over. */
import { describe, expect, it } from 'vitest';
import { degreesToRadians, presetOf } from '../../../sim/index.ts';
import { DEFAULT_PLAYER, parseOlderSettings, parseSettings } from '../../../src/app/settings.ts';
import { takenOverWords } from '../../../src/text/olderErrors.ts';

const DEFAULTS = {
  units: 'imperial',
  theme: 'auto',
  chosen: { origin: { kind: 'preset', id: 'handicap-6' }, player: DEFAULT_PLAYER },
  skid: false,
  capture: 'rim',
  hand: 'right',
  fullRecord: false,
};

describe('stored settings', () => {
  it.each([null, '', '{', '[]', '42', 'null', '{"units":7,"theme":{},"chosen":"tall"}'])(
    'falls back to defaults for %s',
    (text) => {
      expect(parseSettings(text)).toEqual(DEFAULTS);
    },
  );
  it.each([
    ['an impossible error', { origin: { kind: 'byHand' }, player: { ...DEFAULT_PLAYER, paceSd: -1 } }],
    ['an error missing', { origin: { kind: 'byHand' }, player: { ...DEFAULT_PLAYER, slopeSd: undefined } }],
    ['an unknown origin', { origin: { kind: 'guess' }, player: DEFAULT_PLAYER }],
    ['a fit of nobody', { origin: { kind: 'fit', source: 'other' }, player: DEFAULT_PLAYER }],
    ['no origin', { player: DEFAULT_PLAYER }],
  ])('drops a player with %s but keeps the good units', (_what, chosen) => {
    const text = JSON.stringify({ units: 'metric', theme: 'dark', chosen });
    expect(parseSettings(text)).toEqual({ ...DEFAULTS, units: 'metric', theme: 'dark' });
  });
  it('loads what was stored before there was a skid or a rule for the hole, and takes only what it knows of them', () => {
    const stored = {
      units: 'metric',
      theme: 'light',
      chosen: { origin: { kind: 'byHand' }, player: { ...DEFAULT_PLAYER, lineSd: 0.02 } },
    };
    expect(parseSettings(JSON.stringify(stored))).toEqual({ ...DEFAULTS, ...stored });
    expect(parseSettings(JSON.stringify({ ...stored, skid: 'yes' })).skid).toBe(false);
    expect(parseSettings(JSON.stringify({ ...stored, capture: 'magnet' })).capture).toBe('rim');
  });
  it.each([{ kind: 'byHand' }, { kind: 'preset', id: 'tour' }, { kind: 'fit', source: 'own' }] as const)(
    'gives back what was written, with where the errors come from: %o',
    (origin) => {
      const stored = {
        units: 'metric',
        theme: 'light',
        chosen: { origin, player: { ...DEFAULT_PLAYER, readBias: -0.2 } },
        takenOver: { as: 'byHand', fitDropped: true },
        skid: true,
        capture: 'freeFall',
        hand: 'left',
        fullRecord: true,
      } as const;
      expect(parseSettings(JSON.stringify(stored))).toEqual(stored);
    },
  );
});

/** Word for word as the version before wrote them, which kept one number for reading: the share of the break. */
const OLDER_HANDICAP_6 =
  '{"units":"metric","theme":"dark","player":{"lineSd":0.023169245819109823,"paceSd":0.10825,"readSd":0.45625,"readBias":0,"paceBias":0},"skid":true,"capture":"simple","hand":"left","fullRecord":true,"step":0.8}';
const OLDER_BY_HAND =
  '{"units":"imperial","theme":"auto","player":{"lineSd":0.020943951023931952,"paceSd":0.12,"readSd":0.3,"readBias":-0.15,"paceBias":0.02},"skid":false,"capture":"rim","hand":"right","fullRecord":false}';

describe('settings in the form of before', () => {
  it('keep a preset as the same preset in the new form, and everything else as it was', () => {
    expect(parseOlderSettings(OLDER_HANDICAP_6, false)).toEqual({
      units: 'metric',
      theme: 'dark',
      chosen: { origin: { kind: 'preset', id: 'handicap-6' }, player: presetOf('handicap-6')?.player },
      takenOver: { as: 'preset', fitDropped: false },
      skid: true,
      capture: 'simple',
      hand: 'left',
      fullRecord: true,
      step: 0.8,
    });
  });
  it.each([
    ['tour', 1, 0.093, 0.3],
    ['scratch', 1.17, 0.1, 0.4],
    ['averaging-90', 1.59, 0.122, 0.55],
  ] as const)('know the preset %s by its numbers of then', (id, lineSdDeg, paceSd, readSd) => {
    const player = { lineSd: degreesToRadians(lineSdDeg), paceSd, readSd, readBias: 0, paceBias: 0 };
    const { chosen } = parseOlderSettings(JSON.stringify({ player }), false);
    expect(chosen.origin).toEqual({ kind: 'preset', id });
    // One step of a slider away it is nobody's but the person's.
    const moved = { ...player, paceSd: paceSd + 0.005 };
    expect(parseOlderSettings(JSON.stringify({ player: moved }), false).chosen.origin).toEqual({
      kind: 'byHand',
    });
  });
  it('translate errors set by hand: the share of the break into slope, and reading out of the pace', () => {
    const { chosen, takenOver } = parseOlderSettings(OLDER_BY_HAND, true);
    const { speedSd } = DEFAULT_PLAYER;
    expect(chosen.origin).toEqual({ kind: 'byHand' });
    expect(chosen.player).toEqual({
      lineSd: 0.020943951023931952,
      // By hand: 0.3 of a mean slope of 1.6% is 0.48%; such a slope misread is 12.8 times itself in distance.
      paceSd: expect.closeTo(Math.sqrt(0.12 ** 2 - (12.8 * 0.0048) ** 2 - speedSd ** 2), 3),
      paceBias: 0.02,
      slopeSd: expect.closeTo(0.0048, 12),
      speedSd,
      readBias: -0.15,
    });
    expect(takenOver).toEqual({ as: 'byHand', fitDropped: true });
  });
  it('never leave less than half of a pace to the stroke, however large the read was', () => {
    const wild = OLDER_BY_HAND.replace('"readSd":0.3', '"readSd":0.8');
    expect(parseOlderSettings(wild, false).chosen.player.paceSd).toBeCloseTo(0.06, 9);
  });
  it('that this page never wrote fall back to the first player, and nothing is told', () => {
    for (const wrong of ['{}', '[', '{"player":{"lineSd":1}}', OLDER_BY_HAND.replace('0.12', '9')])
      expect(parseOlderSettings(wrong, false)).toEqual({ ...DEFAULTS, takenOver: undefined });
  });
  it('are told of in one sentence, which says what to do next', () => {
    expect(takenOverWords({ as: 'byHand', fitDropped: false })).toBe(
      'Your errors were set in an older form, in which a read was off by a share of the break; they were taken over as the numbers below, with misread slope and green speed taken out of the spread of pace: set them anew, or fit them from your record on “Your errors”.',
    );
    expect(takenOverWords({ as: 'preset', fitDropped: true })).toMatch(
      /taken over as the same player to start from.*the fit to your record has to be made again/,
    );
    for (const as of ['preset', 'byHand'] as const)
      for (const fitDropped of [true, false])
        expect(takenOverWords({ as, fitDropped }).match(/[.!?](\s|$)/g)).toHaveLength(1);
  });
});
