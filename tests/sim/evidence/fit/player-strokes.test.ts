/** Strokes rolled once and weighed for a player, against balls whose lines are solved one by one and rolled one by one. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { ballAt, greenOf } from '../../../../sim/benchmarks/putts.ts';
import { groundStrokes } from '../../../../sim/evidence/fit/ground-strokes.ts';
import { Grounds } from '../../../../sim/evidence/fit/grounds.ts';
import { MeantLines } from '../../../../sim/evidence/fit/meant-lines.ts';
import { normalBelow } from '../../../../sim/evidence/fit/normal-below.ts';
import { PlayerStrokes } from '../../../../sim/evidence/fit/player-strokes.ts';
import { defaultPrior, someoneOf, wideOf } from '../../../../sim/evidence/fit/prior.ts';
import { chanceOf, type Outcome, recordedStrokes } from '../../../../sim/evidence/fit/recorded-strokes.ts';
import { Tails } from '../../../../sim/evidence/fit/tails.ts';
import { missChance, writtenSide } from '../../../../sim/evidence/fit/words.ts';
import { type Player, seededRandom } from '../../../../sim/index.ts';
import { FITTED_PLAYERS } from '../../../../sim/player/fitted.ts';
import { LineWalk } from '../../../../sim/read/line.ts';
import { startOf } from '../../../../sim/roll/roll.ts';
import { normalsOf, plainRoll } from '../../../support/recordingPlayer.ts';

const { scratch, averaging90 } = FITTED_PLAYERS;

describe('the tables', () => {
  it('read the normal distribution to 5e-6, as jstat has it', () => {
    // Chords of the table: at most 0.242 / (8 x 88^2) = 3.9e-6 off.
    for (let z = -8.5; z < 8.5; z += 0.0137)
      expect(Math.abs(normalBelow(z) - jstat.normal.cdf(z, 0, 1))).toBeLessThan(5e-6);
  });

  it('of the t have 68% of one error within its spread, and all strokes in all, whatever the degrees', () => {
    const tails = new Tails();
    for (const degrees of [2.5, 3.5, 6, 12, 60]) {
      tails.set(degrees);
      const inside = 2 * jstat.studentt.cdf(Math.sqrt(tails.squared), degrees) - 1;
      // The expansion is within 0.001 of the factor.
      expect(Math.abs(inside - 0.6827)).toBeLessThan(0.001);
      // Over squared distances Q the plane has pi dQ; the far rest of a t in two dimensions is (1 + Q/n)^(-n/2), Q in its own scale.
      let sum = 0;
      const step = 0.01;
      for (let q = step / 2; q < 80; q += step) sum += Math.PI * step * tails.of(q);
      const rest = (1 + (80 * tails.squared) / degrees) ** (-degrees / 2);
      expect(Math.abs(sum + rest - 1)).toBeLessThan(0.002);
    }
  });
});

/** Slope, bearing of the ball from straight below (radians), length m, pace m: level, up, across, down; soft and firm. */
const SPOTS: readonly (readonly [number, number, number, number, Player])[] = [
  [0, 0, 3, 0.43, scratch],
  [0.015, 0.6, 4, 0.43, scratch],
  [0.02, 1.5, 2, 0.15, averaging90],
  [0.02, 2.3, 4, 0.43, { ...scratch, readBias: -0.3 }],
  [0.01, 2, 7, 0.76, { ...averaging90, paceBias: -0.05 }],
];

describe('what becomes of strokes', () => {
  it.each(SPOTS)(
    'is what 12 000 balls do: slope %f, bearing %f, %f m, %f m past',
    (slope, turned, length, pace, player) => {
      const putt = ballAt(greenOf(slope, 2.9, 'rim'), length, turned);
      const walk = new LineWalk(putt);
      const line = walk.lineAt(pace);
      const high = line && startOf(putt, line.heading) < 0 ? -1 : 1;
      const lines = new MeantLines({
        length,
        rise: slope * Math.cos(turned),
        across: slope * Math.abs(Math.sin(turned)),
        greenSpeed: 2.9,
      });
      const prior = { ...defaultPrior(), tails: 1e4 };
      const middle = { ...someoneOf(prior, new Array(6).fill(0)), player };
      const ground = { rise: 0, across: 0, aimOffset: 0, aimByAcross: 0 };
      const spot = {
        ground,
        lines,
        pace,
        index: 0,
        words: undefined,
        turned: false,
        share: 1,
      };
      const strokes = groundStrokes(walk, high, 8192, [0, 0, 0]);
      const one = new PlayerStrokes([spot]);
      one.fill(middle);
      const outcomes: Outcome[] = ['holed', {}];
      for (const reach of ['short', 'past'] as const)
        for (const side of ['high', 'online', 'low'] as const)
          outcomes.push({ reach, side: writtenSide(side, 'leftToRight') });
      const normal = normalsOf(seededRandom(`${slope} ${length}`));
      const chances = outcomes.map((outcome) => (outcome === 'holed' ? undefined : missChance(outcome)));
      const counted = outcomes.map(() => 0);
      const left = [0, 0];
      const balls = 12_000;
      for (let i = 0; i < balls; i++) {
        const roll = plainRoll(putt, pace, player, normal);
        if (roll === undefined) throw new Error('it has a line');
        chances.forEach((chance, o) => {
          if (chance === undefined) counted[o] += roll.holed ? 1 : 0;
          else if (!roll.holed) counted[o] += chance.of(roll.passed, roll.along, roll.leave);
        });
        if (roll.holed) continue;
        left[0] += missChance({ leave: 0.3 }).of(roll.passed, roll.along, roll.leave);
        left[1] += missChance({ leave: 1 }).of(roll.passed, roll.along, roll.leave);
      }
      const chance = (outcome: Outcome): number =>
        chanceOf(
          recordedStrokes([{ ...spot, strokes }], () => outcome, {
            wide: wideOf(prior, 1.6),
            taken: Number.POSITIVE_INFINITY,
          }),
          one,
          1,
          1,
        );
      outcomes.forEach((outcome, o) => {
        const share = counted[o] / balls;
        // Chance: 4 standard errors; ours: 1.5 points where it is a half, one curve of starts for what is a little skewed (1.2 measured).
        const error =
          4 * Math.sqrt((share * (1 - share)) / balls) + 0.03 * Math.sqrt(share * (1 - share)) + 0.002;
        expect(Math.abs(chance(outcome) - share)).toBeLessThan(error);
      });
      [0.3, 1].forEach((leave, k) => {
        // A density over what is written: within 8% and chance.
        expect(Math.abs(chance({ leave }) - left[k] / balls)).toBeLessThan(0.08 * (left[k] / balls) + 0.03);
      });
    },
    60_000,
  );

  it('is kept: the same grounds are asked for twice, the work is done once', () => {
    const grounds = new Grounds();
    const question = { length: 3, level: false, exact: false } as const;
    const [, first] = grounds.of(question);
    expect(grounds.of({ ...question, length: 3.02 })[1]).toBe(first);
    expect(first.strokes()).toBe(first.strokes());
    expect(grounds.of(question).reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });
});
