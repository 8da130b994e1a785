/** Strokes measured without a hole, in the fit: beside the classical intervals of the same balls, and what they add to a record. */
import { describe, expect, it } from 'vitest';
import {
  defaultPrior,
  type ErrorsPrior,
  type FittedErrors,
  fitErrors,
  Grounds,
  gateAngle,
  paceControl,
  startLine,
  strokesIn,
  strokesOfMeasured,
} from '../../../../sim/index.ts';
import { FITTED_PLAYERS } from '../../../../sim/player/fitted.ts';
import { normals } from '../../../support/normals.ts';
import { ORDINARY, recordRounds } from '../../../support/recordingPlayer.ts';
import { sized } from '../../../support/size.ts';

const fitted = (fit: ReturnType<typeof fitErrors>): FittedErrors => {
  if (fit.status !== 'ok') throw new Error(`got ${fit.status}`);
  return fit;
};
/** Next to nothing thought beforehand of line and pace; bell curves, as in the classical intervals. */
const FLAT: ErrorsPrior = { ...defaultPrior(), logSpread: 2, paceBiasSd: 1, tails: 1e4, tailsSpread: 0 };
const DAY = '2026-05-02';

const GATES = [
  { width: 0.06, distance: 0.6, passes: 61, tries: 100 },
  { width: 0.1, distance: 0.9, passes: 88, tries: 100 },
];

describe('measured strokes alone', () => {
  it('of pace give the intervals of Student and of chi-square', () => {
    const normal = normals('paces');
    const { paceSd } = FLAT.about;
    const rolls = Array.from({ length: 400 }, (_, i) => ({
      target: 4 + (i % 5),
      past: (4 + (i % 5)) * (0.02 + paceSd * normal()),
    }));
    const classical = paceControl(rolls);
    if (classical === undefined) throw new Error('there were rolls');
    const measured = { day: DAY, by: 'paceRolls', rolls, result: classical } as const;
    const fit = fitted(
      fitErrors({ putts: [], strokes: strokesOfMeasured([measured]) }, { prior: FLAT, taps: [] }),
    );
    expect(fit.measuredStrokes).toBe(400);
    const { sd, bias } = classical.pace;
    // The spread's margin is 7% either way. Strays take some of the farthest balls: up to 4% of the spread. Ends of ranges from draws
    // worth some 300 are good to a fifth of the margin.
    for (const end of ['low', 'high'] as const) {
      expect(Math.abs(fit.errors.paceSd.range95[end] / sd[end] - 1)).toBeLessThan(0.05);
      expect(Math.abs(fit.errors.paceBias.range95[end] - bias[end])).toBeLessThan((bias.high - bias.low) / 8);
    }
    // Of the rest they say nothing: but for the noise of a variance from so many draws, three standard errors.
    for (const name of ['lineSd', 'slopeSd', 'readBias'] as const)
      expect(fit.errors[name].told).toBeLessThan(3 * Math.sqrt(2 / fit.worth));
  });

  it('through gates give the start line of the same gates', () => {
    const classical = startLine(GATES);
    if (classical?.value === undefined) throw new Error('some passed, some did not');
    const measured = { day: DAY, by: 'gates', gates: GATES, result: classical } as const;
    const { errors } = fitted(
      fitErrors({ putts: [], strokes: strokesOfMeasured([measured]) }, { prior: FLAT, taps: [] }),
    );
    // The interval is 10% either way; strays and draws as above.
    for (const end of ['low', 'high'] as const)
      expect(Math.abs(errors.lineSd.range95[end] / classical[end] - 1)).toBeLessThan(0.05);
  });

  it('all to one distance are left out, other measurements too', () => {
    const rolls = [1, 2, 3].map((past) => ({ target: 5, past: past / 10 }));
    const result = paceControl(rolls);
    if (result === undefined) throw new Error('there were rolls');
    const strokes = strokesOfMeasured([
      { day: DAY, by: 'paceRolls', rolls, result },
      {
        day: DAY,
        by: 'walks',
        walks: [{ length: 8, steps: 10 }],
        result: { step: { value: 0.8, low: 0.7, high: 0.9 }, walks: 1 },
      },
    ]);
    expect(strokesIn(strokes)).toBe(0);
    expect(fitErrors({ putts: [], strokes })).toEqual({ status: 'nothing', passedOver: 0 });
  });
});

describe('measured strokes beside a record', () => {
  it('part the start line from the reading of slopes', () => {
    const player = FITTED_PLAYERS.averaging90;
    const { putts } = recordRounds({ player }, { says: ORDINARY }, 'gates beside a record', sized(60, 120));
    const normal = normals('starts');
    const gate = { width: 0.1, distance: 0.9 };
    const angle = gateAngle(gate);
    const tries = 200;
    let passes = 0;
    for (let i = 0; i < tries; i++) if (Math.abs(player.lineSd * normal()) < angle) passes++;
    const grounds = new Grounds();
    const without = fitted(fitErrors({ putts }, { grounds, taps: [] }));
    const withGates = fitted(
      fitErrors({ putts, strokes: { gates: [{ angle, passes, tries }], paces: [] } }, { grounds, taps: [] }),
    );
    const width = (fit: FittedErrors, name: 'lineSd' | 'slopeSd' | 'paceSd'): number =>
      Math.log(fit.errors[name].range90.high / fit.errors[name].range90.low);
    // 200 balls tell the line to some 7% (Fisher: 1/sqrt(2 x 200) and a little more), the record alone to a third. What that says of the
    // slope in one record may move its range either way; it may not grow by more than some 200 draws leave open (7% at either end).
    expect(width(withGates, 'lineSd')).toBeLessThan(0.6 * width(without, 'lineSd'));
    expect(width(withGates, 'slopeSd')).toBeLessThan(1.15 * width(without, 'slopeSd'));
    const { low, high } = withGates.errors.lineSd.range95;
    expect(low).toBeLessThan(player.lineSd);
    expect(high).toBeGreaterThan(player.lineSd);
  });
});
