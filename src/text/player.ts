/**
 * A player's six errors in words: names, units, what each means, what players of each kind have. Answers for: the same words on every screen
 * and in the command line. Leaves out: ranges and what a record tells of them (errors.ts), what they cost (costs.ts).
 */
import {
  feetToMetres,
  metresToFeet,
  PLAIN_PACE,
  type Player,
  PRESETS,
  planeSurface,
  radiansToDegrees,
  readPutt,
} from '../../sim/index.ts';
import { formatShort, type Units } from './format.ts';

/** In the order a person thinks of them: the stroke, the eye, the habits. */
export const PLAYER_ERRORS = [
  'lineSd',
  'paceSd',
  'slopeSd',
  'speedSd',
  'readBias',
  'paceBias',
] as const satisfies readonly (keyof Player)[];

export const ERROR_NAMES: Readonly<Record<keyof Player, string>> = {
  lineSd: 'Start line',
  paceSd: 'Pace of the stroke',
  slopeSd: 'Slope misread',
  speedSd: 'Green speed misread',
  readBias: 'Habit of reading',
  paceBias: 'Habit of pace',
};
export const ERROR_IN_SENTENCE: Readonly<Record<keyof Player, string>> = {
  lineSd: 'error of start line',
  paceSd: 'error of the stroke’s pace',
  slopeSd: 'misreading of slope',
  speedSd: 'misreading of green speed',
  readBias: 'habit of reading',
  paceBias: 'habit of pace',
};
/** What the numbers are a share of. */
export const ERROR_SCALES: Readonly<Record<keyof Player, string>> = {
  lineSd: 'degrees',
  paceSd: '% of the distance',
  slopeSd: '% of slope',
  speedSd: '% of the green speed',
  readBias: '% of all slope',
  paceBias: '% of the distance',
};
/** Below and above nothing. */
const SIDES: Readonly<Partial<Record<keyof Player, readonly [string, string]>>> = {
  readBias: ['too little', 'too much'],
  paceBias: ['short', 'long'],
};
const DIGITS: Readonly<Record<keyof Player, number>> = {
  lineSd: 2,
  paceSd: 1,
  slopeSd: 2,
  speedSd: 1,
  readBias: 0,
  paceBias: 1,
};

/** In the unit a person sees: degrees or per cent. */
export const shownError = (name: keyof Player, value: number): number =>
  name === 'lineSd' ? radiansToDegrees(value) : 100 * value;
export const unitOfError = (name: keyof Player): string => (name === 'lineSd' ? '°' : '%');

/** Without unit and side: "1.21", "3.8". */
export const errorNumber = (name: keyof Player, value: number): string =>
  Math.abs(shownError(name, value)).toFixed(DIGITS[name]).replace(/\.0+$/, '');

/** Which side of nothing, when it is more than nothing as it is written: "", " short", " too much". */
export const sideOfError = (name: keyof Player, value: number): string => {
  const sides = SIDES[name];
  if (sides === undefined || Number(errorNumber(name, value)) === 0) return '';
  return ` ${sides[value < 0 ? 0 : 1]}`;
};

/** "1.21°", "0.45%", "3.8% short". */
export const errorWords = (name: keyof Player, value: number): string =>
  `${errorNumber(name, value)}${unitOfError(name)}${sideOfError(name, value)}`;

/** By which errors are made plain. */
export const EXAMPLE_FAR = { imperial: feetToMetres(12), metric: 4 } as const;
export const EXAMPLE_WORDS = { imperial: '12 ft', metric: '4 m' } as const;
const EXAMPLE_GREEN = feetToMetres(10);

/** Break of the example across such a slope on a green of 10 ft, m. @param slope rise over run, small */
export const breakOfSlope = (slope: number, units: Units): number => {
  const read = readPutt(
    {
      surface: planeSurface({ slope, downhill: 0 }),
      greenSpeed: EXAMPLE_GREEN,
      ball: { x: 0, y: -EXAMPLE_FAR[units] },
      hole: { x: 0, y: 0 },
      capture: 'simple',
    },
    PLAIN_PACE,
  );
  return read.status === 'ok' ? Math.abs(read.aimOffset ?? 0) : 0;
};

/** "3 in of break at 12 ft". */
export const slopeInBreak = (slope: number, units: Units): string =>
  `${formatShort(breakOfSlope(slope, units), units)} of break at ${EXAMPLE_WORDS[units]}`;

/** "0.4 ft on a green of 10 ft". */
export const speedInFeet = (share: number): string =>
  `${(metresToFeet(EXAMPLE_GREEN) * share).toFixed(1)} ft on a green of 10 ft`;

/** One sentence each, under the slider. */
export const ERROR_HINTS: Readonly<Record<keyof Player, (units: Units) => string>> = {
  lineSd: (units) =>
    `Two putts in three start within this of where you meant; 1° is ${formatShort(EXAMPLE_FAR[units] * Math.tan(Math.PI / 180), units)} at ${EXAMPLE_WORDS[units]}.`,
  paceSd: () =>
    'Two putts in three roll within this share of the distance you meant: the stroke alone, read aside.',
  slopeSd: (units) =>
    `Two times in three you see the slope within this of what it is, on straight putts too; 0.4% is ${slopeInBreak(0.004, units)}.`,
  speedSd: () =>
    `Two times in three you take the green to be within this of its speed; 4% is ${speedInFeet(0.04)}.`,
  readBias: () =>
    'Below zero you see all slopes too gentle and play too little break, above zero too steep and too much.',
  paceBias: () => 'Below zero your putts end short of what you meant, above zero past it.',
};

/** "Typical: 0.75° (Tour), 0.90° (Scratch)": what the players to start from have; undefined: all have none. */
export const typicalWords = (name: keyof Player): string | undefined =>
  PRESETS.every(({ player }) => player[name] === 0)
    ? undefined
    : `Typical: ${PRESETS.map((preset) => `${errorWords(name, preset.player[name])} (${preset.name})`).join(', ')}.`;
