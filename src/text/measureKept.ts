/** A kept measurement in one line: what it is, its value with its margin, from how much. Data in, words out. */
import { halfWidth } from '../../sim/index.ts';
import { type KeptMeasurement, measuredOf } from '../store/measurementSchema.ts';
import { formatPercent, formatShort, formatSlope, type Units } from './format.ts';
import { degreesText, percentMargin, speedRange } from './measure.ts';
import { plural } from './phrases.ts';

export interface MeasurementLine {
  /** "Green speed, grass" */
  readonly what: string;
  /** "10.3 ft, give or take 0.4 ft (95%), from 6 rolls" */
  readonly value: string;
}

export const measurementLine = (kept: KeptMeasurement, units: Units): MeasurementLine => {
  const measured = measuredOf(kept);
  switch (measured.by) {
    case 'timedRolls':
    case 'rampRolls': {
      const { greenSpeed, slope, rolls } = measured.result;
      const way = slope === undefined ? ' one way only, slope included' : '';
      return {
        what: measured.ground === 'carpet' ? 'Speed of the carpet' : 'Green speed, grass',
        value: `${speedRange(greenSpeed)}, from ${plural(rolls, 'roll')}${way}`,
      };
    }
    case 'level': {
      const { slope, pairs } = measured.result;
      const size =
        slope.low <= 0 && slope.high >= 0
          ? `none shown, at most ${formatSlope(Math.max(-slope.low, slope.high))} either way (95%)`
          : `${formatSlope(Math.abs(slope.value))} ${slope.value > 0 ? 'up' : 'down'} forwards, give or take ${percentMargin(slope)} (95%)`;
      return {
        what: `Slope along a line, ${measured.ground}`,
        value: `${size}, from ${plural(pairs, 'pair')} of readings`,
      };
    }
    case 'levelBothWays': {
      const { slope, uphill, pairs } = measured.result;
      const size =
        uphill === undefined
          ? `none shown, at most ${formatSlope(slope.high)} (95%)`
          : `${formatSlope(slope.value)}, give or take ${percentMargin(slope)} (95%)`;
      return {
        what: `Fall of the ground, ${measured.ground}`,
        value: `${size}, from ${plural(pairs, 'pair')} of readings`,
      };
    }
    case 'paceRolls': {
      const { sd } = measured.result.pace;
      return {
        what: 'Pace spread',
        value: `${formatPercent(sd.value)} of the distance (95%: ${formatPercent(sd.low)} to ${formatPercent(sd.high)}), from ${plural(measured.result.rolls, 'ball')}`,
      };
    }
    case 'gates': {
      const { value, low, high, passes, tries } = measured.result;
      const ends = [
        ...(low > 0 ? [`at least ${degreesText(low)}`] : []),
        ...(Number.isFinite(high) ? [`at most ${degreesText(high)}`] : []),
      ].join(', ');
      const size =
        value === undefined
          ? `${ends} (95%)`
          : `${degreesText(value)} (95%: ${ends === '' ? 'neither end known' : ends})`;
      return { what: 'Start-line spread', value: `${size}, ${passes} of ${plural(tries, 'ball')} passed` };
    }
    case 'walks': {
      const { step, walks } = measured.result;
      return {
        what: 'Step',
        value: `${formatShort(step.value, units)}, give or take ${formatShort(halfWidth(step), units)} (95%), from ${plural(walks, 'walk')}`,
      };
    }
  }
};
