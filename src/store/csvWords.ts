/** The words of our CSV files for the values of records. A word once written is a promise: files with it are about. */
import type {
  BreakWay,
  Climb,
  MissReach,
  MissSide,
  PaceMeant,
  PracticeSet,
  PuttKind,
  SlopeFelt,
} from '../../sim/index.ts';

export const CLIMB_WORDS: { readonly [Value in Climb]: string } = { up: 'up', down: 'down', level: 'level' };
export const BREAK_WORDS: { readonly [Value in BreakWay]: string } = {
  leftToRight: 'left to right',
  rightToLeft: 'right to left',
  straight: 'straight',
};
export const SLOPE_WORDS: { readonly [Value in SlopeFelt]: string } = {
  gentle: 'gentle',
  medium: 'medium',
  steep: 'steep',
};
export const PACE_WORDS: { readonly [Value in PaceMeant]: string } = {
  die: 'die',
  normal: 'normal',
  firm: 'firm',
};
export const SIDE_WORDS: { readonly [Value in MissSide]: string } = {
  high: 'high',
  low: 'low',
  left: 'left',
  right: 'right',
  online: 'on line',
};
export const REACH_WORDS: { readonly [Value in MissReach]: string } = { short: 'short', past: 'past' };
/** noPutt: the line of a round that has no putts. */
export const KIND_WORDS: { readonly [Value in PuttKind | 'noPutt']: string } = {
  putt: 'putt',
  conceded: 'conceded',
  offGreen: 'off the green',
  noPutt: 'no putt',
};
export const GROUND_WORDS: { readonly [Value in PracticeSet['ground']]: string } = {
  grass: 'grass',
  carpet: 'carpet',
};
