/**
 * What each error costs: laws, a plain Monte Carlo, the engine played directly with tables of its own and a
 * finer mix (no surrogate, no held choices, no interpolation over length), and the size of what players of different skill take in a round.
 */
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { EXPECTED, type Ground, playGround, usualAt } from '../../../sim/costs/ground.ts';
import {
  afterStep,
  CLUB_MIX,
  COST_BANDS,
  type CostTable,
  compareSteps,
  costTable,
  costTables,
  degreesToRadians,
  ENGINE_ERROR,
  type FirstPuttMix,
  feetToMetres,
  type Member,
  type Player,
  PRESETS,
  PUTTS_PER_ROUND,
  type Putt,
  planeSurface,
  playMix,
  presetOf,
  puttingBenchmarkOf,
  type RoundCosts,
  roundCosts,
  STATED_FIRST_PUTTS,
  STEPS,
  type StepId,
} from '../../../sim/index.ts';
import { oracleOdds } from '../../bench/oracle.ts';
import { LONG_STEP } from '../../bench/oracle-roll.ts';
import { sized } from '../../support/size.ts';

/** Every ground prepared here, the first of them for PLAYER: half the work of a table. */
const grounds: Ground[] = [];
vi.mock('../../../sim/costs/ground.ts', async (original) => {
  const real = await original<typeof import('../../../sim/costs/ground.ts')>();
  const prepareGround: typeof real.prepareGround = (options) => {
    const ground = real.prepareGround(options);
    grounds.push(ground);
    return ground;
  };
  return { ...real, prepareGround };
});

const presetNamed = (id: string): Player => {
  const found = presetOf(id);
  if (found === undefined) throw new Error(`no preset ${id}`);
  return found.player;
};
const benchmark = puttingBenchmarkOf('scratch-modelled');
if (benchmark === undefined) throw new Error('no benchmark');

const PLAYER: Player = { ...presetNamed('handicap-6'), readBias: -0.2 };
const STATED = STATED_FIRST_PUTTS;
const roundOf = (table: CostTable, mix: FirstPuttMix = STATED): RoundCosts =>
  roundCosts(table, { mix, benchmark });
const savedBy = (costs: RoundCosts, step: StepId): number =>
  costs.steps.find((one) => one.step === step)?.saved.value ?? Number.NaN;
/** All first putts from one length. */
const from = (length: number): FirstPuttMix => ({ first: [{ length, share: 1 }], holes: 0, own: 0 });

/** Some thirty players by the engine take a minute; beside other work, many. ms. */
const SLOW = 1_200_000;

/** Errors that differ among them, and by how much. */
const VARIED: readonly (readonly [keyof Player, number])[] = [
  ['slopeSd', 0.002],
  ['lineSd', 0.003],
  ['readBias', 0.08],
];
/** Likely players about one: each error low and high while the others stay; no two errors go together. */
const LIKELY: readonly Member[] = [
  { player: PLAYER, weight: 2 },
  ...sized(VARIED.slice(1), VARIED).flatMap(([error, by]) =>
    [-1, 1].map((side) => ({ player: { ...PLAYER, [error]: PLAYER[error] + side * by }, weight: 1 })),
  ),
];

let one: CostTable;
let many: CostTable;
const told: number[] = [];
beforeAll(() => {
  // The middle one alone comes first: it is PLAYER, but for the rounding of a mean.
  [one, many] = costTables(LIKELY, { onProgress: (share) => told.push(share) });
}, SLOW);

describe('the table', () => {
  it('tells how far it is, from 0 to 1 and never back', () => {
    expect(told.at(-1)).toBe(1);
    expect(told.every((share, i) => share >= (told[i - 1] ?? 0))).toBe(true);
  });

  it('refuses to cost nobody', () => {
    expect(() => costTable([])).toThrow(/Got no likely player/);
    expect(() => costTable([{ player: PLAYER, weight: 0 }])).toThrow(/at least one/);
  });
});

describe('laws of savings', () => {
  it('a habit that is not there saves nothing when taken away', () => {
    expect(savedBy(roundOf(one), 'paceHabit')).toBe(0);
  });

  it('a smaller spread never costs, at any length, nor does the best pace in the place of the usual one', () => {
    const never = STEPS.filter((step) => !step.endsWith('Habit'));
    // What a putt was out by in the engine's own law of the best pace (tests/laws/odds.test.ts), in putts.
    for (const step of never) for (const saved of one.saved[step]) expect(saved).toBeGreaterThan(-0.002);
  });

  it('bands of distance add up to the round, in putts, in holes and in what every step saves', () => {
    const costs = roundOf(one);
    const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);
    expect(costs.bands.map(({ band }) => band)).toEqual(COST_BANDS);
    expect(sum(costs.bands.map(({ holes }) => holes))).toBeCloseTo(18, 9);
    expect(sum(costs.bands.map(({ putts }) => putts.value))).toBeCloseTo(costs.putts.value, 9);
    for (const { saved, byBand } of costs.steps)
      expect(sum(byBand.map(({ value }) => value))).toBeCloseTo(saved.value, 9);
  });

  it('a larger step of the same kind saves more', () => {
    const costs = roundOf(one);
    expect(savedBy(costs, 'lineHalf')).toBeGreaterThan(savedBy(costs, 'lineTenth'));
  });

  it('two steps held against each other differ by what each saves, and the sign turns with the order', () => {
    const costs = roundOf(many);
    const ahead = compareSteps(many, STATED, ['paceShare', 'lineHalf']);
    const back = compareSteps(many, STATED, ['lineHalf', 'paceShare']);
    expect(ahead.more.value).toBeCloseTo(savedBy(costs, 'paceShare') - savedBy(costs, 'lineHalf'), 9);
    expect(back.more.value).toBeCloseTo(-ahead.more.value, 9);
    expect(ahead.chance + back.chance).toBeCloseTo(1, 9);
    expect(compareSteps(many, STATED, ['lineTenth', 'lineTenth']).chance).toBe(0.5);
  });

  it(
    'who makes no error holes everything: every putt is one putt, and nothing can be saved',
    () => {
      const perfect: Player = {
        lineSd: 0,
        paceSd: 0,
        paceBias: 0,
        slopeSd: 0,
        speedSd: 0,
        readBias: 0,
      };
      const table = costTable([{ player: perfect, weight: 1 }]);
      const costs = roundOf(table);
      expect(costs.putts.value).toBeCloseTo(18, 6);
      for (const { saved } of costs.steps) expect(saved.value).toBeCloseTo(0, 6);
    },
    SLOW,
  );
});

describe('the numbers', () => {
  const LENGTHS = [10, 25].map(feetToMetres);
  /**
   * Played directly at both lengths: other slopes and more directions, for every day as many as stand for the finer mix within 0.003
   * putts (tests/sim/benchmarks/mix.test.ts), every player with tables and choices of his own.
   */
  const direct = (player: Player): number[] =>
    playMix({
      mix: CLUB_MIX,
      lengths: LENGTHS,
      player,
      pace: one.usual,
      fineness: sized(
        { slopes: 2, greenSpeeds: 1, directions: 6 },
        { slopes: 4, greenSpeeds: 1, directions: 9 },
      ),
    }).map(({ expectedPutts }) => expectedPutts);

  it(
    'of single lengths, and of what a step saves there, are those of a finer mix played directly',
    () => {
      const now = direct(PLAYER);
      const then = direct(afterStep(PLAYER, 'pacePoint'));
      LENGTHS.forEach((length, i) => {
        const costs = roundOf(one, from(length));
        // 0.006 putts: 0.003 of the mix's own fineness (tests/sim/benchmarks/mix.test.ts) and as much of the cubics over length.
        expect(Math.abs(costs.putts.value / 18 - now[i])).toBeLessThan(0.006);
        // What a round may be out by, were every hole of it such a putt.
        expect(Math.abs(savedBy(costs, 'pacePoint') - 18 * (now[i] - then[i]))).toBeLessThan(ENGINE_ERROR);
      });
    },
    SLOW,
  );

  it(
    'of paces are those of a plain Monte Carlo with rolls and lines of its own: holed from 12 ft on 2%, usual and firm',
    () => {
      // Two bearings stand for each direction, degrees from straight below the hole (MODEL.md, what errors cost).
      const bearings = { uphill: [15, 45], sidehill: [75, 105] } as const;
      for (const direction of ['uphill', 'sidehill'] as const) {
        const row = one.firmer.find(
          ({ length, slope, direction: which }) =>
            which === direction && slope === 0.02 && Math.abs(length - feetToMetres(12)) < 1e-9,
        );
        for (const pace of ['usual', 'firm'] as const) {
          const counted = bearings[direction].map((degrees) => {
            const bearing = degreesToRadians(degrees - 90);
            const putt: Putt = {
              surface: planeSurface({ slope: 0.02, downhill: -Math.PI / 2 }),
              greenSpeed: one.greenSpeed,
              ball: { x: feetToMetres(12) * Math.cos(bearing), y: feetToMetres(12) * Math.sin(bearing) },
              hole: { x: 0, y: 0 },
              capture: 'rim',
            };
            const options = {
              rolls: sized(4000, 20_000),
              playedOut: 1,
              seed: `${direction} ${pace} ${degrees}`,
              step: LONG_STEP,
            };
            return oracleOdds(putt, row?.paces[pace].pace ?? Number.NaN, PLAYER, options).holed;
          });
          const value = (counted[0].value + counted[1].value) / 2;
          const se = Math.hypot(counted[0].se, counted[1].se) / 2;
          // 0.2 points, as everywhere beside this oracle, and three standard errors (0.6 points of 20,000 balls, 1.4 of 4000).
          expect(Math.abs((row?.paces[pace].holed ?? 0) - value), `${direction} ${pace}`).toBeLessThan(
            0.002 + 3 * se,
          );
        }
      }
    },
    SLOW,
  );

  it('between lengths lie on what is played there outright', () => {
    // A table whose numbers are a known curve: putts of the benchmark, in whose table the same cubics have no part.
    const curve: CostTable = {
      ...one,
      weights: Float64Array.of(1),
      now: Float64Array.from(one.lengths, (length) => benchmark.expectedPuttsAt(length)),
    };
    for (const feet of [4, 6.5, 10, 16, 25, 36, 50]) {
      const length = feetToMetres(feet);
      const costs = roundCosts(curve, { mix: from(length), benchmark });
      // A third of what is asked of a putt above.
      expect(Math.abs(costs.putts.value / 18 - benchmark.expectedPuttsAt(length))).toBeLessThan(0.004);
    }
  });

  it('of likely players lie within what the surrogate says it may be off, and their intervals hold the middle one', () => {
    expect(many.checked?.players).toBe(3);
    // Putts: a hundredth of a putt on every hole would be 0.18 strokes a round, far inside the width of any interval here.
    expect(many.checked?.worst).toBeLessThan(0.01);
    const costs = roundOf(many);
    const alone = roundOf(one);
    for (const { step, saved } of alone.steps) {
      const interval = costs.steps.find((other) => other.step === step)?.saved;
      expect(interval?.low).toBeLessThanOrEqual(saved.value + ENGINE_ERROR);
      expect(interval?.high).toBeGreaterThanOrEqual(saved.value - ENGINE_ERROR);
    }
  });

  it(
    'differ as much between a tour player and one who averages 90 as Broadie says: four putts a round',
    () => {
      // What each takes now, without what steps would save: on the ground of one who lies between them.
      const [ground] = grounds;
      const puttsOf = (id: string): number => {
        const row = playGround(ground, presetNamed(id), true);
        const now = Float64Array.from(one.lengths, (_, i) => row[usualAt(i) + EXPECTED]);
        return roundOf({ ...one, weights: Float64Array.of(1), now }).putts.value;
      };
      const [tour, ninety] = [puttsOf('tour'), puttsOf('averaging-90')];
      // 29 and 33 (second-hand, rounded, each player from his own first putts; ours putt from the same ones): within two of four.
      const published = (PUTTS_PER_ROUND.averaging90 ?? 0) - (PUTTS_PER_ROUND.tour ?? 0);
      expect(published).toBe(4);
      expect(ninety - tour).toBeGreaterThan(2);
      expect(ninety - tour).toBeLessThan(6);
      expect(tour).toBeGreaterThan(28);
      expect(ninety).toBeLessThan(36);
    },
    SLOW,
  );
});

describe('steps', () => {
  it('are the steps they are called, and never make a spread less than none', () => {
    const player: Player = {
      lineSd: degreesToRadians(1),
      paceSd: 0.1,
      paceBias: -0.02,
      slopeSd: 0.0005,
      speedSd: 0.04,
      readBias: 0.1,
    };
    expect(afterStep(player, 'lineTenth').lineSd).toBeCloseTo(degreesToRadians(0.9), 12);
    expect(afterStep(player, 'lineHalf').lineSd).toBeCloseTo(degreesToRadians(0.5), 12);
    expect(afterStep(player, 'pacePoint').paceSd).toBeCloseTo(0.09, 12);
    expect(afterStep(player, 'paceShare').paceSd).toBeCloseTo(0.09, 12);
    expect(afterStep(player, 'readPoints').slopeSd).toBe(0);
    // A tenth off every error of an area, one number, or within reach of a scratch player: no habit, and what is below already a tenth less.
    expect(afterStep(player, 'paceShare').paceBias).toBeCloseTo(-0.018, 12);
    expect(afterStep(player, 'readShare')).toEqual({
      ...player,
      slopeSd: 0.9 * 0.0005,
      speedSd: 0.9 * 0.04,
      readBias: 0.9 * 0.1,
    });
    expect(afterStep(player, 'speedShare')).toEqual({ ...player, speedSd: 0.9 * 0.04 });
    const scratch = presetNamed('scratch');
    const reached = afterStep({ ...player, lineSd: 2 * scratch.lineSd }, 'lineReach');
    expect(reached.lineSd).toBe(scratch.lineSd);
    expect(afterStep(scratch, 'lineReach').lineSd).toBeCloseTo(0.9 * scratch.lineSd, 12);
    expect(afterStep(player, 'paceReach')).toMatchObject({ paceBias: 0, paceSd: scratch.paceSd });
    expect(afterStep(player, 'readReach')).toMatchObject({ readBias: 0, slopeSd: 0.9 * 0.0005 });
    expect(afterStep(player, 'readHabit').readBias).toBe(0);
    expect(afterStep(player, 'paceHabit').paceBias).toBe(0);
    expect(afterStep(player, 'bestPace')).toBe(player);
    // Everything else stays as it is, for every preset.
    for (const { player: preset } of PRESETS)
      expect({ ...afterStep(preset, 'pacePoint'), paceSd: preset.paceSd }).toEqual(preset);
  });
});
