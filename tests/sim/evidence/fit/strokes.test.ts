/** Strokes laid out on a grid of errors, against strokes drawn and rolled one by one, and against the engine's exact densities. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { ballAt, greenOf } from '../../../../sim/benchmarks/putts.ts';
import {
  AIMS,
  type ErrorShares,
  fillShares,
  NO,
  newErrorShares,
  START_EDGES,
  STARTS,
  UNASKED,
  YES,
} from '../../../../sim/evidence/fit/error-shares.ts';
import { Grounds } from '../../../../sim/evidence/fit/grounds.ts';
import { normalBelow } from '../../../../sim/evidence/fit/normal-below.ts';
import { chanceOf, type Outcome, patternOf } from '../../../../sim/evidence/fit/patterns.ts';
import { holingOf, strokesOf } from '../../../../sim/evidence/fit/strokes.ts';
import { missChance, writtenSide } from '../../../../sim/evidence/fit/words.ts';
import { holedShare, type Player, seededRandom } from '../../../../sim/index.ts';
import { startErrors } from '../../../../sim/odds/start-errors.ts';
import { FITTED_PLAYERS } from '../../../../sim/player/fitted.ts';
import { LineWalk } from '../../../../sim/read/line.ts';
import { normalsOf, plainRolls } from '../../../support/recordingPlayer.ts';

const NOBODY_ASKED = { start: false, pace: false };
const BANDS = { start: 0.0175, pace: 0.1 };
const sharesOf = (player: Player, asked = NOBODY_ASKED): ErrorShares => {
  const shares = newErrorShares();
  fillShares(player, BANDS, asked, shares);
  return shares;
};
const { scratch, averaging90 } = FITTED_PLAYERS;

describe('the shares of a player', () => {
  it('read the normal distribution to 5e-6, as jstat has it', () => {
    // Chords of the table: at most 0.242 / (8 x 88^2) = 3.9e-6 off.
    for (let z = -8.5; z < 8.5; z += 0.0137)
      expect(Math.abs(normalBelow(z) - jstat.normal.cdf(z, 0, 1))).toBeLessThan(5e-6);
  });

  it.each([
    ['scratch', scratch],
    ['averaging 90, seeing a quarter too little', { ...averaging90, readBias: -0.25 }],
    ['of a line twice as bad as the read', { ...scratch, lineSd: 0.05, readSd: 0.1 }],
  ])('of the start lie where the exact density of line and read has them: %s', (_name, player) => {
    const [starts] = sharesOf(player).starts;
    for (const aim of [1, 3, 5]) {
      const { density } = startErrors(AIMS[aim], player);
      let apart = 0;
      for (let i = 0; i < STARTS; i++) {
        const [from, to] = [START_EDGES[i], START_EDGES[i + 1]];
        let exact = 0;
        for (let k = 0; k < 40; k++)
          exact += (density(AIMS[aim] + from + ((to - from) * (k + 0.5)) / 40) * (to - from)) / 40;
        apart += Math.abs(exact - starts[aim * STARTS + i]) / 2;
      }
      // Half the sum of differences: the share of strokes in another cell. 1%: the read's error is not quite normal in angle.
      expect(apart).toBeLessThan(0.01);
    }
  });

  it('of the answers yes and no add up to all strokes, and a worse line says yes less often', () => {
    const asked = { start: true, pace: true };
    const yesOf = (player: Player): number => {
      const { starts, paces } = sharesOf(player, asked);
      for (const table of [starts, paces])
        for (let i = 0; i < table[UNASKED].length; i++)
          expect(table[YES][i] + table[NO][i]).toBeCloseTo(table[UNASKED][i], 12);
      return starts[YES].subarray(0, STARTS).reduce((sum, share) => sum + share, 0);
    };
    // One stroke in ten is answered wrongly: 0.1 + 0.8 x the normal share within one degree (jstat), on a straight putt. Tolerance: cells.
    for (const player of [scratch, averaging90]) {
      const inside = 2 * jstat.normal.cdf(BANDS.start / player.lineSd, 0, 1) - 1;
      expect(Math.abs(yesOf(player) - (0.1 + 0.8 * inside))).toBeLessThan(0.02);
    }
    expect(yesOf(averaging90)).toBeLessThan(yesOf(scratch));
  });
});

/** Slope, bearing of the ball from straight below (radians), length m, pace m: level, up, across, down; soft and firm. */
const SPOTS: readonly (readonly [number, number, number, number, Player])[] = [
  [0, 0, 3, 0.43, scratch],
  [0.015, 0.6, 4, 0.43, scratch],
  [0.02, 1.5, 2, 0.15, averaging90],
  [0.03, 2.5, 4, 0.43, { ...scratch, readBias: -0.3 }],
  [0.01, 2, 7, 0.76, { ...averaging90, paceBias: -0.05 }],
];

describe('what becomes of strokes', () => {
  it.each(SPOTS)(
    'is what 100 000 plain rolls do: slope %f, bearing %f, %f m, %f m past',
    (slope, turned, length, pace, player) => {
      const putt = ballAt(greenOf(slope, 2.9, 'rim'), length, turned);
      const holing = holingOf(new LineWalk(putt));
      const strokes = holing && strokesOf(holing, pace);
      const rolls = plainRolls(putt, pace, player, normalsOf(seededRandom(`${slope} ${length}`)));
      if (strokes === undefined || rolls === undefined) throw new Error('it has a line');
      const outcomes: Outcome[] = ['holed'];
      for (const reach of ['short', 'past'] as const)
        for (const side of ['high', 'online', 'low'] as const)
          outcomes.push({ reach, side: writtenSide(side, 'leftToRight') });
      const count = 100_000;
      const counted = outcomes.map(() => 0);
      const chances = outcomes.map((outcome) => (outcome === 'holed' ? undefined : missChance(outcome)));
      const left = [0, 0];
      for (let i = 0; i < count; i++) {
        const { holed, passed, along, leave } = rolls.roll();
        chances.forEach((chance, o) => {
          if (chance === undefined) counted[o] += holed ? 1 : 0;
          else if (!holed) counted[o] += chance.of(passed, along, leave);
        });
        if (holed) continue;
        left[0] += missChance({ leave: 0.3 }).of(passed, along, leave);
        left[1] += missChance({ leave: 1 }).of(passed, along, leave);
      }
      const shares = sharesOf(player);
      const grounds = [{ strokes, share: 1 }];
      outcomes.forEach((outcome, o) => {
        // Chance: 4 standard errors, 0.6 points at most; ours: half a point (holed 0.3, sides of fast balls 0.5 measured).
        const chance = chanceOf(patternOf(grounds, outcome), shares);
        const share = counted[o] / count;
        const error = 4 * Math.sqrt((share * (1 - share)) / count) + 0.005;
        expect(Math.abs(chance - share)).toBeLessThan(error);
      });
      [0.3, 1].forEach((leave, k) => {
        // A density over what is written: within 5% (cells of energy; rolls, 1.5%), or 0.01 where it is next to nothing.
        const ours = chanceOf(patternOf(grounds, { leave }), shares);
        expect(Math.abs(ours - left[k] / count)).toBeLessThan(0.05 * (left[k] / count) + 0.01);
      });
    },
  );

  it('drops what the engine’s odds drop, within 0.6 points', () => {
    // No read error, so that no table of next putts is needed; a line of two degrees stands for both. 0.6: at 0.7 m the hole's
    // edge lies among cells a degree wide (0.5 measured; 0.3 at most beyond 2 m).
    const player = { ...scratch, lineSd: 0.035, readSd: 0 };
    const shares = sharesOf(player);
    for (const length of [0.7, 2.2, 6])
      for (const [slope, turned] of [
        [0.01, 0.6],
        [0.02, 1.5],
        [0.03, 1.2],
        [0.03, 2.6],
      ])
        for (const pace of [0.15, 0.76]) {
          const putt = ballAt(greenOf(slope, 2.9, 'rim'), length, turned);
          const holing = holingOf(new LineWalk(putt));
          const strokes = holing && strokesOf(holing, pace);
          if (strokes === undefined) throw new Error('it has a line');
          const holed = chanceOf(patternOf([{ strokes, share: 1 }], 'holed'), shares);
          expect(Math.abs(holed - holedShare(putt, pace, player))).toBeLessThan(0.006);
        }
  });

  it('is kept: the same grounds are asked for twice, the work is done once', () => {
    const grounds = new Grounds();
    const question = { length: 3, level: false, exact: false } as const;
    const [, first] = grounds.of(question);
    expect(grounds.of({ ...question, length: 3.02 })[1]).toBe(first);
    expect(first.strokesAt(0.43)).toBe(first.strokesAt(0.43));
    expect(grounds.of(question).reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });
});
