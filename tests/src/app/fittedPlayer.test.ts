/** The kept fit: its gate, and which errors in use are its own. Node has no localStorage: what is kept lasts for the visit. */
import { afterEach, describe, expect, it } from 'vitest';
import { PRESETS } from '../../../sim/index.ts';
import {
  fitInUse,
  forgetFit,
  type KeptFit,
  keepFit,
  keptFits,
  parseFits,
  playerOfFit,
} from '../../../src/app/fittedPlayer.ts';
import { PLAYER_RANGES, player } from '../../../src/app/settings.ts';
import { aFit } from '../../support/aFit.ts';

const text = (fits: readonly unknown[], version = 1): string => JSON.stringify({ version, fits });

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
    expect(parseFits(text([aFit()], 2))).toEqual([]);
    expect(parseFits(text([{ ...aFit(), more: 1 }]))).toEqual([]);
    const fit = aFit();
    const places = placesIn(fit);
    // Five errors of eleven numbers and as much again: the walk has been everywhere.
    expect(places.length).toBeGreaterThan(60);
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
    player.value = PRESETS[0].player;
  });

  it('are those of a fit once its medians are taken, until one is changed by hand', () => {
    keepFit(aFit());
    expect(fitInUse.value).toBeUndefined();
    player.value = playerOfFit(aFit());
    expect(fitInUse.value).toEqual(aFit());
    player.value = { ...player.value, paceSd: player.value.paceSd + 0.005 };
    expect(fitInUse.value).toBeUndefined();
  });

  it('go along with a new fit of the same record, and with no other', () => {
    const grown = (source: KeptFit['source']): KeptFit => {
      const { answer, ...rest } = aFit({ source, digits: '00000002' });
      return { ...rest, answer: { ...answer, player: { ...answer.player, readSd: 0.31 } } };
    };
    keepFit(aFit());
    player.value = playerOfFit(aFit());
    keepFit(grown('demo'));
    expect(fitInUse.value?.source).toBe('own');
    keepFit(grown('own'));
    expect(fitInUse.value).toEqual(grown('own'));
    expect(player.value.readSd).toBe(0.31);
    expect(keptFits.value).toHaveLength(2);
    forgetFit('demo');
    expect(keptFits.value.map(({ source }) => source)).toEqual(['own']);
  });

  it('stay where errors may be set by hand, however far out the medians lie', () => {
    const { answer, ...rest } = aFit();
    const far = { lineSd: 0.5, paceSd: 0.9, readSd: 1.4, paceBias: -0.7, readBias: 0.9 };
    const taken = playerOfFit({ ...rest, answer: { ...answer, player: far } } as KeptFit);
    for (const [error, { min, max }] of Object.entries(PLAYER_RANGES)) {
      const value = taken[error as keyof typeof taken];
      expect(value).toBeGreaterThanOrEqual(min);
      expect(value).toBeLessThanOrEqual(max);
      expect(value).toBe(error === 'paceBias' ? min : max);
    }
  });
});
