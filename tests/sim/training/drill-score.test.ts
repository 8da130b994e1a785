/** The score to expect of a drill: played stroke by stroke, closed forms, and what must hold for every drill in the house. */
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { PUTTING_DRILLS, puttingDrill } from '../../../drills/putting-drills.ts';
import { PRESETS } from '../../../sim/player/presets.ts';
import { seededRandom } from '../../../sim/random.ts';
import { type DrillGround, stationPutt } from '../../../sim/training/drill-ground.ts';
import { type DrillExpectation, expectedScore } from '../../../sim/training/drill-score.ts';
import { withStep } from '../../../sim/training/pass-mark.ts';
import {
  type PuttingDrill,
  scoreRange,
  strokeOrder,
  strokesOf,
} from '../../../sim/training/putting-drill.ts';
import type { Player } from '../../../sim/types.ts';
import { sized } from '../../support/size.ts';
import { type Simulator, type Stroke, simulator } from './stroke-simulator.ts';

const GRASS: DrillGround = { kind: 'grass', greenSpeed: 3.048, slope: 0.02 };
const CARPET: DrillGround = { kind: 'carpet', greenSpeed: 3.35 };
const groundOf = (drill: PuttingDrill): DrillGround => (drill.ground === 'carpet' ? CARPET : GRASS);
const named = (id: string): PuttingDrill => {
  const drill = puttingDrill(id);
  if (drill === undefined) throw new Error(`no drill ${id}`);
  return drill;
};
/** Each is worked out once. */
const expectations = new Map<PuttingDrill, Map<Player, Map<DrillGround, DrillExpectation>>>();
const expected = (drill: PuttingDrill, player: Player, ground = groundOf(drill)): DrillExpectation => {
  const known = expectations.get(drill)?.get(player)?.get(ground);
  if (known !== undefined) return known;
  const found = expectedScore(drill, player, ground);
  if (found.status !== 'ok') throw new Error(found.reason);
  const ofDrill = expectations.get(drill) ?? new Map<Player, Map<DrillGround, DrillExpectation>>();
  expectations.set(drill, ofDrill.set(player, (ofDrill.get(player) ?? new Map()).set(ground, found)));
  return found;
};
const scratch = PRESETS[1].player;

describe.each(PUTTING_DRILLS.map((drill) => [drill.id, drill] as const))('%s', (_id, drill) => {
  // Best first. For every day two of them.
  const players = sized([PRESETS[1], PRESETS[PRESETS.length - 1]], PRESETS);
  const scores = players.map(({ player }) => expected(drill, player));

  it('can be scored for every preset, with chances that make one and a mark within reach', () => {
    for (const { chances, mean, sd, low, high, mark, repetitions } of scores) {
      expect(chances.every((chance) => chance >= 0)).toBe(true);
      // Holing out and zones leave the seven in a million beyond their reach out, shared out; the rest is rounding.
      expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
      expect([mean, sd, mark.chanceNow, mark.chanceBetter, repetitions.count].every(Number.isFinite)).toBe(
        true,
      );
      // The range told holds at least 80% of scores, a tenth at most beyond either end (the mean may lie outside where nearly all are at the top).
      const sum = (from: number, to: number): number =>
        chances.slice(from, to).reduce((all, chance) => all + chance, 0);
      expect(sum(low, high + 1)).toBeGreaterThanOrEqual(0.8 - 1e-9);
      expect(Math.max(sum(0, low), sum(high + 1, chances.length))).toBeLessThanOrEqual(0.1 + 1e-9);
      expect(mark.score).toBeGreaterThan(0);
      expect(mark.score).toBeLessThan(chances.length);
      const { least, most } = scoreRange(drill);
      expect(chances.length).toBe(most + 1);
      // Shares of a stroke sum to 1 but for rounding, and what is over goes to no points: nothing worth a name below the least.
      expect(chances.slice(0, least).reduce((sum, chance) => sum + chance, 0)).toBeLessThan(1e-12);
      expect(chances[least]).toBeGreaterThan(0);
    }
  });

  it('expects more of a better player, and of the same player a step better', () => {
    const sign = drill.scoring.better === 'higher' ? 1 : -1;
    for (let i = 1; i < scores.length; i++)
      expect(sign * (scores[i - 1].mean - scores[i].mean)).toBeGreaterThan(0);
    for (const { mean, meanBetter, mark } of scores) {
      expect(sign * (meanBetter - mean)).toBeGreaterThan(0);
      expect(mark.chanceBetter).toBeGreaterThan(mark.chanceNow);
    }
  });
});

/** Points of one stroke, judged by where the ball went. */
function judged(drill: PuttingDrill, stroke: Stroke): number {
  const { stroke: score } = drill.scoring;
  if (score.kind === 'holed') return stroke.holed ? 1 : 0;
  if (score.kind !== 'zones') throw new Error(`not played here: ${score.kind}`);
  if (stroke.holed) return score.holed;
  const zone = score.zones.find((one) =>
    one.shape === 'circle'
      ? Math.hypot(stroke.past, stroke.aside) <= one.radiusM
      : stroke.past >= -one.shortM &&
        stroke.past <= one.pastM &&
        Math.abs(stroke.aside) <= (one.widthM ?? Infinity) / 2,
  );
  return zone?.points ?? 0;
}

/** Plays a drill so often and tells mean and SD of its scores. */
function played(
  drill: PuttingDrill,
  player: Player,
  times: number,
): { mean: number; sd: number; share: (score: number) => number } {
  // MODEL.md, section 9: the green speed is known; the slope too on a known line, and from the third ball of a place on.
  const knowing = { ...player, slopeSd: 0, speedSd: 0, readBias: 0 };
  const rollsOf = (who: Player, what: string): Simulator[] =>
    drill.stations.map((station, i) =>
      simulator(stationPutt(station, groundOf(drill), 'rim'), {
        pace: Math.max(station.paceM ?? drill.paceM, 1e-4),
        player: who,
        seed: `${drill.id} ${i}${what}`,
        covered: drill.target === 'mark',
      }),
    );
  const rolls = rollsOf(drill.reading === 'known' ? knowing : { ...player, speedSd: 0 }, '');
  const later = rollsOf(knowing, ' known');
  const { tally } = drill.scoring;
  const scores: number[] = [];
  for (let time = 0; time < times; time++) {
    const reads = rolls.map((one) => (drill.reading === 'perStation' ? one.see() : undefined));
    const balls = rolls.map(() => 0);
    const points = (station: number): number => {
      const again = drill.reading === 'fresh' && tally.kind !== 'ladder' && balls[station]++ >= 2;
      return judged(drill, (again ? later : rolls)[station].strike(reads[station]));
    };
    if (tally.kind === 'ladder') {
      let rung = 0;
      for (let stroke = 0; stroke < tally.strokes && rung < rolls.length; stroke++)
        rung = points(rung) > 0 ? rung + 1 : Math.max(0, rung - tally.back);
      scores.push(rung);
      continue;
    }
    const order = strokeOrder(drill, time);
    if (tally.kind === 'run') {
      let run = 0;
      let longest = 0;
      for (let stroke = 0; stroke < tally.strokes && longest < tally.length; stroke++) {
        run = points(order[stroke % order.length]) > 0 ? run + 1 : 0;
        longest = Math.max(longest, run);
      }
      scores.push(longest);
      continue;
    }
    const sets = tally.kind === 'best' ? tally.sets : 1;
    scores.push(
      Math.max(
        ...Array.from({ length: sets }, () => order.reduce((sum, station) => sum + points(station), 0)),
      ),
    );
  }
  const mean = scores.reduce((sum, score) => sum + score, 0) / times;
  const sd = Math.sqrt(scores.reduce((sum, score) => sum + (score - mean) ** 2, 0) / (times - 1));
  return { mean, sd, share: (score) => scores.filter((one) => one >= score).length / times };
}

describe('played stroke by stroke', () => {
  it.each([
    'clock-four-sides',
    'one-read-five-balls',
    'lag-to-circles',
    'up-and-down-short',
    'short-ladder',
    'run-of-short-putts',
    'best-of-three-sets',
    'carpet-pace-zone',
  ])('%s comes out as expected', (id) => {
    const drill = named(id);
    const times = sized(500, 1500);
    const { mean, sd, share } = played(drill, scratch, times);
    const found = expected(drill, scratch);
    // Four standard errors of the mean, and what the odds of a stroke may be out, two tenths of a point each (rest-shares.test.ts),
    // times the most points a stroke scores.
    const slack = 0.002 * strokesOf(drill) * (drill.scoring.stroke.kind === 'zones' ? 3 : 1);
    expect(Math.abs(found.mean - mean)).toBeLessThan((4 * sd) / Math.sqrt(times) + slack);
    // The standard error of an SD is about sd / sqrt(2 n); scores are skewed, so five of them.
    expect(Math.abs(found.sd - sd)).toBeLessThan((5 * sd) / Math.sqrt(2 * times) + 0.02);
    const passes = share(found.mark.score);
    // Four standard errors of a share at most 1/2, and the slack as a share of an SD of the score.
    expect(Math.abs(found.mark.chanceNow - passes)).toBeLessThan(
      4 * Math.sqrt(0.25 / times) + (0.4 * slack) / sd,
    );
  });

  it.each(['firm-and-back', 'nine-holes-one-ball'])(
    '%s, every hole played out, comes out as expected',
    (id) => {
      const drill = named(id);
      const { stroke } = drill.scoring;
      if (stroke.kind !== 'holingOut') throw new Error('expected holing out');
      const random = seededRandom(id);
      const holes = sized(60, 150);
      let mean = 0;
      let variance = 0;
      for (const [index, station] of drill.stations.entries()) {
        const first = stationPutt(station, GRASS, 'rim');
        let sum = 0;
        let squares = 0;
        for (let hole = 0; hole < holes; hole++) {
          let putt = first;
          let putts = 1;
          let pace = drill.paceM;
          for (; putts < 4; putts++) {
            const length = Math.hypot(putt.ball.x, putt.ball.y);
            // Nearer than 12 cm nobody misses (holing-out.ts).
            if (length < 0.12) break;
            const roll = simulator(putt, {
              pace,
              player: { ...scratch, speedSd: 0 },
              seed: `${index} ${hole} ${putts} ${random()}`,
            }).strike();
            if (roll.holed) break;
            const [alongX, alongY] = [-putt.ball.x / length, -putt.ball.y / length];
            putt = {
              ...putt,
              ball: {
                x: roll.past * alongX - roll.aside * alongY,
                y: roll.past * alongY + roll.aside * alongX,
              },
            };
            // One sensible pace from everywhere, NEXT_PUTT_PACE: 15 in.
            pace = 0.381;
          }
          sum += stroke.points[putts - 1];
          squares += stroke.points[putts - 1] ** 2;
        }
        mean += (station.balls * sum) / holes;
        variance += (station.balls ** 2 * (squares / holes - (sum / holes) ** 2)) / holes;
      }
      // Four standard errors of what was played, and three hundredths of a point for the coarse table of next putts (MODEL.md, section 9).
      expect(Math.abs(expected(drill, scratch).mean - mean)).toBeLessThan(4 * Math.sqrt(variance) + 0.03);
    },
  );
});

describe('closed forms', () => {
  it('a gate on level carpet is binomial with 2 Phi(room / (distance x SD)) - 1', () => {
    const drill = named('carpet-gate');
    const [{ widthM, fromBallM }] = drill.gates;
    // Ball 1.680 in across (Equipment Rules).
    const share = 2 * jstat.normal.cdf((widthM - 0.04267) / 2 / (fromBallM * scratch.lineSd), 0, 1) - 1;
    const { chances, mean } = expected(drill, scratch);
    expect(mean).toBeCloseTo(20 * share, 1);
    // The share is good to 1e-3 (gate.test.ts), which moves a binomial chance of 20 by at most 20 times a tenth of that... 0.004.
    for (let k = 0; k <= 20; k++)
      expect(Math.abs(chances[k] - jstat.binomial.pdf(k, 20, share))).toBeLessThan(0.004);
  });

  it('a wider gate is passed more often, a faster green changes a gate drill hardly', () => {
    const drill = named('start-gate');
    const wider = { ...drill, gates: drill.gates.map((gate) => ({ ...gate, widthM: gate.widthM + 0.01 })) };
    expect(expected(wider, scratch).mean).toBeGreaterThan(expected(drill, scratch).mean);
    const fast = expected(drill, scratch, { kind: 'grass', greenSpeed: 3.66, slope: 0 });
    expect(Math.abs(fast.mean - expected(drill, scratch, { ...GRASS, slope: 0 }).mean)).toBeLessThan(0.01);
  });

  it('a read shared by two balls spreads the score and leaves its mean', () => {
    const five = named('one-read-five-balls');
    const drill = { ...five, stations: five.stations.map((station) => ({ ...station, balls: 2 })) };
    const shared = expected(drill, scratch);
    const fresh = expected({ ...drill, reading: 'fresh' }, scratch);
    // Reads on a lattice, or joined with the stroke as bell curves, which the odds promise to two tenths of a point of a share: of 8 balls.
    expect(Math.abs(shared.mean - fresh.mean)).toBeLessThan(8 * 0.002);
    // Of two alike balls whose results correlate by r the SD is sqrt(1 + r) as large: r of a tenth at least (five balls: a fifth more).
    expect(shared.sd).toBeGreaterThan(Math.sqrt(1.1) * fresh.sd);
    expect(expected(five, scratch).sd).toBeGreaterThan(
      Math.sqrt(1 + 4 * 0.1) * expected({ ...five, reading: 'known' }, scratch).sd,
    );
  });

  it('balls of one place tell of the read twice, then of the stroke alone', () => {
    const drill = named('sidehill-both-ways');
    const meanOf = (player: Player): number => expected(drill, player).mean;
    const [blind, knowing] = [scratch, { ...scratch, slopeSd: 0, speedSd: 0 }];
    const once = { ...drill, stations: drill.stations.map((station) => ({ ...station, balls: 2 })) };
    // What reading costs in four balls it costs in sixteen.
    expect(meanOf(knowing) - meanOf(blind)).toBeCloseTo(
      expected(once, knowing).mean - expected(once, blind).mean,
      9,
    );
    // The green speed is known.
    expect(meanOf({ ...scratch, speedSd: 0.3 })).toBe(meanOf(scratch));
  });

  it('balls that share a read and score by zones are refused with a sentence', () => {
    const drill: PuttingDrill = { ...named('lag-to-circles'), reading: 'perStation' };
    expect(expectedScore(drill, scratch, GRASS)).toMatchObject({
      status: 'cannot',
      reason: expect.stringMatching(/expected balls holed/),
    });
  });
});

describe('a drill on ground it is not for', () => {
  it('is refused with a sentence', () => {
    expect(expectedScore(named('carpet-gate'), scratch, GRASS)).toMatchObject({
      status: 'cannot',
      reason: expect.stringMatching(/grass.*expected carpet/),
    });
    expect(expectedScore(named('clock-four-sides'), scratch, { ...GRASS, greenSpeed: 0.3 })).toMatchObject({
      status: 'cannot',
      reason: expect.stringMatching(/green speed/),
    });
  });
});

describe('a step of practice', () => {
  it('takes a tenth off every trained error, habits too, and off no other', () => {
    // MODEL.md section 9.
    const player: Player = { ...scratch, paceBias: 0.05, readBias: -0.2 };
    expect(withStep(player, 'line')).toEqual({ ...player, lineSd: 0.9 * player.lineSd });
    expect(withStep(player, 'pace')).toEqual({
      ...player,
      paceSd: 0.9 * player.paceSd,
      paceBias: 0.9 * 0.05,
    });
    expect(withStep(player, 'read')).toEqual({
      ...player,
      slopeSd: 0.9 * player.slopeSd,
      speedSd: 0.9 * player.speedSd,
      readBias: 0.9 * -0.2,
    });
    for (const error of Object.keys(player) as (keyof Player)[])
      expect(withStep(player, 'mixed')[error]).toBeCloseTo(0.9 * player[error], 12);
  });
});
