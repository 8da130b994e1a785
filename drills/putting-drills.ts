/** All putting drills, checked as they load, so that a bad file fails before anyone is shown a drill. */
import type { PuttingDrill } from '../sim/index.ts';
import bestOfThreeSets from './putting/best-of-three-sets.json' with { type: 'json' };
import breakGate from './putting/break-gate.json' with { type: 'json' };
import carpetGate from './putting/carpet-gate.json' with { type: 'json' };
import carpetGateRun from './putting/carpet-gate-run.json' with { type: 'json' };
import carpetPaceZone from './putting/carpet-pace-zone.json' with { type: 'json' };
import carpetThreeLengths from './putting/carpet-three-lengths.json' with { type: 'json' };
import carpetTwoGates from './putting/carpet-two-gates.json' with { type: 'json' };
import clockFourSides from './putting/clock-four-sides.json' with { type: 'json' };
import firmAndBack from './putting/firm-and-back.json' with { type: 'json' };
import firstPuttLadder from './putting/first-putt-ladder.json' with { type: 'json' };
import guessBeforeLooking from './putting/guess-before-looking.json' with { type: 'json' };
import lagToCircles from './putting/lag-to-circles.json' with { type: 'json' };
import longAndShort from './putting/long-and-short.json' with { type: 'json' };
import nineHolesOneBall from './putting/nine-holes-one-ball.json' with { type: 'json' };
import oneReadFiveBalls from './putting/one-read-five-balls.json' with { type: 'json' };
import reachButNotFar from './putting/reach-but-not-far.json' with { type: 'json' };
import runOfShortPutts from './putting/run-of-short-putts.json' with { type: 'json' };
import shortLadder from './putting/short-ladder.json' with { type: 'json' };
import sidehillBothWays from './putting/sidehill-both-ways.json' with { type: 'json' };
import softAndFirm from './putting/soft-and-firm.json' with { type: 'json' };
import startGate from './putting/start-gate.json' with { type: 'json' };
import straightString from './putting/straight-string.json' with { type: 'json' };
import threeByThree from './putting/three-by-three.json' with { type: 'json' };
import twoPuttsFromFar from './putting/two-putts-from-far.json' with { type: 'json' };
import upAndDownShort from './putting/up-and-down-short.json' with { type: 'json' };
import { puttingDrillSchema } from './putting-schema.ts';

/** By what they train: line, read and holing out on grass, then pace, then what a carpet allows. */
export const PUTTING_DRILLS: readonly PuttingDrill[] = [
  startGate,
  straightString,
  shortLadder,
  bestOfThreeSets,
  breakGate,
  clockFourSides,
  upAndDownShort,
  runOfShortPutts,
  sidehillBothWays,
  oneReadFiveBalls,
  softAndFirm,
  lagToCircles,
  guessBeforeLooking,
  threeByThree,
  firstPuttLadder,
  longAndShort,
  reachButNotFar,
  firmAndBack,
  twoPuttsFromFar,
  nineHolesOneBall,
  carpetGate,
  carpetTwoGates,
  carpetGateRun,
  carpetPaceZone,
  carpetThreeLengths,
].map((drill) => puttingDrillSchema.parse(drill));

/** The drill of a record; undefined when a later version no longer has it. */
export const puttingDrill = (id: string): PuttingDrill | undefined =>
  PUTTING_DRILLS.find((drill) => drill.id === id);
