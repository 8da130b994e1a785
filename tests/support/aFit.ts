/** A kept fit written by hand, for tests of what is made of one: no record stands behind it. */
import type { FittedError } from '../../sim/index.ts';
import type { KeptFit } from '../../src/state/fittedPlayer.ts';

/** Middle, half of the 90% range, share told; what goes to either side did so before. */
export const anError = (median: number, half: number, told = 0.9): FittedError => ({
  median,
  range90: { low: median - half, high: median + half },
  range95: { low: median - 1.2 * half, high: median + 1.2 * half },
  before90: { low: median - half < 0 ? -0.4 : median / 2, high: median - half < 0 ? 0.4 : 2 * median },
  before95: { low: median - half < 0 ? -0.5 : median / 3, high: median - half < 0 ? 0.5 : 3 * median },
  told,
});

export const aFit = (changes: Partial<KeptFit> = {}): KeptFit => ({
  source: 'own',
  day: '2026-11-26',
  digits: '00000001',
  sizes: { putts: 304, sets: 1 },
  answer: {
    putts: 300,
    practicePutts: 12,
    passedOver: 4,
    measuredStrokes: 0,
    player: { lineSd: 0.02, paceSd: 0.1, slopeSd: 0.006, speedSd: 0.05, paceBias: -0.02, readBias: -0.18 },
    errors: {
      lineSd: anError(0.02, 0.004),
      paceSd: anError(0.1, 0.02),
      slopeSd: anError(0.006, 0.002),
      speedSd: anError(0.05, 0.02, 0.2),
      paceBias: anError(-0.02, 0.01),
      readBias: anError(-0.18, 0.12),
    },
    readBias: { tooLittle: 0.99, tooMuch: 0.01, verdict: 'tooLittle' },
    pace: { intentKnown: true, usual: anError(0.43, 0.3, 0.1), rolledPast: anError(0.38, 0.05) },
    tails: anError(14, 8, 0.3),
    tellApart: {
      taps: [
        {
          tap: 'startedAsMeant',
          putts: 120,
          spread: { lineSd: 0.8, paceSd: 1, slopeSd: 0.7, speedSd: 0.98, paceBias: 1, readBias: 0.96 },
        },
      ],
      pairs: [{ errors: ['lineSd', 'slopeSd'], correlation: -0.62, tap: 'startedAsMeant', area: 0.65 }],
    },
    players: [
      { lineSd: 0.019, paceSd: 0.11, slopeSd: 0.0065, speedSd: 0.05, paceBias: -0.03, readBias: -0.1 },
      { lineSd: 0.022, paceSd: 0.09, slopeSd: 0.0055, speedSd: 0.06, paceBias: 0, readBias: -0.25 },
    ],
    worth: 300,
    rough: false,
  },
  ...changes,
});
