/**
 * The invented player's putts, one after the other, by the published model of angle and distance (Gelman 2019; equations in
 * sim/player/holing-models.ts): the ball starts off by an angle, its length is off by a share, it drops when both are near enough.
 * Answers for: what dropped, where misses came to rest. Leaves out: rounds and days (demo.ts). Nothing here is a record of anybody.
 */
import {
  BALL_RADIUS,
  type BreakWay,
  degreesToRadians,
  feetToMetres,
  HOLE_RADIUS,
  metresToFeet,
  type RecordedMiss,
} from '../../sim/index.ts';

/** A handicap of about six; ours: between the tour's fit of the same model (1.02 degrees, 0.08) and a player of 90 strokes. */
export const DEMO_PLAYER = { angleSd: degreesToRadians(1.2), distanceSd: 0.09 };
/** Sees too little break: this much to the low side on putts that break, as a share of the angle's spread. */
const LOW_SHARE = 0.3;
/** The model's own: aims a foot past, and holes what would stop up to three feet past. */
const OVERSHOT = 1;
const TOO_FAR = 3;
/** Nobody writes down less than half a foot. */
const STEP = 0.5;

export type Random = () => number;

/** Box and Muller's pair, one of it. */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

export type Struck = { readonly holed: true } | { readonly holed: false; readonly miss: RecordedMiss };

/** Which way is high: +1 left, -1 right, 0 neither. */
const highSide = (breaks: BreakWay | undefined): number =>
  breaks === 'leftToRight' ? 1 : breaks === 'rightToLeft' ? -1 : 0;

const sideOf = (off: number, breaks: BreakWay | undefined): RecordedMiss['side'] => {
  if (Math.abs(off) < metresToFeet(HOLE_RADIUS)) return 'online';
  // Which word fits depends on the break: where it was not recorded, neither is the side.
  if (breaks === undefined) return undefined;
  const high = highSide(breaks);
  if (high === 0) return off > 0 ? 'left' : 'right';
  return off * high > 0 ? 'high' : 'low';
};

/** @param feet ball to hole */
export const strike = (feet: number, breaks: BreakWay | undefined, random: Random): Struck => {
  const { angleSd, distanceSd } = DEMO_PLAYER;
  const angle = angleSd * (normal(random) - LOW_SHARE * highSide(breaks));
  const length = (feet + OVERSHOT) * (1 + distanceSd * normal(random));
  const width = metresToFeet(HOLE_RADIUS - BALL_RADIUS);
  const onLine = feet <= width || Math.abs(angle) < Math.asin(width / feet);
  if (onLine && length > feet && length < feet + TOO_FAR) return { holed: true };
  const along = length * Math.cos(angle) - feet;
  const side = sideOf(feet * Math.tan(angle), breaks);
  const leave = Math.max(STEP, Math.round(Math.hypot(along, length * Math.sin(angle)) / STEP) * STEP);
  return {
    holed: false,
    miss: {
      ...(side && { side }),
      reach: along < 0 ? 'short' : 'past',
      leave: feetToMetres(leave),
    },
  };
};

/** First putts of a hole for such a player, feet: chipped close, or a green hit; ours, invented. */
export const firstPutt = (random: Random): number => {
  const chipped = random() < 0.45;
  const feet = Math.exp(Math.log(chipped ? 6 : 22) + (chipped ? 0.6 : 0.5) * normal(random));
  return Math.round(Math.min(70, Math.max(2, feet)));
};
