/** The kept fit: its gate, and which errors in use are its own. Node has no localStorage: what is kept lasts for the visit. */
import { afterEach, describe, expect, it } from 'vitest';
import { familyOf, PRESETS } from '../../../sim/index.ts';
import {
  forgetFit,
  type KeptFit,
  keepFit,
  keptFits,
  parseFits,
  playerOfFit,
} from '../../../src/state/fittedPlayer.ts';
import { PLAYER_RANGES } from '../../../src/state/playerRanges.ts';
import {
  chooseFit,
  choosePreset,
  fitInUse,
  knownPlayer,
  player,
  setErrors,
} from '../../../src/state/settings.ts';
import { aFit } from '../../support/aFit.ts';

const text = (fits: readonly unknown[], version = 3): string => JSON.stringify({ version, fits });

/** Every place in a value, as the keys on the way to it. */
const placesIn = (
  value: unknown,
  path: readonly (string | number)[] = [],
): (readonly (string | number)[])[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, inner]) => [[...path, key], ...placesIn(inner, [...path, key])])
    : [];
const changedAt = (value: unknown, [key, ...rest]: readonly (string | number)[], to: unknown): unknown => {
  const copy = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<
    string | number,
    unknown
  >;
  copy[key] = rest.length === 0 ? to : changedAt(copy[key], rest, to);
  return copy;
};

describe('the gate of kept fits', () => {
  it('lets in what was kept, of each source one', () => {
    const fits = [aFit(), aFit({ source: 'demo' })];
    expect(parseFits(text(fits))).toEqual(fits);
    expect(parseFits(null)).toEqual([]);
    expect(parseFits(text([aFit(), aFit()]))).toEqual([]);
  });

  it('takes whatever is not as written for no fit: other versions, no JSON, any field of another kind or too much', () => {
    expect(parseFits('{')).toEqual([]);
    expect(parseFits('[]')).toEqual([]);
    expect(parseFits(text([aFit()], 1))).toEqual([]);
    expect(parseFits(text([{ ...aFit(), more: 1 }]))).toEqual([]);
    const fit = aFit();
    const places = placesIn(fit);
    // Six errors of eleven numbers and as much again: the walk has been everywhere.
    expect(places.length).toBeGreaterThan(80);
    for (const place of places)
      for (const wrong of [null, 'x', { a: 1 }])
        expect(parseFits(text([changedAt(fit, place, wrong)])), `${place.join('.')}: ${wrong}`).toEqual([]);
  });

  it('takes no numbers that no fit gives: chances above one, ranges the wrong way round, no players', () => {
    const wrong: readonly [string, unknown][] = [
      ['answer.readBias.tooLittle', 1.2],
      ['answer.errors.lineSd.told', -0.1],
      ['answer.errors.paceSd.range90', { low: 0.2, high: 0.1 }],
      ['answer.players', []],
      ['answer.players.0.lineSd', -0.01],
      ['answer.putts', 2.5],
      ['day', '2026-02-31x'],
      ['digits', 'none'],
    ];
    for (const [place, value] of wrong)
      expect(parseFits(text([changedAt(aFit(), place.split('.'), value)])), place).toEqual([]);
  });
});

describe('the errors in use', () => {
  afterEach(() => {
    forgetFit('own');
    forgetFit('demo');
    choosePreset(PRESETS[0].id);
  });

  it('are those of a fit once it is chosen, with its players as those who may be meant, until one error is set by hand', () => {
    keepFit(aFit());
    expect(fitInUse.value).toBeUndefined();
    chooseFit('own');
    expect(fitInUse.value).toEqual(aFit());
    expect(knownPlayer.value).toEqual({
      player: playerOfFit(aFit()),
      origin: { kind: 'fit', source: 'own' },
      members: aFit().answer.players.map((one) => ({ player: one, weight: 0.5 })),
    });
    setErrors({ paceSd: 0.105 });
    expect(fitInUse.value).toBeUndefined();
    const byHand = { ...playerOfFit(aFit()), paceSd: 0.105 };
    expect(knownPlayer.value).toEqual({
      player: byHand,
      origin: { kind: 'byHand' },
      members: [{ player: byHand, weight: 1 }],
    });
  });

  it('set by hand to the very numbers of a fit or a preset are still set by hand', () => {
    keepFit(aFit());
    setErrors(playerOfFit(aFit()));
    expect(fitInUse.value).toBeUndefined();
    setErrors(PRESETS[1].player);
    expect(knownPlayer.value.origin).toEqual({ kind: 'byHand' });
  });

  it('of a preset come with its family, as likely as directions leave each; weights make one', () => {
    for (const preset of PRESETS) {
      const { id, player: middle } = preset;
      choosePreset(id);
      const { members } = knownPlayer.value;
      expect(player.value).toEqual(middle);
      expect(members).toEqual(familyOf(preset));
      expect(members.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    }
    const before = knownPlayer.value;
    choosePreset('nobody');
    expect(knownPlayer.value).toBe(before);
  });

  it('go along with a new fit of the same record, and with no other', () => {
    const grown = (source: KeptFit['source']): KeptFit => {
      const { answer, ...rest } = aFit({ source, digits: '00000002' });
      return { ...rest, answer: { ...answer, player: { ...answer.player, slopeSd: 0.0031 } } };
    };
    keepFit(aFit());
    chooseFit('own');
    keepFit(grown('demo'));
    expect(fitInUse.value?.source).toBe('own');
    expect(player.value).toEqual(playerOfFit(aFit()));
    keepFit(grown('own'));
    expect(fitInUse.value).toEqual(grown('own'));
    expect(player.value.slopeSd).toBe(0.0031);
    expect(keptFits.value).toHaveLength(2);
    forgetFit('demo');
    expect(keptFits.value.map(({ source }) => source)).toEqual(['own']);
  });

  it('stay as numbers, set by hand, when the fit they came from is forgotten', () => {
    keepFit(aFit({ source: 'demo' }));
    chooseFit('demo');
    forgetFit('demo');
    expect(knownPlayer.value.origin).toEqual({ kind: 'byHand' });
    expect(player.value).toEqual(playerOfFit(aFit()));
  });

  it('stay where errors may be set by hand, however far out the medians lie', () => {
    const { answer, ...rest } = aFit();
    const far = { lineSd: 0.5, paceSd: 0.9, slopeSd: 0.1, speedSd: 0.9, paceBias: -0.7, readBias: 0.9 };
    const taken = playerOfFit({ ...rest, answer: { ...answer, player: far } } as KeptFit);
    for (const [error, { min, max }] of Object.entries(PLAYER_RANGES)) {
      const value = taken[error as keyof typeof taken];
      expect(value).toBeGreaterThanOrEqual(min);
      expect(value).toBeLessThanOrEqual(max);
      expect(value).toBe(error === 'paceBias' ? min : max);
    }
  });
});
