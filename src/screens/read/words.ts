/** Sentences of the reading screen. Numbers are written by text/format.ts; nothing is computed here. */
import type {
  AimScore,
  Question,
  ReadDrill,
  ReadingBias,
  ReadKind,
  ReadTask,
  Roll,
  Surface,
} from '../../../sim/index.ts';
import { sampleSurface } from '../../../sim/index.ts';
import { formatLeave, formatPercent, formatShort, type Units } from '../../text/format.ts';

/** "+12%" or "−12%", with a real minus sign. */
export const formatShare = (share: number): string => {
  const percent = Math.round(share * 100);
  return percent === 0 ? '0%' : `${percent > 0 ? '+' : '−'}${Math.abs(percent)}%`;
};

/** Wider than this either way, share, the figures of an interval would only look exact. */
const WIDEST_TOLD = 2;

/** An interval in words, however wide. */
export const formatInterval = ({ low, high }: { low: number; high: number }): string => {
  if (!Number.isFinite(low)) return 'no margin yet';
  if (high - low > 2 * WIDEST_TOLD) return 'wider than ±200%';
  return `${formatShare(low)} to ${formatShare(high)}`;
};

export const scoreHeadline = ({ verdict, error }: AimScore, units: Units): string => {
  const size = formatShort(Math.abs(error), units);
  if (verdict === 'right') return `Right: within ${units === 'imperial' ? 'half an inch' : '1.3 cm'}`;
  if (verdict === 'wrongSide') return `The wrong side, ${size} from the true aim`;
  return verdict === 'tooLittle' ? `Too little break, by ${size}` : `Too much break, by ${size}`;
};

export const shareSentence = ({ share, verdict }: AimScore): string => {
  if (verdict === 'wrongSide') return 'You aimed to the low side: the ball breaks the other way.';
  if (share === undefined) return 'Nearly straight: a share of so little break would say nothing.';
  const size = formatPercent(Math.abs(share), 0);
  if (Number.parseFloat(size) === 0) return 'That is all of the break.';
  return share < 0
    ? `You played ${size} less break than there is.`
    : `You played ${size} more break than there is.`;
};

export const QUESTION_WORDS: Readonly<Record<ReadTask, string>> = {
  aim: 'where do you aim?',
  paces: 'die or firm?',
  slope: 'what slope is this?',
};

/** Whether an aim counts towards the seven in ten of an adaptive set. */
export const hitSentence = (hit: boolean): string =>
  hit ? 'It counts as a hit.' : 'It does not count as a hit.';

/** Where the ball went on the chosen line at the pace called. */
export const rollSentence = (roll: Roll, question: Question, units: Units): string => {
  const { hole } = question;
  if (roll.status === 'holed') return 'On your line, at this pace, it drops.';
  if (roll.status === 'neverStops') return 'On your line it misses and does not stop on this slope.';
  if (roll.status === 'leftSurface' || roll.rest === undefined)
    return 'On your line it misses and runs off the green.';
  const left = Math.hypot(roll.rest.x - hole.x, roll.rest.y - hole.y);
  return `On your line it ${roll.lippedOut ? 'lips out' : 'misses'} and stops ${formatLeave(left, units)} away.`;
};

export const costSentence = (atAim: number, atTrue: number): string => {
  // Of the two rounded figures: what stands there must add up.
  const lost = Math.round(atTrue * 100) - Math.round(atAim * 100);
  const both = `${formatPercent(atAim, 0)} of these drop from your aim, ${formatPercent(atTrue, 0)} from the true one`;
  return lost <= 0
    ? `${both}: it costs nothing.`
    : `${both}: ${lost} ${lost === 1 ? 'point' : 'points'} lost.`;
};

/** Ground in words for whoever cannot see the map: which way it falls and roughly how much, no numbers. */
export const groundSentence = (surface: Surface, question: Question): string => {
  const { ball, hole } = question;
  const heading = Math.atan2(hole.y - ball.y, hole.x - ball.x);
  const sample = { height: 0, gradientX: 0, gradientY: 0 };
  const parts = (
    [
      ['near the ball', 0.15],
      ['halfway', 0.5],
      ['near the hole', 0.9],
    ] as const
  ).map(([name, share]) => {
    sampleSurface(surface, ball.x + share * (hole.x - ball.x), ball.y + share * (hole.y - ball.y), sample);
    const slope = Math.hypot(sample.gradientX, sample.gradientY);
    if (slope < 0.003) return `${name} level`;
    // Eight directions are as exact as the hachures are to the eye.
    const turn = Math.atan2(-sample.gradientY, -sample.gradientX) - heading;
    const way = [
      'towards the hole',
      'towards the hole and to the left',
      'to the left',
      'back to the ball and to the left',
      'back to the ball',
      'back to the ball and to the right',
      'to the right',
      'towards the hole and to the right',
    ];
    const eighth = ((Math.round((turn / (2 * Math.PI)) * 8) % 8) + 8) % 8;
    const size = slope < 0.0125 ? 'gently' : slope < 0.025 ? 'clearly' : 'steeply';
    return `${name} it falls ${size} ${way[eighth]}`;
  });
  return question.ground.kind === 'plane'
    ? `The ground: ${parts[1].replace('halfway', 'everywhere')}.`
    : `The ground: ${parts.join('; ')}.`;
};

/** The lengths are those at which training/kinds.ts parts the putts. */
export const kindNames = (units: Units): Readonly<Record<ReadKind, string>> => ({
  all: 'All putts',
  leftToRight: 'Left to right',
  rightToLeft: 'Right to left',
  up: 'Uphill',
  level: 'Level',
  down: 'Downhill',
  gentle: 'Slope under 2%',
  steep: 'Slope 2% or more',
  slow: 'Green speed under 10 ft',
  fast: 'Green speed 10 ft or more',
  ...(units === 'imperial'
    ? {
        short: 'Under 8 ft',
        middle: '8 to 20 ft',
        long: 'From 20 ft',
        die: 'Pace under 9 in',
        firm: 'Pace 9 in or more',
      }
    : {
        short: 'Under 2.4 m',
        middle: '2.4 to 6.1 m',
        long: 'From 6.1 m',
        die: 'Pace under 23 cm',
        firm: 'Pace 23 cm or more',
      }),
});

export const verdictWords = (bias: ReadingBias | undefined): string => {
  if (bias === undefined) return 'only straight putts';
  return {
    tooLittle: 'too little break',
    tooMuch: 'too much break',
    aboutRight: 'about right',
    tooFew: 'too few to tell',
  }[bias.verdict];
};

export const summaryHeadline = (bias: ReadingBias | undefined): string => {
  if (bias === undefined) return 'Only straight putts: no break to judge.';
  const size = formatShare(bias.value);
  if (bias.verdict === 'tooLittle') return `You play too little break: ${size} on average.`;
  if (bias.verdict === 'tooMuch') return `You play too much break: ${size} on average.`;
  if (bias.verdict === 'aboutRight') return `Your break is about right: ${size} on average.`;
  return bias.days === 1 ? `One day is too few to tell: ${size} so far.` : `Too few to tell: ${size} so far.`;
};

export const shownWords = (drill: ReadDrill): string =>
  `${drill.surface === 'plane' ? 'even slope' : 'made-up green'}, ${drill.shown.slope ? 'slope given' : 'slope not given'}`;
