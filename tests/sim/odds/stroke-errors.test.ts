/**
 * Start and energy of a player's strokes, beside lines shot anew for every ball on ground seen anew (tests/bench/oracle-*.ts, which
 * share no code with the engine), a closed form on level ground and a published spread.
 */
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { GRAVITY, ROLLING_FACTOR } from '../../../sim/constants.ts';
import { feetToMetres, type Player, type Putt, planeSurface, STIMP_SPEED } from '../../../sim/index.ts';
import { newStarts, type StrokeErrors, Strokes } from '../../../sim/odds/stroke-errors.ts';
import { normals, struckOf } from '../../bench/oracle.ts';
import { CASES, playerOf, puttOf } from '../../bench/oracle-cases.ts';
import { meantLines, turn } from '../../bench/oracle-meant.ts';
import { LONG_STEP, settingOf } from '../../bench/oracle-roll.ts';
import { sightOf } from '../../bench/oracle-seen.ts';

const BALLS = 4000;
const nobody: Player = { lineSd: 0, paceSd: 0, paceBias: 0, slopeSd: 0, speedSd: 0, readBias: 0 };

const strokesOf = (putt: Putt, pace: number, player: Player): StrokeErrors => {
  const strokes = new Strokes(putt, player).at(pace);
  if (strokes === undefined) throw new Error('no line');
  return strokes;
};

/** Share of balls that start right of `start` with less than `energy`: summed over thin slices of energy. */
function shareBelow(strokes: StrokeErrors, start: number, energy: number): number {
  const given = newStarts(strokes.curves);
  const all = strokes.below(energy);
  const slices = 200;
  let sum = 0;
  let from = 0;
  for (let i = 1; i <= slices; i++) {
    // By normal score, -5 up to the energy's own.
    const at = Math.min(energy, strokes.energyAt(-5 + (10 * i) / slices));
    const to = Math.min(all, strokes.below(at));
    if (to <= from) continue;
    strokes.startsAt(at, given);
    for (let k = 0; k < strokes.curves; k++)
      sum += (to - from) * given.shares[k] * jStat.normal.cdf(start, given.means[k], given.sds[k]);
    from = to;
  }
  return sum;
}

describe('starts and energies of a player', () => {
  it.each([
    'pin-high 3 m on 2%, die',
    'fast, down across 3%, die',
    'charged 6 m on 2.5%, biased',
    '1.2 m across 4%, reads badly, rim',
    'soft 5 m up 3.8%, free fall',
    '4 m on a green',
    '6 m over a tier, reads too much, rim',
  ])('are out together as those of balls whose lines are shot one by one: %s', (name) => {
    const one = CASES.find((other) => other.name === name);
    if (one === undefined) throw new Error(`no case named ${name}`);
    const putt = puttOf(one);
    const player = playerOf(one.player);
    const setting = settingOf(putt, LONG_STEP);
    const lines = meantLines(setting, putt.ball, one.paceM, player.readBias);
    const normal = normals(`strokes ${name}`);
    const zero = Math.atan2(putt.hole.y - putt.ball.y, putt.hole.x - putt.ball.x);
    const balls: { start: number; energy: number }[] = [];
    while (balls.length < BALLS) {
      const line = lines?.meant(sightOf(setting, player, normal));
      if (line === undefined) continue;
      const { heading, speed } = struckOf(line, player, normal);
      balls.push({ start: turn(heading - zero), energy: speed ** 2 });
    }
    const strokes = strokesOf(putt, one.paceM, player);
    for (const startScore of [-1, 0, 1])
      for (const energyScore of [-1, 0, 1, 6]) {
        const start = strokes.start + startScore * strokes.startSd;
        const energy = strokes.energyAt(energyScore);
        const counted = balls.filter((ball) => ball.start < start && ball.energy < energy).length / BALLS;
        const told = shareBelow(strokes, start, energy);
        // Four standard errors, and what the bell curves leave out: at most half a point anywhere inside, which the odds, sums
        // over all of it, promise to 0.2.
        const error = Math.sqrt((counted * (1 - counted) + 1 / BALLS) / BALLS);
        expect(Math.abs(told - counted), `${startScore}, ${energyScore}`).toBeLessThan(4 * error + 0.005);
      }
  });

  it('come of slope and speed on level ground as derived, and reach the published spread of reading', () => {
    const putt: Putt = {
      surface: planeSurface({ slope: 0, downhill: 0 }),
      greenSpeed: feetToMetres(10),
      ball: { x: -5, y: 0 },
      hole: { x: 0, y: 0 },
      capture: 'simple',
    };
    const friction = STIMP_SPEED ** 2 / (2 * putt.greenSpeed);
    const slopeSd = 0.005;
    const unit = (ROLLING_FACTOR * GRAVITY * slopeSd) / friction;
    // Derived: a slope seen along changes the energy by k e / a_f; one seen across turns the start by (k e / a_f) (D / 2L)
    // (1 - q + q ln q), D = L + pace, q = pace / D (tests/sim/odds/oracle.test.ts has the steps); second order is unit^2.
    const pace = 0.4;
    const q = pace / (5 + pace);
    const bySlope = strokesOf(putt, pace, { ...nobody, slopeSd });
    expect(Math.abs(bySlope.energySd / bySlope.energy / unit - 1)).toBeLessThan(2 * unit ** 2);
    const start = ((unit * (5 + pace)) / 10) * (1 - q + q * Math.log(q));
    expect(Math.abs(bySlope.startSd / start - 1)).toBeLessThan(4 * unit ** 2);
    // Karlsen & Nilsson 2008 (abstract read): of 10.6% spread of distance reading makes 60% of the variance, 8.2%. A slope of 0.5%
    // and a green speed of 5%, at 10 ft, make 8.1% of the energy, which distance goes with (derived, PLAYER.md's figure).
    const both = strokesOf(putt, pace, { ...nobody, slopeSd, speedSd: 0.05 });
    expect(Math.abs(both.energySd / both.energy - 0.106 * Math.sqrt(0.6))).toBeLessThan(0.002);
  });

  it('of the stroke alone are two bell curves of their own, whatever the ground', () => {
    const putt = puttOf(CASES[2]);
    const strokes = strokesOf(putt, 0.3, { ...nobody, lineSd: 0.02, paceSd: 0.07, paceBias: 0.03 });
    const plain = strokesOf(putt, 0.3, nobody);
    // Rounding.
    expect(strokes.energy / plain.energy).toBeCloseTo(1.03, 12);
    expect(strokes.energySd / plain.energy).toBeCloseTo(0.07, 12);
    expect(strokes.start).toBeCloseTo(plain.start, 12);
    expect(strokes.startSd).toBeCloseTo(0.02, 12);
  });
});
