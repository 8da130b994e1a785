/**
 * Small ink drawings of the form: how the ground climbs, how a putt breaks, the ball's way to the hole. Decoration beside
 * words: hidden from whoever cannot see them.
 */
import type { BreakWay, Climb } from '../../../sim/index.ts';

const CLIMB_PATHS: Readonly<Record<Climb, string>> = {
  up: 'M3 15L25 5M18 4.5L25 5L21 11',
  level: 'M3 10H25M19 5.5L25 10L19 14.5',
  down: 'M3 5L25 15M21 9L25 15L18 15.5',
};
export const ClimbDrawing = ({ climb }: { climb: Climb }) => (
  <svg class="rec-ink" viewBox="0 0 28 20" aria-hidden="true">
    <path d={CLIMB_PATHS[climb]} />
  </svg>
);

const BREAK_PATHS: Readonly<Record<BreakWay, string>> = {
  leftToRight: 'M8 22C4 13 8 6 20 4M13.5 1.5L20 4L15.5 9',
  straight: 'M14 22V3M9 8.5L14 3L19 8.5',
  rightToLeft: 'M20 22C24 13 20 6 8 4M14.5 1.5L8 4L12.5 9',
};
export const BreakDrawing = ({ breaks }: { breaks: BreakWay }) => (
  <svg class="rec-ink" viewBox="0 0 28 24" aria-hidden="true">
    <path d={BREAK_PATHS[breaks]} />
  </svg>
);

/** From the ball, below, to the hole. */
const WAYS: Readonly<Record<BreakWay, string>> = {
  leftToRight: 'M150 137C124 120 124 104 145 92',
  straight: 'M150 137V98',
  rightToLeft: 'M150 137C176 120 176 104 155 92',
};
/** The hole and the putt's way to it, behind the places where it can have missed; 300 by 180. */
export const WayDrawing = ({ breaks }: { breaks: BreakWay | undefined }) => (
  <svg class="rec-way-ink" viewBox="0 0 300 180" preserveAspectRatio="none" aria-hidden="true">
    <path class="rec-way-edges" d="M0 90H300" />
    {breaks && <path class="rec-way-edges" d="M100 0V180M200 0V180" />}
    {breaks && <path class="rec-way-line" d={WAYS[breaks]} />}
  </svg>
);

/** The tick of a saved putt. */
export const Tick = () => (
  <svg class="rec-tick" viewBox="0 0 14 12" aria-hidden="true">
    <path d="M2 6.5L5.5 10L12 2" />
  </svg>
);
