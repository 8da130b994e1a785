/**
 * Taking a result over: into the putt in hand, or into the person's errors, by hand or by narrowing a preset's family, within what those
 * accept and with a word on it.
 * Answers for: which results can be used for what. Leaves out: keeping them (keeping.ts).
 */
import {
  type MeasuredGreen,
  type MeasuredPlayer,
  narrowingResults,
  type Sitting,
} from '../../../sim/index.ts';
import { PLAYER_RANGES } from '../../state/playerRanges.ts';
import { hasNarrowed, narrowBy, presetInUse, STEP_RANGE, setErrors, step } from '../../state/settings.ts';
import { greenSpeed, LIMITS, setGround, slope } from '../../state/situation.ts';
import { formatGreenSpeed, formatPercent, formatShort, formatSlope, type Units } from '../../text/format.ts';
import { degreesText } from '../../text/measure.ts';
import { narrowLabel } from '../../text/narrowed.ts';
import type { Limits } from '../../text/parse.ts';

export interface Use {
  readonly label: string;
  /** Takes it; returns what was done, in words. */
  readonly take: () => string;
}

/** The nearest value allowed, and a word if it is another. */
const within = (value: number, { min, max }: Limits, say: (value: number) => string): [number, string] => {
  const taken = Math.min(Math.max(value, min), max);
  return [
    taken,
    taken === value ? '' : ` ${say(value)} lies outside what the screens take (${say(min)} to ${say(max)}).`,
  ];
};

const useSpeed = (value: number): Use => ({
  label: 'Use this green speed',
  take: () => {
    const [taken, word] = within(value, LIMITS.greenSpeed, formatGreenSpeed);
    greenSpeed.value = taken;
    return `Every screen now putts on ${formatGreenSpeed(taken)}.${word}`;
  },
});

const useSlope = (value: number): Use => ({
  label: 'Use this slope',
  take: () => {
    const [taken, word] = within(Math.abs(value), LIMITS.slope, formatSlope);
    setGround('plane');
    slope.value = taken;
    return `Every screen now putts on a tilted plane of ${formatSlope(taken)}.${word}`;
  },
});

/** As it narrows a family; undefined: it says nothing of who one is. */
export const sittingOf = (kept: MeasuredGreen | MeasuredPlayer): Sitting | undefined => {
  if (kept.by !== 'gates' && kept.by !== 'paceRolls') return undefined;
  const results = narrowingResults(kept);
  return results.length > 0 ? { day: kept.day, results } : undefined;
};

/** With a preset in hand; what it came to is said where the player is (controls/Narrowed.tsx). */
const useToNarrow = (kept: MeasuredPlayer): readonly Use[] => {
  const sitting = sittingOf(kept);
  const preset = presetInUse.value;
  if (sitting === undefined || preset === undefined || hasNarrowed(sitting)) return [];
  return [
    {
      label: narrowLabel(preset.name),
      take: () => {
        narrowBy(sitting);
        return 'Every screen now answers for who is left.';
      },
    },
  ];
};

export const usesOf = (kept: MeasuredGreen | MeasuredPlayer, units: Units): readonly Use[] => {
  switch (kept.by) {
    case 'timedRolls':
    case 'rampRolls': {
      const { greenSpeed: speed, slope: along } = kept.result;
      // Rolls tell slope roughly: one that may be none is not offered.
      const sloping = along !== undefined && (along.low > 0 || along.high < 0);
      return sloping ? [useSpeed(speed.value), useSlope(along.value)] : [useSpeed(speed.value)];
    }
    case 'level':
    case 'levelBothWays':
      return [useSlope(kept.result.slope.value)];
    case 'paceRolls': {
      const { sd, bias } = kept.result.pace;
      // A habit that may be none is not taken for one.
      const habit = bias.low > 0 || bias.high < 0;
      return [
        ...useToNarrow(kept),
        {
          label: 'Use this as my pace',
          take: () => {
            const [paceSd, word] = within(sd.value, PLAYER_RANGES.paceSd, formatPercent);
            const [paceBias, more] = within(bias.value, PLAYER_RANGES.paceBias, formatPercent);
            setErrors({ paceSd, ...(habit ? { paceBias } : {}) });
            return `Your pace spread is now ${formatPercent(paceSd)}${
              habit
                ? `, your habit ${formatPercent(Math.abs(paceBias))} ${paceBias < 0 ? 'short' : 'long'}`
                : '; the habit is left as it was, since these balls do not show one'
            }.${word}${habit ? more : ''}`;
          },
        },
      ];
    }
    case 'gates': {
      const { value } = kept.result;
      const narrowing = useToNarrow(kept);
      if (value === undefined) return narrowing;
      return [
        ...narrowing,
        {
          label: 'Use this as my start line',
          take: () => {
            const [lineSd, word] = within(value, PLAYER_RANGES.lineSd, degreesText);
            setErrors({ lineSd });
            return `Your start-line spread is now ${degreesText(lineSd)}.${word}`;
          },
        },
      ];
    }
    case 'walks':
      return [
        {
          label: 'Use this as my step',
          take: () => {
            const say = (metres: number): string => formatShort(metres, units);
            const [taken, word] = within(kept.result.step.value, STEP_RANGE, say);
            step.value = taken;
            return `Your step is now ${say(taken)}; distances can be typed as “3 steps”.${word}`;
          },
        },
      ];
  }
};
