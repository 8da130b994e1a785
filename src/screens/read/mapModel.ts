/**
 * What the reading screen tells the map: pure, from the question, the aim and, once committed, the answer.
 * Answers for: what may be seen when. Before the commitment neither line nor number that gives the answer away; the
 * height between contours depends on the length alone, so that steep ground looks steep on every map.
 */
import { inchesToMetres, type Line, type Point } from '../../../sim/index.ts';
import type { ContourStep, KeySteps, LineStyle, SceneLine, SceneModel, Viewport } from '../../scene/model.ts';
import { formatAim, formatSlope, holeWords, type Units } from '../../text/format.ts';
import { aimSteps, ownAimText } from './aimText.ts';
import type { Asked } from './asked.ts';
import type { Revealed } from './reveal.ts';
import { alongWords } from './slopeWords.ts';
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
export const spotsOf = ({ question, set }: Asked, aim: number, revealed: Revealed | undefined): Point[] => {
  const { ball, hole } = question;
  if (revealed === undefined) return set.kind === 'aim' ? [aimSpot(ball, hole, aim)] : [];
  if (revealed.kind === 'aim') {
    const { rest } = revealed.roll;
    const aims = [aimSpot(ball, hole, aim), aimSpot(ball, hole, question.trueAim)];
    return [...aims, revealed.line.rest, ...(rest ? [rest] : [])];
  }
  const lines = revealed.kind === 'paces' ? [revealed.die, revealed.firm] : [revealed.line];
  return lines.flatMap(({ aimOffset = 0, rest }) => [aimSpot(ball, hole, aimOffset), rest]);
};

const linesOf = ({ question }: Asked, revealed: Revealed): SceneLine[] => {
  const { ball, hole } = question;
  const lineOf = ({ path, apex, rest, aimOffset = 0 }: Line, style: LineStyle, label: string): SceneLine => ({
    path,
    apex,
    rest,
    style,
    label,
    aimSpot: aimSpot(ball, hole, aimOffset),
  });
  if (revealed.kind === 'paces')
    return [lineOf(revealed.die, 'die', 'die'), lineOf(revealed.firm, 'firm', 'firm')];
  if (revealed.kind === 'slope') return [lineOf(revealed.line, 'true', 'true aim')];
  const { line, roll, aim } = revealed;
  return [
    { ...lineOf(line, 'true', 'true aim'), aimSpot: aimSpot(ball, hole, question.trueAim) },
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

/** The truth for whoever does not see the lines. */
const truthWords = ({ question }: Asked, revealed: Revealed, units: Units): string => {
  if (revealed.kind === 'slope')
    return `The ground falls ${formatSlope(revealed.truth.total)}; along your line it is ${alongWords(revealed.truth.along)}.`;
  if (revealed.kind === 'paces') {
    const aimed = ({ aimOffset = 0 }: Line): string => formatAim(aimOffset, units);
    return `To die it in one aims ${aimed(revealed.die)}, firm ${aimed(revealed.firm)}.`;
  }
  const truth = `The true aim is ${formatAim(question.trueAim, units)}, ${holeWords(question.trueAim)}.`;
  return `${truth} ${rollSentence(revealed.roll, question, units)}`;
};

export const mapWords = ({ asked, aim, revealed, units }: Omit<MapRequest, 'viewport' | 'theme'>): string =>
  [
    `The ball is at the bottom, the hole straight above it. ${groundSentence(asked.putt.surface, asked.question)}`,
    ...(asked.set.kind === 'aim' ? [`You aim ${ownAimText(aim, units)}, ${holeWords(aim)}.`] : []),
    ...(revealed === undefined ? [] : [truthWords(asked, revealed, units)]),
  ].join(' ');

export const mapModel = (request: MapRequest): SceneModel => {
  const { asked, aim, revealed, viewport, theme, units, slopeGiven } = request;
  const { question, putt } = asked;
  const { ball, hole, length } = question;
  const aiming = asked.set.kind === 'aim' && revealed === undefined;
  return {
    surface: putt.surface,
    viewport,
    ball,
    hole,
    lines: revealed ? linesOf(asked, revealed) : [],
    clouds: [],
    ...(aiming ? { aim: aimSpot(ball, hole, aim) } : {}),
    showContours: true,
    showHeights: false,
    contourStep: contourStep(length, units, slopeGiven || revealed !== undefined),
    theme,
    units,
    draggable: aiming ? ['aim'] : [],
    keySteps: keySteps(units),
    description: mapWords(request),
    handleText: { aim: `${ownAimText(aim, units)}, ${holeWords(aim)}` },
  };
};
