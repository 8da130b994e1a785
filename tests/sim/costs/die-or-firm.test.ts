/**
 * Die or firm for a whole family: laws of the verdict with differences made up, closed forms of what is read wrong, and one real putt
 * beside tables of every member's own.
 */
import { describe, expect, it } from 'vitest';
import {
  type DieOrFirm,
  dieOrFirmFor,
  differenceOn,
  feetToMetres,
  heldTables,
  inTellingOrder,
  type Player,
  type Putt,
  planeSurface,
  prepareNextPutts,
  puttOdds,
  readingShare,
} from '../../../sim/index.ts';
import type { Member } from '../../../sim/player/known.ts';
import { familyOf, MIDDLING } from '../../support/members.ts';
import { normals } from '../../support/normals.ts';

const RATIOS = [0.6, 0.75, 0.9, 1, 1.1, 1.3, 1.6];
const along = (error: keyof Player, more: (ratio: number) => Partial<Player> = () => ({})): Member[] =>
  familyOf(RATIOS.map((ratio) => ({ [error]: ratio * MIDDLING[error], ...more(ratio) })));
const last = (
  members: readonly Member[],
  differenceOf: (player: Player) => number | undefined,
): DieOrFirm => {
  const all = [...dieOrFirmFor(members, differenceOf)];
  return all[all.length - 1];
};

describe('the verdict', () => {
  it('is one for all who agree, with the least and the most of them', () => {
    const found = last(along('lineSd'), ({ lineSd }) => 2 * lineSd);
    expect(found.verdict).toEqual({ kind: 'die' });
    expect(found.difference?.low).toBeCloseTo(2 * 0.6 * 0.015, 12);
    expect(found.difference?.high).toBeCloseTo(2 * 1.6 * 0.015, 12);
    expect(last(along('lineSd'), ({ lineSd }) => -2 * lineSd).verdict).toEqual({ kind: 'firm' });
  });

  it('is too close for everyone under half a hundredth of a putt, and nothing where nobody can play both', () => {
    expect(last(along('lineSd'), ({ lineSd }) => 0.2 * (lineSd - 0.015)).verdict).toEqual({ kind: 'close' });
    expect(last(along('lineSd'), () => undefined)).toMatchObject({ verdict: { kind: 'noLine' } });
  });

  it('passes over a side that hardly anybody is on', () => {
    const members = along('lineSd').map((member, i) => ({ ...member, weight: i === 0 ? 0.02 : 0.98 / 6 }));
    expect(last(members, ({ lineSd }) => (lineSd < 0.01 ? -1 : 1)).verdict).toEqual({ kind: 'die' });
  });

  it.each([
    ['slopeSd', 'readingSet'],
    ['lineSd', 'gate'],
    ['paceSd', 'ladder'],
  ] as const)('that turns on %s alone names the test of that number: %s', (error, test) => {
    const { verdict } = last(along(error), (player) => player[error] / MIDDLING[error] - 1);
    if (verdict.kind !== 'turns') throw new Error(`got ${verdict.kind}`);
    expect(verdict.on.test).toBe(test);
    // Three of seven lie below and three above.
    expect(verdict.firm).toBeCloseTo(1 / 2, 12);
  });

  it('on a ridge from stroke to reading turns on the reading, firm for those who have more of it', () => {
    const ridge = along('slopeSd', (ratio) => ({ lineSd: MIDDLING.lineSd / ratio }));
    const wide = last(ridge, ({ slopeSd }) => 100 * (0.005 - slopeSd)).verdict;
    if (wide.kind !== 'turns') throw new Error(`got ${wide.kind}`);
    expect(wide.on).toMatchObject({ by: 'reading', more: 'second' });
  });

  it('on a family that reads alike and trades line for pace turns on line against pace', () => {
    const knowing = { slopeSd: 0, speedSd: 0 };
    const members = along('lineSd', (ratio) => ({ ...knowing, paceSd: MIDDLING.paceSd / ratio }));
    const { verdict } = last(members, ({ lineSd }) => 100 * (lineSd - 0.015));
    if (verdict.kind !== 'turns') throw new Error(`got ${verdict.kind}`);
    expect(verdict.on).toMatchObject({ by: 'line', more: 'first' });
  });

  it('comes first of the middle one alone and then sharpens: every member once, the outermost early', () => {
    const members = along('lineSd');
    const order = inTellingOrder(members).map(({ player }) => player.lineSd / MIDDLING.lineSd);
    expect([...order].sort((a, b) => a - b)).toEqual(RATIOS.map((ratio) => (ratio * 0.015) / 0.015));
    // The mean ratio is 1.04.
    expect(order[0]).toBeCloseTo(1, 12);
    expect(order.slice(1, 3).map((ratio) => Math.round(10 * ratio) / 10)).toEqual([1.6, 0.6]);
    const answers = [...dieOrFirmFor(members, ({ lineSd }) => lineSd)];
    expect(answers.map(({ asked, of }) => [asked, of])).toEqual(RATIOS.map((_, i) => [i + 1, 7]));
    answers.slice(1).forEach(({ difference }, i) => {
      expect(difference?.low).toBeLessThanOrEqual(answers[i].difference?.low ?? Number.NaN);
      expect(difference?.high).toBeGreaterThanOrEqual(answers[i].difference?.high ?? Number.NaN);
    });
    expect(() => [...dieOrFirmFor([], () => 1)]).toThrow(/at least one/);
  });
});

describe('some of many members', () => {
  const normal = normals('many');
  const many = familyOf(
    Array.from({ length: 200 }, () => ({
      lineSd: MIDDLING.lineSd * Math.exp(0.2 * normal()),
      paceSd: MIDDLING.paceSd * Math.exp(0.2 * normal()),
      slopeSd: MIDDLING.slopeSd * Math.exp(0.3 * normal()),
      speedSd: MIDDLING.speedSd * Math.exp(0.3 * normal()),
    })),
  );
  it('stand for whoever is nearest: no weight is lost, and each is one of them', () => {
    const some = inTellingOrder(many, 12);
    expect(some).toHaveLength(12);
    expect(some.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    for (const { player } of some) expect(many.some((one) => one.player === player)).toBe(true);
    expect(new Set(some.map(({ player }) => player)).size).toBe(12);
    // The middle one stands for more than an equal share: who is far off stands for few.
    expect(some[0].weight).toBeGreaterThan(1 / 12);
    expect(dieOrFirmFor(many, () => 1, 12).next().value).toMatchObject({ asked: 1, of: 12, all: 200 });
  });
  it('span the range of all: 95% of a difference that goes with the errors, and its mean', () => {
    for (const error of ['lineSd', 'paceSd', 'slopeSd'] as const) {
      // A hundredth of a putt for each SD of the error, or so.
      const differenceOf = (player: Player): number => 0.05 * (player[error] / MIDDLING[error] - 1);
      const [whole] = [...dieOrFirmFor(many, differenceOf)].slice(-1);
      const [part] = [...dieOrFirmFor(many, differenceOf, 12)].slice(-1);
      if (whole.difference === undefined || part.difference === undefined) throw new Error('no difference');
      // Twelve players in four errors, the middle one for over half of all: an end of some 0.02 to 0.04 putts to a hundredth, the mean to half.
      expect(Math.abs(part.difference.value - whole.difference.value)).toBeLessThan(0.005);
      expect(part.difference.low).toBeLessThan(whole.difference.low + 0.01);
      expect(part.difference.high).toBeGreaterThan(whole.difference.high - 0.01);
    }
  });
});

describe('the share of reading', () => {
  it('is none for who sees the ground, and all for who never strikes wrong', () => {
    expect(readingShare({ ...MIDDLING, slopeSd: 0, speedSd: 0 })).toBe(0);
    expect(readingShare({ ...MIDDLING, lineSd: 0, paceSd: 0 })).toBe(1);
  });

  it('of the distance is that of energy 2 (L + pace)(a_f + k s) on the mix of slopes and directions', () => {
    // First order on a straight roll (MIDDLING.md; derived): slope along moves the log of distance by k/a, green speed by a_f/a. k = 5/7 g,
    // a_f from the Stimpmeter: 1.829 m/s over 10 ft of roll.
    const k = (5 / 7) * 9.81;
    const friction = 1.829 ** 2 / (2 * feetToMetres(10));
    let bySlope = 0;
    let bySpeed = 0;
    for (const [slope, weight] of [
      [0.01, 5 / 12],
      [0.02, 5 / 12],
      [0.03, 1 / 6],
    ])
      for (const degrees of [15, 45, 75, 105, 135, 165]) {
        const slowing = friction + k * slope * Math.cos((degrees * Math.PI) / 180);
        bySlope += (weight / 6) * (k / slowing) ** 2;
        bySpeed += (weight / 6) * (friction / slowing) ** 2;
      }
    const { slopeSd, speedSd, paceSd } = MIDDLING;
    const seen = bySlope * slopeSd ** 2 + bySpeed * speedSd ** 2;
    // A start line that errs without bound leaves the distance alone. Half is the mean of two shares.
    const ours = 2 * readingShare({ ...MIDDLING, lineSd: 1e6 });
    // Curved rolls: the direction of travel turns off the line by tenths of a radian, its cosine by a few per cent of the variance.
    expect(Math.abs(ours - seen / (seen + paceSd ** 2))).toBeLessThan(0.03);
  });
});

describe('one putt, 8 ft across 2%', () => {
  const putt: Putt = {
    surface: planeSurface({ slope: 0.02, downhill: -Math.PI / 2 }),
    greenSpeed: feetToMetres(10),
    ball: { x: feetToMetres(8), y: 0 },
    hole: { x: 0, y: 0 },
    capture: 'rim',
  };
  const [die, firm] = [0.1524, 0.762];

  it('differs for every member as with a table of his own', () => {
    const ownDifference = (player: Player): number => {
      const table = prepareNextPutts(putt, player);
      const [soft, hard] = [die, firm].map((pace) => puttOdds(putt, pace, player, table));
      if (soft.status !== 'ok' || hard.status !== 'ok') throw new Error('no line');
      return hard.expectedPutts - soft.expectedPutts;
    };
    const quick = differenceOn(putt, { die, firm }, heldTables(putt, MIDDLING, {}));
    // From mostly stroke to mostly reading. Choices kept cost 0.001 to 0.007 of a second putt (MODEL.md, section 5), nearly the same for both paces.
    for (const player of [
      MIDDLING,
      { ...MIDDLING, lineSd: 0.02, slopeSd: 0.003 },
      { ...MIDDLING, lineSd: 0.008, slopeSd: 0.0065 },
    ])
      expect(Math.abs((quick(player) ?? Number.NaN) - ownDifference(player))).toBeLessThan(0.004);
  }, 300_000);
});
