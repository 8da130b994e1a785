/** What was measured, in words: the sentence with its margin, what would make it better, what to mind. Data in, words out. */
import {
  halfWidth,
  type LevelFall,
  type LevelSlope,
  type Measured,
  type MeasuredGreen,
  type MeasuredPlayer,
  type MeasuredSpeed,
  metresToFeet,
  type PaceControl,
  radiansToDegrees,
  type StartLine,
  type StepLength,
  speedBehind,
  tellingWidth,
} from '../../sim/index.ts';
import { formatGreenSpeed, formatPercent, formatShort, formatSlope, type Units } from './format.ts';
import { plural } from './phrases.ts';

export interface MeasuredWords {
  readonly answer: string;
  /** What would make it better, what to mind. */
  readonly more: readonly string[];
}

/** An angle: "0.8°", "12°". */
export const degreesText = (radians: number): string => {
  const degrees = radiansToDegrees(radians);
  return `${degrees.toFixed(Math.abs(degrees) < 9.95 ? 1 : 0).replace(/\.0$/, '')}°`;
};

/** Wider than this share of the value an interval is given by its ends: "give or take" would hide how lopsided it is. */
const LOPSIDED = 0.2;
/** Scatter this many times what was expected is worth a word. */
const UNRULY = 1.6;
/** More readings are not worth while when endless ones would leave this share of the margin. */
const HARDLY = 0.75;

const feet = (metres: number): string => metresToFeet(metres).toFixed(1).replace(/\.0$/, '');

export const speedRange = (speed: Measured): string =>
  halfWidth(speed) > LOPSIDED * speed.value
    ? `between ${feet(speed.low)} and ${formatGreenSpeed(speed.high)} (95%), most likely ${formatGreenSpeed(speed.value)}`
    : `${formatGreenSpeed(speed.value)}, give or take ${feet(halfWidth(speed))} ft (95%)`;

function speedWords(result: MeasuredSpeed, ground: 'grass' | 'carpet', timed: boolean): MeasuredWords {
  const { greenSpeed, slope, rolls, scatter, marginWithTwoMore, marginAtBest, readings } = result;
  const here = ground === 'grass' ? 'This green' : 'This mat';
  const margin = halfWidth(greenSpeed);
  const next =
    feet(marginWithTwoMore) === feet(margin)
      ? ''
      : `; two more would bring the margin to about ${feet(marginWithTwoMore)} ft`;
  const more: string[] = [];
  if (slope === undefined) {
    const way = readings.there === undefined ? 'back' : 'there';
    const [up, down] = [speedBehind(greenSpeed.value, 0.01), speedBehind(greenSpeed.value, -0.01)];
    more.push(
      `Rolls one way only: slope is in this figure. If the line climbs 1% that way the true speed is ${Number.isFinite(up) ? formatGreenSpeed(up) : 'beyond measure'}, if it falls 1%, ${formatGreenSpeed(down)}. Roll the same line ${way === 'there' ? 'back' : 'the other way'}.`,
    );
    return {
      answer: `Rolled this way ${here.toLowerCase()} reads ${speedRange(greenSpeed)}, from ${plural(rolls, 'roll')}${next}.`,
      more: [...more, ...betterRolls({ scatter, marginAtBest, margin, timed })],
    };
  }
  const steep = formatSlope(Math.abs(slope.value));
  more.push(
    slope.low <= 0 && slope.high >= 0
      ? `Along the line no slope is shown: it may be anything from ${signedSlope(slope.low)} to ${signedSlope(slope.high)} up the first way (95%).`
      : `Along the line it ${slope.value > 0 ? 'climbs' : 'falls'} ${steep} the first way (there), give or take ${formatSlope(halfWidth(slope))} (95%).`,
  );
  return {
    answer: `${here} runs ${speedRange(greenSpeed)}, from ${plural(rolls, 'roll')}${next}.`,
    more: [...more, ...betterRolls({ scatter, marginAtBest, margin, timed })],
  };
}

const signedSlope = (share: number): string => formatSlope(share).replace('-', '−');

const betterRolls = (of: {
  scatter: number;
  marginAtBest: number;
  margin: number;
  timed: boolean;
}): string[] => {
  const words: string[] = [];
  if (of.scatter > UNRULY)
    words.push(
      `Your rolls differ ${of.scatter.toFixed(1)} times as much as ${of.timed ? 'a thumb on a watch' : 'a ramp'} explains: uneven ground, or a line that is not straight up and down the fall.`,
    );
  if (of.marginAtBest > HARDLY * of.margin)
    words.push(
      of.timed
        ? 'More rolls hardly help: what is left is how sharply one sees a ball come to rest. Time a longer stretch.'
        : 'More rolls hardly help: what is left is the height of the ramp. Measure it to a millimetre.',
    );
  return words;
};

function slopeWords(result: LevelSlope): MeasuredWords {
  const { slope, zeroError, pairs, scatter } = result;
  const level = slope.low <= 0 && slope.high >= 0;
  return {
    answer: level
      ? `No slope is shown along this line: at most ${formatSlope(Math.max(-slope.low, slope.high))} either way (95%), from ${plural(pairs, 'pair')} of readings.`
      : `The line ${slope.value > 0 ? 'climbs' : 'falls'} ${formatSlope(Math.abs(slope.value))} forwards, give or take ${percentMargin(slope)} (95%), from ${plural(pairs, 'pair')} of readings.`,
    more: [
      `Your level shows ${degreesText(zeroError)} on level ground; turning it round took that out.`,
      ...levelBetter(pairs, scatter),
    ],
  };
}

export const percentMargin = (slope: Measured): string => {
  const half = halfWidth(slope) * 100;
  return half < 0.05 ? 'under 0.1%' : `${half.toFixed(1)}%`;
};

const levelBetter = (pairs: number, scatter: number): string[] => {
  const words: string[] = [];
  if (pairs < 3) words.push('Lay the board down anew a foot away and read again: one place is not the line.');
  if (scatter > UNRULY)
    words.push(
      `Your readings differ ${scatter.toFixed(1)} times as much as a level explains: the ground is not one plane, or the board rocks.`,
    );
  return words;
};

function fallWords({ slope, uphill, pairs, scatter }: LevelFall): MeasuredWords {
  const from = `from ${plural(pairs, 'pair')} of readings`;
  const better = levelBetter(pairs / 2, scatter);
  if (uphill === undefined)
    return {
      answer: `Level ground is not ruled out: at most ${formatSlope(slope.high)} (95%), ${from}.`,
      more: ['Which way it falls cannot be told yet.', ...better],
    };
  const half = (uphill.high - uphill.low) / 2;
  const side = Math.abs(uphill.value) < half ? '' : uphill.value > 0 ? ' to the left' : ' to the right';
  const turn = `${Math.round(Math.abs(radiansToDegrees(uphill.value)))}°`;
  return {
    answer: `The ground falls ${formatSlope(slope.value)}, give or take ${percentMargin(slope)} (95%), ${from}.`,
    more: [
      `Straight uphill lies ${side === '' ? 'along' : `${turn}${side} of`} your first direction, give or take ${Math.max(1, Math.round(radiansToDegrees(half)))}°; the fall line runs the other way.`,
      ...better,
    ],
  };
}

const habitWords = (share: number): string =>
  Math.abs(share) < 0.0005 ? 'none' : `${formatPercent(Math.abs(share))} ${share < 0 ? 'short' : 'long'}`;

function paceWords({ pace, direction, rolls, oneTarget }: PaceControl): MeasuredWords {
  const { sd, bias } = pace;
  const more = [
    bias.low <= 0 && bias.high >= 0
      ? `No habit is shown: on average ${habitWords(bias.value)}, and anything from ${habitWords(bias.low)} to ${habitWords(bias.high)} would fit (95%).`
      : `On average you roll ${habitWords(bias.value)} (95%: ${habitWords(bias.low)} to ${habitWords(bias.high)}).`,
  ];
  if (direction !== undefined)
    more.push(
      `They come to rest within ${degreesText(direction.sd.value)} of their mean direction two times in three (95%: ${degreesText(direction.sd.low)} to ${degreesText(direction.sd.high)}): start line, and whatever the ground did.`,
    );
  if (oneTarget)
    more.push(
      'All balls went to one distance, which flatters: in one study the same players spread 6.8% on a repeated putt and 10.6% on varied ones. Change the target every ball.',
    );
  more.push('To halve this interval takes about four times as many balls.');
  return {
    answer: `Your pace spread is ${formatPercent(sd.value)} of the distance (95%: ${formatPercent(sd.low)} to ${formatPercent(sd.high)}), from ${plural(rolls, 'ball')}.`,
    more,
  };
}

function lineWords(result: StartLine, gate: { distance: number }, units: Units): MeasuredWords {
  const { value, low, high, passes, tries } = result;
  const counted = `${passes} of ${plural(tries, 'ball')} passed`;
  if (value === undefined)
    return passes === 0
      ? {
          answer: `Your start line spreads at least ${degreesText(low)}: none of ${plural(tries, 'ball')} passed. No upper end is known.`,
          more: [
            'One end only: a player who spreads less would pass none less than once in forty such records.',
            'Widen the gate until about six balls in seven pass: that tells most.',
          ],
        }
      : {
          answer: `Your start line spreads at most ${degreesText(high)}: all ${plural(tries, 'ball')} passed. No lower end is known.`,
          more: [
            'One end only: a player who spreads more would pass them all less than once in forty such records.',
            'Narrow the gate until about one ball in seven touches it: that tells most.',
          ],
        };
  const ends = [
    low > 0 ? degreesText(low) : undefined,
    Number.isFinite(high) ? degreesText(high) : undefined,
  ];
  const range =
    ends[0] && ends[1]
      ? `95%: ${ends[0]} to ${ends[1]}`
      : ends[1]
        ? `at most ${ends[1]}; one miss gives no lower end`
        : ends[0]
          ? `at least ${ends[0]}; one pass gives no upper end`
          : 'so few balls give neither end';
  return {
    answer: `Your start line spreads ${degreesText(value)} (${range}), from gates: ${counted}.`,
    more: [
      `A gate ${formatShort(tellingWidth(value, gate.distance), units)} wide at ${formatShort(gate.distance, units)} would tell most: about six balls in seven would pass.`,
      'Balls that all touch the same side are a habit, not a spread; this counts them as spread.',
    ],
  };
}

function stepWords({ step, walks }: StepLength, units: Units): MeasuredWords {
  const half = halfWidth(step);
  return {
    answer: `Your step is ${formatShort(step.value, units)}, give or take ${formatShort(half, units)} (95%), from ${plural(walks, 'walk')}.`,
    more: [
      'What you pace with it is off by the same share, and by half a step for counting whole ones.',
      ...(half > 0.03 * step.value ? ['A longer walk, or two more, would tell it better.'] : []),
    ],
  };
}

/** Any result in words. */
export const measuredWords = (kept: MeasuredGreen | MeasuredPlayer, units: Units): MeasuredWords => {
  switch (kept.by) {
    case 'timedRolls':
    case 'rampRolls':
      return speedWords(kept.result, kept.ground, kept.by === 'timedRolls');
    case 'level':
      return slopeWords(kept.result);
    case 'levelBothWays':
      return fallWords(kept.result);
    case 'paceRolls':
      return paceWords(kept.result);
    case 'gates':
      return lineWords(kept.result, kept.gates[kept.gates.length - 1], units);
    case 'walks':
      return stepWords(kept.result, units);
  }
};
