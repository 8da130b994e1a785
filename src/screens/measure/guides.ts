/** How to measure: what one needs, what to do, what to mind. Words only. Figures in them: sim/MODEL.md section 6. */
import { inchesToMetres, rampHeightFor } from '../../../sim/index.ts';
import { formatShort, type Units } from '../../text/format.ts';

export interface Guide {
  readonly question: string;
  readonly need: string;
  readonly steps: readonly string[];
  readonly mind: readonly string[];
}

/** Speed of the Stimpmeter, m/s: 6 ft/s. */
const DEVICE_SPEED = 1.83;

const FALL_LINE =
  'Roll straight up and down the fall, where the ball does not curve. On a line across a slope of 1% a timed reading comes out about 3% fast, across 2% about 12%.';

const timedRolls = (units: Units): Guide => ({
  question: 'How fast is it?',
  need: 'A ball, two tees, a tape and a stopwatch (a telephone has one).',
  steps: [
    `Lay a tee as a mark. Roll the ball from at least ${units === 'imperial' ? '5 ft' : '1.5 m'} before it, so that it rolls and no longer skids as it comes past, and hard enough to go on for three seconds or more.`,
    'Start the watch as the ball comes past the mark. Stop it when the ball lies still: only this last stretch counts.',
    'Measure from the mark to the ball. Enter the length and the time.',
    'Then the same line back. Two rolls each way are a beginning.',
  ],
  mind: [
    'The longer the stretch, the better: a tenth of a second in three is 7% of the reading, in five 4%.',
    FALL_LINE,
  ],
});

const rampRolls = (units: Units): Guide => ({
  question: 'How fast is it?',
  need: 'A flat board whose foot runs out level, a ruler, a tape.',
  steps: [
    `Prop up the board; ${formatShort(rampHeightFor(DEVICE_SPEED), units)} gives the speed of a Stimpmeter, any height will do. Mark where the ball is let go and measure how much lower it is at the foot.`,
    'Let the ball go, without a push. Measure from the foot of the ramp to where it lies.',
    'Then from the other end back along the same line. Two rolls each way are a beginning.',
  ],
  mind: [
    'A flat board, not a groove: in a groove the ball comes out slower. A foot that meets the ground at an angle makes the ball hop and lose speed; tape a card over the edge.',
    'Roll straight up and down the fall, where the ball does not curve; across 2% a reading comes out about 3% fast.',
  ],
});

const slope = (both: boolean): Guide => ({
  question: both ? 'How steep is it, and which way does it fall?' : 'How steep is it along this line?',
  need: 'A telephone with a level, and a straight board about as long as your arm, to bridge small bumps.',
  steps: [
    'Lay the board along the line and the telephone on it, top end forwards. Read the angle: plus when the forward end is higher.',
    'Turn the telephone end for end on the board without moving the board, and read again with its own sign. Half the difference is the slope: the zero error of the level is gone.',
    ...(both
      ? ['Turn the board a quarter turn to the left and do both readings again, top end to the left first.']
      : []),
    'Lay the board down anew close by for another pair.',
  ],
  mind: [
    'One degree is a slope of 1.75%.',
    'A level that shows whole degrees only is too coarse for greens: 1° is most of a usual slope.',
  ],
});

const pace = (units: Units): Guide => ({
  question: 'How well do you judge distance?',
  need: 'Ten balls, two or three tees as targets near and far on level ground, no hole.',
  steps: [
    'Putt each ball to stop at the target. Do not lift any before all have been rolled.',
    `For each, enter how far away the target was and how far past or short of it the ball lies, measured along the line. Half a ${units === 'imperial' ? 'foot' : 'hand'} is near enough.`,
    'A target left empty is the one above. Different distances can be mixed: each ball counts as a share of its own.',
  ],
  mind: ['Level ground and a straight line: a slope would count as your error.'],
});

const startLine = (units: Units): Guide => ({
  question: 'How well do you start the ball on line?',
  need: `Two tees as a gate, ${formatShort(inchesToMetres(2.4), units)} apart or so between their inner sides, ${formatShort(inchesToMetres(24), units)} or so ahead.`,
  steps: [
    'Set the gate square to a straight, level line, its middle on the line you aim along.',
    'Putt twenty balls, ten at the least. Count those that pass without touching a tee.',
    'Enter the gate, the balls and the passes. Another width or distance is another gate: they count together.',
  ],
  mind: ['Near the ball the ground has no time to turn it, so what you see is aim and stroke.'],
});

const step = (units: Units): Guide => ({
  question: 'How long is your step?',
  need: 'A length you know: a tape, or a marked distance.',
  steps: [
    `Walk it as you pace putts. ${units === 'imperial' ? '60 ft' : '20 m'} or more is good.`,
    'Count your steps, to the half.',
    'Once more, or back.',
  ],
  mind: ['You step shorter uphill and on a green you do not want to mark: pace at home as you pace there.'],
});

/** @param choices of the form */
export const guideOf = (form: string, choices: Readonly<Record<string, string>>, units: Units): Guide => {
  switch (form) {
    case 'slope':
      return slope(choices.directions === 'two');
    case 'pace':
      return pace(units);
    case 'startLine':
      return startLine(units);
    case 'step':
      return step(units);
    default:
      return choices.by === 'ramp' ? rampRolls(units) : timedRolls(units);
  }
};
