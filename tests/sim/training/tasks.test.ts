/** Die or firm, and what slope: their sets, their scores. */
import { describe, expect, it } from 'vitest';
import { comparePaces } from '../../../sim/odds/compare.ts';
import { prepareNextPutts } from '../../../sim/odds/next-putts.ts';
import { FITTED_PLAYERS } from '../../../sim/player/fitted.ts';
import { readPutt } from '../../../sim/read/line.ts';
import { makePaceSet, paceCost, summarizePaces } from '../../../sim/training/pace-set.ts';
import { puttOfQuestion } from '../../../sim/training/putt-question.ts';
import { makeSlopeSet, slopesOf, summarizeSlopes } from '../../../sim/training/slope-set.ts';

describe('die or firm', () => {
  it('asks ten putts on two greens in mixed order, each with a line at both paces, the same for the same seed', () => {
    const set = makePaceSet('x');
    expect(set.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(new Set(set.map(({ ground, greenSpeed }) => JSON.stringify([ground, greenSpeed]))).size).toBe(2);
    expect(set.filter(({ group }) => group === 0)).toHaveLength(5);
    for (const question of set) {
      const putt = puttOfQuestion(question);
      for (const pace of [question.pace, question.firmPace ?? -1])
        expect(readPutt(putt, pace).status).toBe('ok');
    }
    expect(makePaceSet('x')).toEqual(set);
    expect(makePaceSet('y')).not.toEqual(set);
  });

  it('is a question: neither pace is the better one everywhere', () => {
    // The engine's own comparison on two greens, with later putts at one pace to save time; both answers must occur over a few sets.
    const better = new Set<string>();
    for (const seed of ['a', 'b', 'c']) {
      const set = makePaceSet(seed);
      for (const group of [0, 1]) {
        const putts = set.filter((question) => question.group === group);
        const player = FITTED_PLAYERS.averaging90;
        const first = { ...puttOfQuestion(putts[0]), capture: 'simple' as const };
        const table = prepareNextPutts(first, player, { policy: 'fixed' });
        for (const question of putts) {
          const putt = { ...puttOfQuestion(question), capture: 'simple' as const };
          const [die, firm] = comparePaces(putt, [question.pace, question.firmPace ?? 0], player, table).rows;
          if (die.odds && firm.odds)
            better.add(die.odds.expectedPutts < firm.odds.expectedPutts ? 'die' : 'firm');
        }
      }
    }
    expect(better).toEqual(new Set(['die', 'firm']));
  });

  it('costs what the other pace would have saved, and nothing for the better one or for two alike', () => {
    expect(paceCost('die', { die: 1.82, firm: 1.8 })).toBeCloseTo(0.02, 12);
    expect(paceCost('firm', { die: 1.82, firm: 1.8 })).toBe(0);
    expect(paceCost('die', { die: 1.8, firm: 1.8 })).toBe(0);
  });

  it('is summed up beside one pace everywhere and a coin', () => {
    const summary = summarizePaces([
      { chosen: 'die', putts: { die: 1.9, firm: 1.84 } },
      { chosen: 'firm', putts: { die: 1.7, firm: 1.6 } },
      { chosen: 'firm', putts: { die: 2, firm: 2.03 } },
      { chosen: 'firm' },
    ]);
    // By hand: costs 0.06, 0 and 0.03; die everywhere 0.06 + 0.1 + 0, firm everywhere 0 + 0 + 0.03.
    expect(summary).toMatchObject({ count: 3, better: 1 });
    expect(summary?.cost.value).toBeCloseTo(0.03, 12);
    expect(summary?.alwaysDie).toBeCloseTo(0.16 / 3, 12);
    expect(summary?.alwaysFirm).toBeCloseTo(0.01, 12);
    expect(summary?.coin).toBeCloseTo(0.19 / 6, 12);
    expect(summarizePaces([{ chosen: 'die' }])).toBeUndefined();
    // Two right choices give nothing away, and are no proof that one never does.
    const right = { chosen: 'die', putts: { die: 1.5, firm: 1.6 } } as const;
    expect(summarizePaces([right, right])?.cost).toMatchObject({ value: 0, high: Number.POSITIVE_INFINITY });
  });
});

describe('what slope', () => {
  it('asks ten planes, whose slope along the line is slope times the cosine between line and fall line', () => {
    const set = makeSlopeSet('x');
    expect(set).toHaveLength(10);
    for (const question of set) {
      const { ground, ball, hole } = question;
      if (ground.kind !== 'plane') throw new Error('not a plane');
      const heading = Math.atan2(hole.y - ball.y, hole.x - ball.x);
      const { total, along } = slopesOf(question);
      expect(total).toBeCloseTo(ground.slope, 12);
      expect(along).toBeCloseTo(-ground.slope * Math.cos(ground.downhill - heading), 12);
    }
    expect(makeSlopeSet('x')).toEqual(set);
  });

  it('is summed up by sign and spread', () => {
    const answers = makeSlopeSet('y').map((question, index) => {
      const { total, along } = slopesOf(question);
      // Half a point too flat, give or take a fifth; along the line right on average.
      const wobble = index % 2 === 0 ? 0.002 : -0.002;
      return { question, total: total - 0.005 + wobble, along: along + wobble };
    });
    const summary = summarizeSlopes(answers);
    expect(summary?.total.bias.value).toBeCloseTo(-0.005, 12);
    expect(summary?.along.bias.value).toBeCloseTo(0, 12);
    // Ten times 0.002 either way: root of 10/9.
    expect(summary?.total.spread?.value).toBeCloseTo(0.002 * Math.sqrt(10 / 9), 12);
    expect(summary?.along.meanSize).toBeCloseTo(0.002, 12);
    expect(summary?.total.bias.high).toBeLessThan(0);
    expect(summarizeSlopes([])).toBeUndefined();
  });
});
