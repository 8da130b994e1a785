/** Benchmarks: laws of their curves, the tour's against what is printed, the stored model against the engine run anew. */
import { describe, expect, it } from 'vitest';
import {
  BENCHMARKS,
  CLUB_MIX,
  fallingRows,
  feetToMetres,
  PUBLISHED_FIGURES,
  type PublishedFigure,
  playMix,
  presetOf,
  puttingBenchmarkOf,
  TOUR_HOLED,
  TOUR_MIX,
  TOUR_RECORD,
} from '../../../sim/index.ts';

/** m, from the lip to twice the longest putt there is. */
const DISTANCES = Array.from({ length: 1200 }, (_, i) => 0.05 * (i + 1));

const published = (player: string, what: PublishedFigure['what']): readonly PublishedFigure[] =>
  PUBLISHED_FIGURES.filter((figure) => figure.player === player && figure.what === what && !figure.on);

describe.each(BENCHMARKS)('the benchmark $id', (benchmark) => {
  it('is found by its id and says where it comes from', () => {
    expect(puttingBenchmarkOf(benchmark.id)).toBe(benchmark);
    expect(benchmark.source.length).toBeGreaterThan(40);
    expect(benchmark.from).toBeLessThanOrEqual(feetToMetres(2));
    expect(benchmark.to).toBeGreaterThanOrEqual(feetToMetres(60));
  });

  it('holes less and needs more putts, the farther it is', () => {
    for (let i = 1; i < DISTANCES.length; i++) {
      const [near, far] = [DISTANCES[i - 1], DISTANCES[i]];
      expect(benchmark.holedAt(far)).toBeLessThanOrEqual(benchmark.holedAt(near));
      expect(benchmark.expectedPuttsAt(far)).toBeGreaterThanOrEqual(benchmark.expectedPuttsAt(near));
      // From 2 ft on strictly so: nearer all is 1 to the last digit.
      if (near < 0.6) continue;
      expect(benchmark.holedAt(far)).toBeLessThan(benchmark.holedAt(near));
      expect(benchmark.expectedPuttsAt(far)).toBeGreaterThan(benchmark.expectedPuttsAt(near));
    }
  });

  it('has no jumps: a millimetre never moves a share by a tenth of a point', () => {
    for (const at of DISTANCES) {
      expect(Math.abs(benchmark.holedAt(at + 0.001) - benchmark.holedAt(at))).toBeLessThan(1e-3);
      expect(Math.abs(benchmark.threePuttAt(at + 0.001) - benchmark.threePuttAt(at))).toBeLessThan(1e-3);
    }
  });

  it('never misses in the hole, and needs a second putt for every miss and a third for every three-putt', () => {
    expect(benchmark.holedAt(0)).toBe(1);
    expect(benchmark.holedAt(0.01)).toBeGreaterThan(0.9998);
    expect(benchmark.threePuttAt(0)).toBe(0);
    expect(benchmark.expectedPuttsAt(0)).toBe(1);
    for (const at of DISTANCES) {
      const [missed, threePutt] = [1 - benchmark.holedAt(at), benchmark.threePuttAt(at)];
      // Rounding of 1 - holed, and of sums of shares in another order.
      expect(threePutt).toBeLessThan(missed + 1e-15);
      expect(benchmark.expectedPuttsAt(at)).toBeGreaterThan(1 + missed + threePutt - 1e-12);
    }
  });
});

describe('the published tour record', () => {
  it('goes through the fine table wherever that falls', () => {
    const kept = fallingRows(TOUR_HOLED);
    for (const { feet, tries, holed } of TOUR_HOLED) {
      const off = Math.abs(TOUR_RECORD.holedAt(feetToMetres(feet)) - holed / tries);
      const pooled = !kept.some((row) => row.feet === feet);
      // Four thin rows rise again, by chance; pooled they move by less than two of their own standard errors.
      expect(off).toBeLessThan(
        pooled ? 2 * Math.sqrt(((holed / tries) * (1 - holed / tries)) / tries) : 1e-12,
      );
    }
    expect(kept).toHaveLength(TOUR_HOLED.length - 2);
  });

  it('agrees with the rounded one-putts of another source', () => {
    // Half a point of rounding, a point and a half for other years (as in published.test.ts).
    for (const { feet, value } of published('tour', 'holed'))
      expect(Math.abs(TOUR_RECORD.holedAt(feetToMetres(feet)) - value), `${feet} ft`).toBeLessThan(0.02);
  });

  it('has the printed three-putts and, from them, the printed mean putts', () => {
    for (const { feet, value } of published('tour', 'threePutt'))
      expect(TOUR_RECORD.threePuttAt(feetToMetres(feet)), `${feet} ft`).toBeCloseTo(value, 10);
    // Half a hundredth of rounding, a point and a half for holed shares of other years.
    for (const { feet, value } of published('tour', 'meanPutts'))
      expect(Math.abs(TOUR_RECORD.expectedPuttsAt(feetToMetres(feet)) - value), `${feet} ft`).toBeLessThan(
        0.02,
      );
  });

  it('needs two putts from 33 ft (Broadie 2014, read)', () => {
    expect(TOUR_RECORD.expectedPuttsAt(feetToMetres(33))).toBeCloseTo(2, 2);
  });
});

describe('rows that should fall', () => {
  it('are pooled by their counts until they do', () => {
    const rows = [
      { feet: 1, tries: 10, holed: 9 },
      { feet: 2, tries: 10, holed: 5 },
      { feet: 4, tries: 30, holed: 18 },
      { feet: 5, tries: 10, holed: 1 },
    ];
    expect(fallingRows(rows)).toEqual([rows[0], { feet: 3.5, tries: 40, holed: 23 }, rows[3]]);
  });
});

describe('the stored models', () => {
  it.each([
    ['tour', TOUR_MIX, [5, 33]],
    ['averaging-90', CLUB_MIX, [11, 40]],
  ] as const)('are what the engine says today, at rows and between: %s', (id, mix, lengths) => {
    const preset = presetOf(id);
    const benchmark = puttingBenchmarkOf(`${id}-modelled`);
    if (!preset || !benchmark) throw new Error('both are there');
    const rows = playMix({ mix, lengths: lengths.map(feetToMetres), player: preset.player });
    for (const { length, holed, threePutt, expectedPutts } of rows) {
      // The fineness of the usual sum (mix.test.ts); stored is a finer one.
      expect(Math.abs(benchmark.holedAt(length) - holed), `${length} m`).toBeLessThan(0.0015);
      expect(Math.abs(benchmark.threePuttAt(length) - threePutt), `${length} m`).toBeLessThan(0.0015);
      expect(Math.abs(benchmark.expectedPuttsAt(length) - expectedPutts), `${length} m`).toBeLessThan(0.003);
    }
  });

  it.each([
    // All rows of the table within a point and a half (MODEL.md, section 3), as much again for the other years of these rounded figures.
    ['tour-modelled', 'tour', 'holed', 0.03],
    ['tour-modelled', 'tour', 'meanPutts', 0.03],
    // Too few from 40 ft on, 3 points at 60 ft, a figure from memory (section 3).
    ['tour-modelled', 'tour', 'threePutt', 0.035],
    // 3.7 points low at 20 ft, where the record has a scratch player hole nearly what the tour holes (section 3).
    ['scratch-modelled', 'scratch', 'holed', 0.04],
    // 4.6 points low at 3 ft (section 3).
    ['averaging-90-modelled', 'averaging90', 'holed', 0.05],
    // Up to 8 points too many at 30 ft; the figures are from memory (section 3).
    ['averaging-90-modelled', 'averaging90', 'threePutt', 0.085],
  ] as const)('lie as near the records as MODEL.md says: %s, %s %s', (id, player, what, within) => {
    const benchmark = puttingBenchmarkOf(id);
    if (!benchmark) throw new Error('it is there');
    const ours = {
      holed: benchmark.holedAt,
      threePutt: benchmark.threePuttAt,
      meanPutts: benchmark.expectedPuttsAt,
    }[what];
    for (const { feet, value } of published(player, what))
      expect(Math.abs(ours(feetToMetres(feet)) - value), `${feet} ft`).toBeLessThan(within);
  });

  it('stand in the order of their players: better holes more and needs fewer, wherever the putt', () => {
    const [tour, scratch, six, ninety] = ['tour', 'scratch', 'handicap-6', 'averaging-90'].map((id) =>
      puttingBenchmarkOf(`${id}-modelled`),
    );
    for (const [better, worse] of [
      [tour, scratch],
      [scratch, six],
      [six, ninety],
    ])
      for (const at of DISTANCES.filter((distance) => distance > 0.7 && distance < 30)) {
        if (!better || !worse) throw new Error('all are there');
        expect(better.holedAt(at)).toBeGreaterThan(worse.holedAt(at));
        expect(better.expectedPuttsAt(at)).toBeLessThan(worse.expectedPuttsAt(at));
      }
  });
});
