/** Settings found in storage are another program's text until checked; those of the version before are taken over. */
import { describe, expect, it } from 'vitest';
import { degreesToRadians, presetOf } from '../../../sim/index.ts';
import {
  backToPreset,
  choosePreset,
  DEFAULT_PLAYER,
  knownPlayer,
  narrowBy,
  narrowedBy,
  parseOlderSettings,
  parseSettings,
  setErrors,
  widenBy,
} from '../../../src/state/settings.ts';
import { narrowedWords } from '../../../src/text/narrowed.ts';
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
    // Offered once, a bound that is nobody's hole.
    expect(parseSettings(JSON.stringify({ ...stored, capture: 'freeFall' })).capture).toBe('rim');
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
        capture: 'simple',
        hand: 'left',
        fullRecord: true,
      } as const;
      expect(parseSettings(JSON.stringify(stored))).toEqual(stored);
    },
  );
});

describe('a preset narrowed by what was measured', () => {
  const gate = { kind: 'gate', width: 0.1, distance: 2, passed: 15, tries: 20 } as const;
  const sitting = { day: '2026-11-12', results: [gate] } as const;
  const parsed = (narrowedBy: unknown) =>
    parseSettings(
      JSON.stringify({
        chosen: { origin: { kind: 'preset', id: 'tour', narrowedBy }, player: DEFAULT_PLAYER },
      }),
    ).chosen.origin;
  it('comes back as it was written', () => {
    const sittings = [
      sitting,
      { day: '2026-11-13', results: [{ kind: 'ladder', errors: [0.1, -0.05] }] },
      { day: '2026-11-14', results: [{ kind: 'readingSet', slopes: [{ named: 0.02, true: 0.015 }] }] },
    ];
    expect(parsed(sittings)).toEqual({ kind: 'preset', id: 'tour', narrowedBy: sittings });
  });
  it.each([
    ['a gate narrower than a ball', { ...sitting, results: [{ ...gate, width: 0.04 }] }],
    ['more passes than balls', { ...sitting, results: [gate, { ...gate, passed: 21 }] }],
    ['no day', { results: [gate] }],
    ['nothing measured', { ...sitting, results: [] }],
    ['an unknown kind', { ...sitting, results: [{ ...gate, kind: 'ruler' }] }],
    ['a number that is none', { ...sitting, results: [{ kind: 'ladder', errors: [0.1, null] }] }],
  ])('leaves out a sitting with %s, and keeps the preset and the others', (_what, wrong) => {
    expect(parsed([wrong, sitting])).toEqual({ kind: 'preset', id: 'tour', narrowedBy: [sitting] });
    expect(parsed([wrong])).toEqual({ kind: 'preset', id: 'tour' });
  });
  it('is in force for every screen, counts a day’s balls once, and is undone at once; by hand it is dropped', () => {
    const later = { ...sitting, results: [{ ...gate, tries: 30, passed: 22 }] };
    const lineNow = (): number => knownPlayer.value.player.lineSd;
    choosePreset('tour');
    const before = lineNow();
    narrowBy(sitting);
    narrowBy(sitting);
    expect(narrowedBy.value).toEqual([sitting]);
    expect(knownPlayer.value.origin).toMatchObject({ kind: 'preset', id: 'tour', narrowedBy: [sitting] });
    // 15 of 20 within 0.82 degrees: a start line of 0.71 (2 Phi(1.15) - 1 = 0.75), better than the family's mean of 0.96.
    expect(lineNow()).toBeLessThan(before);
    expect(new Set(knownPlayer.value.members.map(({ weight }) => weight)).size).toBe(5);
    narrowBy(later);
    expect(narrowedBy.value).toEqual([later]);
    widenBy(sitting);
    expect(narrowedBy.value).toEqual([later]);
    widenBy(later);
    expect(lineNow()).toBe(before);
    narrowBy(sitting);
    backToPreset();
    expect(narrowedBy.value).toEqual([]);
    expect(lineNow()).toBe(before);
    narrowBy(sitting);
    setErrors({ paceSd: 0.1 });
    expect(knownPlayer.value.origin).toEqual({ kind: 'byHand' });
    narrowBy(sitting);
    expect(knownPlayer.value.members).toHaveLength(1);
    choosePreset('handicap-6');
  });
  it('is told in a sentence: by what, who is left, and when the family holds nobody like that', () => {
    const members = (weights: readonly number[]) =>
      (presetOf('tour')?.family ?? []).map((player, i) => ({ player, weight: weights[i] }));
    const player = { ...DEFAULT_PLAYER, lineSd: degreesToRadians(0.9), paceSd: 0.05, slopeSd: 0.004 };
    const slopes = Array.from({ length: 10 }, () => ({ named: 0.02, true: 0.0215 }));
    const by = [
      sitting,
      {
        day: '2026-11-14',
        results: [
          { kind: 'readingSet', slopes },
          { kind: 'readingSet', slopes: slopes.slice(3) },
        ],
      },
    ] as const;
    const facts = { preset: 'Tour', by: [by[0]], player };
    expect(narrowedWords({ ...facts, members: members([0.5, 0.5, 0, 0, 0]) })).toBe(
      'Tour, narrowed by 20 balls through a gate on Nov 12, 2026: of its 5 likely players about 2 are left, in the middle 0.90° of start line, 5% of pace and 0.40% of slope misread.',
    );
    expect(narrowedWords({ ...facts, members: members([0.95, 0.05, 0, 0, 0]) })).toContain(
      'of its 5 likely players one is left as good as alone, with 0.90° of start line',
    );
    // All ten named alike: no spread at all.
    expect(narrowedWords({ ...facts, by, members: members([0.2, 0.2, 0.2, 0.2, 0.2]) })).toMatch(
      /gate on Nov 12, 2026 and 10 slopes named on Nov 14, 2026: .* about 5 are left.* But no player who holes like Tour errs so little in slope as was measured/,
    );
  });
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
