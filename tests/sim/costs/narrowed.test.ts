/** Families narrowed by what was measured: likelihoods by jstat, and players drawn and simulated, whose chances must come true. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  effectiveMembers,
  type KnownPlayer,
  type Measurement,
  makeSlopeSet,
  narrowed,
  narrowedPlayer,
  narrowingResults,
  outsideFamily,
  type Player,
  paceControl,
  planeSurface,
  prepareNextPutts,
  presetOf,
  puttOdds,
  seededRandom,
  slopesNamed,
  slopesOf,
  startLine,
} from '../../../sim/index.ts';
import type { Member } from '../../../sim/player/known.ts';
import { familyOf } from '../../support/members.ts';
import { normals } from '../../support/normals.ts';

const ratio = (members: readonly Member[], results: readonly Measurement[]): number => {
  const [one, other] = narrowed(members, results);
  return one.weight / other.weight;
};
/** Equipment Rules: 1.680 in across. */
const BALL = 0.04267;
/** One in a hundred errs three times as much (MODEL.md, section 5). */
const strayed = (of: (times: number) => number): number => 0.99 * of(1) + 0.01 * of(3);

describe('a family narrowed', () => {
  it('by balls through a gate goes with the binomial chance of the count', () => {
    const members = familyOf([{ lineSd: 0.01 }, { lineSd: 0.02 }]);
    const [width, distance, tries, passed] = [0.1, 2, 20, 15];
    const angle = Math.atan((width - BALL) / 2 / distance);
    const pass = (sd: number): number =>
      strayed((times) => 2 * jstat.normal.cdf(angle / (times * sd), 0, 1) - 1);
    const expected =
      jstat.binomial.pdf(passed, tries, pass(0.01)) / jstat.binomial.pdf(passed, tries, pass(0.02));
    // The ball's radius in the engine and here differ in the sixth digit, to the power of twenty balls.
    expect(ratio(members, [{ kind: 'gate', width, distance, passed, tries }]) / expected).toBeCloseTo(1, 3);
  });

  it('by balls to targets and by slopes named goes with the normal density of the errors', () => {
    const errors = [0.05, -0.11, 0.02, 0.14];
    const density = (error: number, mean: number, sd: number): number =>
      strayed((times) => jstat.normal.pdf(error, mean, times * sd));
    const product = (of: (error: number) => number): number =>
      errors.reduce((all, error) => all * of(error), 1);
    const ladder = familyOf([{ paceSd: 0.06 }, { paceSd: 0.12, paceBias: 0.03 }]);
    expect(ratio(ladder, [{ kind: 'ladder', errors }])).toBeCloseTo(
      product((error) => density(error, 0, 0.06)) / product((error) => density(error, 0.03, 0.12)),
      6,
    );
    const readers = familyOf([{ slopeSd: 0.004 }, { slopeSd: 0.004, readBias: -0.3 }]);
    const slopes = errors.map((error) => ({ named: 0.02 + error / 20, true: 0.02 }));
    expect(ratio(readers, [{ kind: 'readingSet', slopes }])).toBeCloseTo(
      product((error) => density(error / 20, 0, 0.004)) /
        product((error) => density(error / 20, -0.006, 0.004)),
      6,
    );
  });

  it('stays as it is by what the members have in common, and by nothing', () => {
    const members = familyOf([{ lineSd: 0.01 }, { lineSd: 0.02 }]);
    expect(ratio(members, [{ kind: 'ladder', errors: [0.1, 0.3] }])).toBeCloseTo(1, 12);
    expect(narrowed(members, [])).toEqual(members);
  });

  it('survives a result that none of its members would give', () => {
    const members = familyOf([{ lineSd: 0.005 }, { lineSd: 0.006 }]);
    const none: Measurement = { kind: 'gate', width: 0.3, distance: 1, passed: 0, tries: 500 };
    const found = narrowed(members, [none]);
    expect(found[0].weight + found[1].weight).toBeCloseTo(1, 12);
    expect(found[1].weight).toBeGreaterThan(found[0].weight);
    expect(() => narrowed(members, [{ ...none, passed: 501 }])).toThrow(/expected 0 to 500/);
  });

  it('tells chances that come true: players drawn, twenty balls each through a gate and ten to targets', () => {
    const members = familyOf(
      [0.008, 0.011, 0.014, 0.018, 0.023].flatMap((lineSd) =>
        [0.05, 0.08, 0.12].map((paceSd) => ({ lineSd, paceSd })),
      ),
    );
    const random = seededRandom('drawn');
    const normal = normals('rolled');
    const [width, distance] = [0.12, 2];
    const room = (width - BALL) / 2;
    const bins = Array.from({ length: 4 }, () => ({ count: 0, told: 0, true: 0 }));
    for (let time = 0; time < 4000; time++) {
      const truth = members[Math.floor(random() * members.length)].player;
      // One in a hundred errs three times as much, as people do; the ball goes straight.
      const error = (sd: number): number => sd * normal() * (random() < 0.01 ? 3 : 1);
      let passed = 0;
      for (let ball = 0; ball < 20; ball++)
        if (Math.abs(distance * Math.tan(error(truth.lineSd))) < room) passed++;
      const errors = Array.from({ length: 10 }, () => error(truth.paceSd));
      const found = narrowed(members, [
        { kind: 'gate', width, distance, passed, tries: 20 },
        { kind: 'ladder', errors },
      ]);
      // A question of both numbers: start line over 0.8 degrees or pace over 10%.
      const isWild = ({ lineSd, paceSd }: Player): boolean => lineSd > 0.0145 || paceSd > 0.1;
      const told = found.reduce((sum, { player, weight }) => sum + (isWild(player) ? weight : 0), 0);
      const bin = bins[Math.min(3, Math.floor(4 * told))];
      bin.count++;
      bin.told += told;
      bin.true += isWild(truth) ? 1 : 0;
    }
    for (const { count, told, true: came } of bins) {
      expect(count).toBeGreaterThan(100);
      // Four standard errors of a share at most 1/2.
      expect(Math.abs(told - came) / count).toBeLessThan(4 * Math.sqrt(0.25 / count));
    }
  });
});

const DAY = '2026-11-12';
const preset = (id: string): KnownPlayer => {
  const found = presetOf(id);
  if (found === undefined) throw new Error(`no preset ${id}`);
  const members = found.family.map((player) => ({ player, weight: 1 / found.family.length }));
  return { player: found.player, origin: { kind: 'preset', id }, members };
};
/** So many of twenty through a gate of which a start line of 1 degree passes 13.7 (2 Phi(1) - 1). */
const gate = (passed: number, tries = 20): Measurement => ({
  kind: 'gate',
  width: BALL + 2 * 2 * Math.tan(Math.PI / 180),
  distance: 2,
  passed,
  tries,
});

describe('the middle one of a narrowed preset', () => {
  it('is the preset’s own player as long as nothing is told, and the member left alone in the end', () => {
    const before = preset('handicap-6');
    expect(narrowedPlayer(before, [])).toEqual(before);
    // The same pace of all members tells them apart by nothing.
    const alike = {
      ...before,
      members: before.members.map(({ player }) => ({ player: { ...player, paceSd: 0.06 }, weight: 0.2 })),
    };
    const same = narrowedPlayer(alike, [{ day: DAY, results: [{ kind: 'ladder', errors: [0.05, -0.1] }] }]);
    for (const error of ['lineSd', 'slopeSd', 'speedSd'] as const)
      expect(same.player[error]).toBeCloseTo(before.player[error], 12);
    const alone = narrowedPlayer(before, [{ day: DAY, results: [gate(27_000, 50_000)] }]);
    expect(effectiveMembers(alone.members)).toBeCloseTo(1, 3);
    const left = alone.members.reduce((most, one) => (one.weight > most.weight ? one : most)).player;
    for (const error of ['lineSd', 'paceSd', 'slopeSd'] as const)
      expect(alone.player[error]).toBeCloseTo(left[error], 5);
    expect(alone.origin).toMatchObject({ kind: 'preset', id: 'handicap-6', narrowedBy: [{ day: DAY }] });
  });

  it('holes about as much as its members: no error can grow without another that shrinks', () => {
    const putt = {
      surface: planeSurface({ slope: 0.02, downhill: -Math.PI / 2 }),
      greenSpeed: 3.048,
      ball: { x: 2.4384, y: 0 },
      hole: { x: 0, y: 0 },
      capture: 'rim',
    } as const;
    const before = preset('scratch');
    const table = prepareNextPutts(putt, before.player);
    const holed = (player: Player): number => {
      const odds = puttOdds(putt, 0.43, player, table);
      if (odds.status !== 'ok') throw new Error('no line');
      return odds.holed;
    };
    const shares = before.members.map(({ player }) => holed(player));
    for (const passed of [9, 12, 15, 18]) {
      const { player } = narrowedPlayer(before, [{ day: DAY, results: [gate(passed)] }]);
      // Members are held to one record by distance, not by direction: on this putt they span some points themselves; two more for the
      // straight lines between them.
      expect(holed(player)).toBeGreaterThan(Math.min(...shares) - 0.02);
      expect(holed(player)).toBeLessThan(Math.max(...shares) + 0.02);
    }
  });

  it('is as good as so many members as jstat’s weights say, and says when the family holds nobody who measures so', () => {
    expect(effectiveMembers(familyOf([{}, {}, {}]))).toBeCloseTo(3, 12);
    expect(
      effectiveMembers([
        { player: preset('tour').player, weight: 3 },
        { player: preset('tour').player, weight: 1 },
      ]),
    ).toBeCloseTo(16 / 10, 12);
    const { members } = preset('tour');
    // Starts of tour members: 0.66 to 1.25 degrees. Through 1 degree to either side 5 of 200 pass at 30 degrees and more; all of 200 under 0.5.
    expect(outsideFamily(members, [gate(5, 200)])).toEqual([{ error: 'lineSd', measured: 'larger' }]);
    expect(outsideFamily(members, [gate(200, 200)])).toEqual([{ error: 'lineSd', measured: 'smaller' }]);
    expect(outsideFamily(members, [gate(13, 20)])).toEqual([]);
    const wild = Array.from({ length: 20 }, (_, i) => ({ named: 0.02 + (i % 2 ? 0.03 : -0.03), true: 0.02 }));
    expect(outsideFamily(members, [{ kind: 'readingSet', slopes: wild }])).toEqual([
      { error: 'slopeSd', measured: 'larger' },
    ]);
  });
});

describe('what narrows', () => {
  it('of measurements are gates and balls to several distances; balls to one distance and steps are none', () => {
    const gates = [{ width: 0.1, distance: 2, passes: 15, tries: 20 }];
    const result = startLine(gates);
    if (result === undefined) throw new Error('no start line');
    expect(narrowingResults({ day: DAY, by: 'gates', gates, result })).toEqual([
      { kind: 'gate', width: 0.1, distance: 2, passed: 15, tries: 20 },
    ]);
    const rolled = (targets: readonly number[]) => {
      const rolls = targets.map((target, i) => ({ target, past: i % 2 ? 0.3 : -0.2 }));
      const found = paceControl(rolls);
      if (found === undefined) throw new Error('no pace');
      return narrowingResults({ day: DAY, by: 'paceRolls', rolls, result: found });
    };
    expect(rolled([3, 6])).toEqual([{ kind: 'ladder', errors: [-0.2 / 3, 0.3 / 6] }]);
    expect(rolled([3, 3])).toEqual([]);
  });

  it('of a set of slopes: a reader of known spread comes out with it, along the line and across', () => {
    const normal = normals('named');
    const spread = 0.006;
    const sums = { count: 0, squares: 0 };
    for (let set = 0; set < 40; set++) {
      const answers = makeSlopeSet(`set ${set}`).map((question) => {
        const truth = slopesOf(question);
        const [e1, e2] = [spread * normal(), spread * normal()];
        const across = Math.sqrt(truth.total ** 2 - truth.along ** 2) + e2;
        return { question, along: truth.along + e1, total: Math.hypot(truth.along + e1, across) };
      });
      for (const one of slopesNamed(answers))
        for (const { named, true: truth } of one.kind === 'readingSet' ? one.slopes : []) {
          sums.count++;
          sums.squares += (named - truth) ** 2;
        }
    }
    // More than one slope a putt, and the spread to four standard errors of an SD.
    expect(sums.count).toBeGreaterThan(500);
    expect(Math.abs(Math.sqrt(sums.squares / sums.count) / spread - 1)).toBeLessThan(
      4 / Math.sqrt(2 * sums.count),
    );
    expect(slopesNamed([])).toEqual([]);
  });
});
