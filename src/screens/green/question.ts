/** What this screen asks: the ground, hole and player of every screen, and its own distance. The ball marks a place to ask about. */
import { computed, signal } from '@preact/signals';
import { feetToMetres, type Point } from '../../../sim/index.ts';
import { capture, knownPlayer, skid } from '../../state/settings.ts';
import { greenSpeed, hole, surface } from '../../state/situation.ts';
import type { MapQuestion } from './maps.ts';

/** Distances of an approach that are asked about, m. */
export const DISTANCES = { min: feetToMetres(3), max: feetToMetres(40) } as const;

/** From the hole, m. */
export const distance = signal(feetToMetres(15));

/** Any place that is not the hole: a map is of all of them, and must not be made again when the ball moves. */
const beside = ({ x, y }: Point): Point => ({ x: x + 1, y });

export const question = computed<MapQuestion>(() => ({
  putt: {
    surface: surface.value,
    greenSpeed: greenSpeed.value,
    ball: beside(hole.value),
    hole: hole.value,
    capture: capture.value,
    skid: skid.value,
  },
  player: knownPlayer.value.player,
  among: knownPlayer.value.members,
}));
