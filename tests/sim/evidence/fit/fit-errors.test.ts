/** The fit of a player: published tables, known players, statuses. */
import { describe, expect, it } from 'vitest';
import { captureRule } from '../../../../sim/hole/capture.ts';
import {
  BERRY_HOLED,
  defaultPrior,
  ERRORS,
  type ErrorsPrior,
  type FittedErrors,
  feetToMetres,
  findLeast,
  fitErrors,
  Grounds,
  HOLE_RADIUS,
  type HoledRow,
  type PracticeSet,
  radiansToDegrees,
  STIMP_SPEED,
  shareBelow,
  TOUR_HOLED,
} from '../../../../sim/index.ts';
import { FITTED_PLAYERS } from '../../../../sim/player/fitted.ts';
import {
  type Golfer,
  ORDINARY,
  type RecordingHabits,
  recordRounds,
} from '../../../support/recordingPlayer.ts';
import { sized } from '../../../support/size.ts';
import { recorded } from '../../record/recorded.ts';

const ok = (fit: ReturnType<typeof fitErrors>): FittedErrors => {
  if (fit.status !== 'ok') throw new Error(`got ${fit.status}`);
  return fit;
};

/** A published table as practice sets. @param most putts a row may count for: beyond that the model is what misses */
const setsOf = (rows: readonly HoledRow[], most: number): PracticeSet[] =>
  rows.map(({ feet, tries, holed }, i) => {
    const attempts = Math.min(tries, most);
    return {
      id: `s${i}`,
      day: '2020-01-01',
      recordedAt: 0,
      distance: feetToMetres(feet),
      attempts,
      holed: Math.round((attempts * holed) / tries),
      ground: 'grass',
    };
  });

/** Nothing thought beforehand of line and pace; bell curves, no habits, no misreading, the hole as it is: as in the published models. */
const FLAT: ErrorsPrior = {
  ...defaultPrior(),
  about: { ...defaultPrior().about, slopeSd: 1e-5, speedSd: 1e-5 },
  logSpread: 2,
  paceBiasSd: 0.001,
  usualPace: feetToMetres(1),
  usualPaceSpread: 1e-3,
  tails: 1e4,
  tailsSpread: 0,
  rimSpread: 1e-3,
};
const ONE_FOOT = feetToMetres(1);
const GREEN = feetToMetres(9.5);

/**
 * Gelman's model of 2019 (angle and distance, level, 1 ft past) with the hole of our rule in the place of his: as wide as a ball of its
 * speed may be off, not R - r up to 3 ft past. Written out anew, by plain sums: no drop region, no cells. Strays as in the fit.
 */
function gelmanWithOurHole(
  rows: readonly HoledRow[],
  most: number,
  paceKnown?: number,
): { line: number; pace: number } {
  const { widestDrop } = captureRule('rim');
  const slowing = STIMP_SPEED ** 2 / (2 * GREEN);
  const widthAt = (past: number): number => {
    if (past < -HOLE_RADIUS) return 0;
    const resting = Math.sqrt(Math.max(0, HOLE_RADIUS ** 2 - past ** 2));
    if (past <= 0) return resting;
    // The rim is crossed sqrt(R^2 - b^2) before the middle.
    let width = 0.04;
    for (let i = 0; i < 8 && width > 0; i++)
      width = Math.max(
        0,
        widestDrop(Math.sqrt(2 * slowing * (past + Math.sqrt(HOLE_RADIUS ** 2 - width ** 2)))),
      );
    return past < HOLE_RADIUS ? Math.max(width, resting) : width;
  };
  const holedFrom = (length: number, line: number, pace: number): number => {
    let sum = 0;
    for (let z = -4.9; z < 5; z += 0.1) {
      const width = widthAt((length + ONE_FOOT) * (1 + pace * z) - length);
      const across = width > 0 ? 2 * shareBelow(Math.asin(Math.min(1, width / length)) / line) - 1 : 0;
      sum += (0.1 * Math.exp((-z * z) / 2) * across) / Math.sqrt(2 * Math.PI);
    }
    return sum;
  };
  const { about } = FLAT;
  const strays = rows.map(({ feet }) => holedFrom(feetToMetres(feet), 3 * about.lineSd, 3 * about.paceSd));
  const { at } = findLeast({
    misfit: ([line, pace = paceKnown ?? 0]) =>
      line > 0 && pace > 0
        ? rows.reduce((sum, { feet, tries, holed }, i) => {
            const share = 0.995 * holedFrom(feetToMetres(feet), line, pace) + 0.005 * strays[i];
            const part = holed / tries;
            return sum - Math.min(tries, most) * (part * Math.log(share) + (1 - part) * Math.log(1 - share));
          }, 0)
        : Number.POSITIVE_INFINITY,
    start: paceKnown === undefined ? [0.022, 0.1] : [0.03],
    steps: paceKnown === undefined ? [0.003, 0.02] : [0.004],
    tolerance: 0.01,
    mostTries: 200,
  });
  return { line: at[0], pace: at[1] };
}

const level = { level: true, taps: [] } as const;

describe('published tables on level putts', () => {
  it('give the angle of Gelman & Nolan once the hole is as wide as ours', () => {
    // Published: 1.53 degrees with a hole R - r wide. Angle only: the pace is held at next to nothing. Our rule drops a ball that dies a foot
    // past up to 41 mm off, 1.26 times as far, and the angle grows alike: 1.93 degrees. 5%: the pace that is left, and strays.
    const prior = { ...FLAT, about: { ...FLAT.about, lineSd: 0.03, paceSd: 0.02 }, logSpread: 0.05 };
    const wide = { ...prior, about: { ...prior.about, lineSd: 0.0325 } };
    const { errors } = ok(
      fitErrors({ putts: [], sets: setsOf(BERRY_HOLED, 1e9) }, { ...level, prior: wide }),
    );
    const oracle = gelmanWithOurHole(BERRY_HOLED, 1e9, 0.02);
    expect(Math.abs(errors.lineSd.median / oracle.line - 1)).toBeLessThan(0.03);
    const slowing = STIMP_SPEED ** 2 / (2 * GREEN);
    const width = captureRule('rim').widestDrop(Math.sqrt(2 * slowing * (ONE_FOOT + 0.035)));
    const asPublished = (radiansToDegrees(errors.lineSd.median) * (HOLE_RADIUS - 0.021335)) / width;
    expect(Math.abs(asPublished / 1.53 - 1)).toBeLessThan(0.05);
  });

  it('give the angle and distance of Gelman’s model with our hole in it', () => {
    // 20 ft and less, where first putts are meant to be holed; at most 2500 putts a row (beyond that the model misses, section 5). His own hole
    // gives 1.02 degrees and 8.0%; ours, wider for slow balls and open to faster ones, 1.22 and 11.2% by the sums above.
    const rows = TOUR_HOLED.filter(({ feet }) => feet > 0.5 && feet < 21);
    const { errors } = ok(fitErrors({ putts: [], sets: setsOf(rows, 2500) }, { ...level, prior: FLAT }));
    const oracle = gelmanWithOurHole(rows, 2500);
    expect(errors.lineSd.range95.low).toBeLessThan(oracle.line);
    expect(errors.lineSd.range95.high).toBeGreaterThan(oracle.line);
    expect(errors.paceSd.range95.low).toBeLessThan(oracle.pace);
    expect(errors.paceSd.range95.high).toBeGreaterThan(oracle.pace);
    // Ranges must be narrow for that to say anything: a tenth of the line, a fifth of the pace.
    expect(Math.abs(errors.lineSd.median / oracle.line - 1)).toBeLessThan(0.05);
    expect(Math.abs(errors.paceSd.median / oracle.pace - 1)).toBeLessThan(0.1);
    // Level putts say nothing of reading.
    expect(errors.slopeSd.told).toBeLessThan(0.2);
    expect(errors.readBias.told).toBeLessThan(0.2);
  });
});

describe('known players who record whole rounds', () => {
  const grounds = new Grounds();
  const fitOf = (golfer: Golfer, habits: RecordingHabits, seed: string, putts = 90): FittedErrors =>
    ok(fitErrors(recordRounds(golfer, habits, seed, putts), { grounds, taps: [] }));
  const { scratch } = FITTED_PLAYERS;

  it('are found as often as ranges promise, and a habit only where there is one', () => {
    let held = 0;
    const verdicts = { none: 0, found: 0, wrong: 0 };
    const RECORDS = sized(2, 4);
    for (let record = 0; record < RECORDS; record++)
      for (const bias of [0, -0.5]) {
        const player = { ...scratch, readBias: bias };
        const { errors, readBias } = fitOf({ player }, { says: ORDINARY }, `known ${bias} ${record}`);
        for (const name of ERRORS) {
          const { low, high } = errors[name].range90;
          if (player[name] >= low && player[name] <= high) held++;
        }
        if (bias === 0 && readBias.verdict !== 'cannotTell') verdicts.none++;
        if (bias < 0 && readBias.verdict === 'tooLittle') verdicts.found++;
        if (bias < 0 && readBias.verdict === 'tooMuch') verdicts.wrong++;
      }
    // 48 ranges of 90%: 80% and less comes twice in a hundred, were they all apart; 24: 17 and less comes once in a hundred; the bench
    // (MODEL.md) is the finer sieve.
    expect(held / (2 * RECORDS * ERRORS.length)).toBeGreaterThan(sized(17 / 24, 0.75));
    // At most 5% of claims where there is none: two of four come once in seventy times.
    expect(verdicts.none).toBeLessThanOrEqual(1);
    expect(verdicts.found).toBeGreaterThanOrEqual(RECORDS / 2);
    expect(verdicts.wrong).toBe(0);
  });

  it('who always putt firm and do not say so are given no pace habit apart from it, but what they roll past', () => {
    const says = { ...ORDINARY, paceMeant: false };
    const golfer = { player: scratch, means: 'firm' } as const;
    const { pace, errors, readBias } = fitOf(golfer, { says }, 'firm and silent');
    expect(pace.intentKnown).toBe(false);
    // 30 in past is what they mean and roll: 0.76 m.
    expect(pace.rolledPast.range95.low).toBeLessThan(0.762);
    expect(pace.rolledPast.range95.high).toBeGreaterThan(0.762);
    expect(pace.usual.median).toBeGreaterThan(0.432);
    expect(errors.paceBias.range95.low).toBeLessThan(0);
    expect(errors.paceBias.range95.high).toBeGreaterThan(0);
    expect(readBias.verdict).toBe('cannotTell');
    const { putts, rounds } = recordRounds(golfer, { says }, 'firm and silent', 90);
    const asked = ok(fitErrors({ putts, rounds }, { grounds, taps: [], usualPace: 0.762 }));
    expect(asked.pace.intentKnown).toBe(true);
    const width = ({ range90: { low, high } }: FittedErrors['errors']['paceBias']): number => high - low;
    expect(asked.pace.usual.range95.low).toBeLessThan(0.762);
    expect(asked.pace.usual.range95.high).toBeGreaterThan(0.762);
    expect(asked.errors.paceBias.range95.low).toBeLessThan(0);
    expect(asked.errors.paceBias.range95.high).toBeGreaterThan(0);
    // The habit's own range hardly narrows, 2% over five pairs of fits: putts of many lengths part so many inches past from a share of the
    // distance by themselves. One fit's 200 draws leave 8% of a range open, two of them together 12%.
    expect(width(asked.errors.paceBias)).toBeLessThan(1.12 * width(errors.paceBias));
  });

  it('give the same answer again, and say which tap would help', () => {
    const count = sized(45, 70);
    const { putts } = recordRounds({ player: scratch }, { says: ORDINARY, leavesOut: 0 }, 'taps', count);
    const fit = ok(fitErrors({ putts }, { grounds }));
    expect(fitErrors({ putts }, { grounds })).toEqual(fit);
    const gains = new Map(fit.tellApart.taps.map((gain) => [gain.tap, gain]));
    // Whether it started as meant is of the line alone.
    const started = gains.get('startedAsMeant');
    expect(started?.putts).toBe(count);
    expect(started?.spread.lineSd).toBeLessThan(0.95);
    expect(started?.spread.paceSd).toBeGreaterThan(0.93);
    for (const { spread } of gains.values())
      for (const name of ERRORS) expect(spread[name]).toBeLessThanOrEqual(1.02);
    expect(fit.players).toHaveLength(200);
    const below = fit.players.filter(({ lineSd }) => lineSd < fit.player.lineSd).length;
    expect(Math.abs(below - 100)).toBeLessThan(12);
  });
});

describe('records that say little', () => {
  it('without a putt that counts give no fit', () => {
    expect(fitErrors({ putts: [] })).toEqual({ status: 'nothing', passedOver: 0 });
    const others = [
      recorded({ kind: 'conceded' }),
      recorded({ kind: 'offGreen' }),
      recorded({ distance: 0.1 }),
    ];
    expect(fitErrors({ putts: others })).toEqual({ status: 'nothing', passedOver: 3 });
  });

  it('of one putt leave everything as it was thought', () => {
    const { errors, readBias, putts } = ok(fitErrors({ putts: [recorded()] }, { taps: [] }));
    expect(putts).toBe(1);
    for (const name of ERRORS) expect(errors[name].told).toBeLessThan(0.25);
    expect(readBias.verdict).toBe('cannotTell');
  });

  it('are given up when they are not wanted any more', () => {
    let asked = 0;
    const fit = fitErrors({ putts: [recorded()] }, { wanted: () => asked++ < 2 });
    expect(fit).toEqual({ status: 'stopped' });
  });

  it('tell their progress, rising from 0 towards 1', () => {
    const told: number[] = [];
    fitErrors({ putts: [recorded()] }, { taps: [], wanted: (done) => told.push(done) > 0 });
    expect(told.length).toBeGreaterThan(5);
    for (let i = 1; i < told.length; i++) expect(told[i]).toBeGreaterThanOrEqual(told[i - 1]);
    expect(told[told.length - 1]).toBeLessThanOrEqual(1);
  });
});
