/**
 * What the reading screen tells the map: pure, from the question, the aim and, once committed, the answer.
 * Answers for: what may be seen when. Before the commitment neither line nor number that gives the answer away; the
 * height between contours depends on the length alone, so that steep ground looks steep on every map.
 */
import { inchesToMetres, type Point } from '../../../sim/index.ts';
import type { ContourStep, KeySteps, SceneLine, SceneModel, Viewport } from '../../scene/model.ts';
import { formatAim, holeWords, type Units } from '../../text/format.ts';
import { aimSteps, ownAimText } from './aimText.ts';
import type { Asked, Revealed } from './session.ts';
import { aimSpot } from './view.ts';
import { groundSentence, rollSentence } from './words.ts';

/** Lengths (m) up to which the contours lie this high apart, in each unit: enough to read, not so many that they close up. */
const CONTOURS = [
  { upTo: 2.5, metric: 0.5, imperial: 0.2 },
  { upTo: 8, metric: 1, imperial: 0.4 },
  { upTo: Number.POSITIVE_INFINITY, metric: 2, imperial: 0.8 },
] as const;

/** Height between contours. @param length m @param told whether the legend says it */
export const contourStep = (length: number, units: Units, told: boolean): ContourStep => {
  const { metric, imperial } = CONTOURS.find(({ upTo }) => length <= upTo) ?? CONTOURS[2];
  const step = units === 'imperial' ? inchesToMetres(imperial) : metric / 100;
  return told ? { step, words: units === 'imperial' ? `${imperial} in` : `${metric} cm` } : { step };
};

const keySteps = (units: Units): KeySteps => {
  const sizes = units === 'imperial' ? '1 in, with Shift a quarter inch' : '2 cm, with Shift 0.5 cm';
  return { ...aimSteps(units), words: `arrow keys move it ${sizes}; Enter commits` };
};

/** What the view must hold besides ball and hole. */
export const spotsOf = ({ question }: Asked, aim: number, revealed: Revealed | undefined): Point[] => {
  const { ball, hole } = question;
  const own = aimSpot(ball, hole, aim);
  if (revealed === undefined) return [own];
  const { rest } = revealed.roll;
  return [own, aimSpot(ball, hole, question.trueAim), revealed.line.rest, ...(rest ? [rest] : [])];
};

const linesOf = ({ question }: Asked, { line, roll, aim }: Revealed): SceneLine[] => {
  const { ball, hole } = question;
  const { path, apex, rest } = line;
  return [
    { path, apex, rest, style: 'true', label: 'true aim', aimSpot: aimSpot(ball, hole, question.trueAim) },
    {
      path: roll.path,
      style: 'yours',
      label: 'your aim',
      aimSpot: aimSpot(ball, hole, aim),
      // A ball in the hole rests where the hole is drawn: no mark on top of it.
      ...(roll.rest && roll.status !== 'holed' ? { rest: roll.rest } : {}),
    },
  ];
};

export interface MapRequest {
  readonly asked: Asked;
  /** m, positive left */
  readonly aim: number;
  readonly revealed: Revealed | undefined;
  readonly viewport: Viewport;
  readonly theme: 'light' | 'dark';
  readonly units: Units;
  /** Whether this drill gives the slope, and with it the height between contours. */
  readonly slopeGiven: boolean;
}

export const mapWords = ({ asked, aim, revealed, units }: Omit<MapRequest, 'viewport' | 'theme'>): string => {
  const { question, putt } = asked;
  const own = `You aim ${ownAimText(aim, units)}, ${holeWords(aim)}.`;
  const ground = `The ball is at the bottom, the hole straight above it. ${groundSentence(putt.surface, question)}`;
  if (revealed === undefined) return `${ground} ${own}`;
  const truth = `The true aim is ${formatAim(question.trueAim, units)}, ${holeWords(question.trueAim)}.`;
  return `${ground} ${own} ${truth} ${rollSentence(revealed.roll, question, units)}`;
};

export const mapModel = (request: MapRequest): SceneModel => {
  const { asked, aim, revealed, viewport, theme, units, slopeGiven } = request;
  const { question, putt } = asked;
  const { ball, hole, length } = question;
  return {
    surface: putt.surface,
    viewport,
    ball,
    hole,
    lines: revealed ? linesOf(asked, revealed) : [],
    clouds: [],
    ...(revealed ? {} : { aim: aimSpot(ball, hole, aim) }),
    showContours: true,
    showHeights: false,
    contourStep: contourStep(length, units, slopeGiven || revealed !== undefined),
    theme,
    units,
    draggable: revealed ? [] : ['aim'],
    keySteps: keySteps(units),
    description: mapWords(request),
    handleText: { aim: `${ownAimText(aim, units)}, ${holeWords(aim)}` },
  };
};
