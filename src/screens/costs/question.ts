/**
 * What is asked on this screen: whose putts, from where, on what. Answers for: choices and their signals. Leaves out: the work
 * (work.ts), what follows (answer.ts).
 */
import { computed, signal } from '@preact/signals';
import {
  BENCHMARKS,
  CLUB_MIX,
  firstPuttMix,
  type Member,
  PLAIN_PACE,
  playedHoles,
  puttingBenchmarkOf,
  type StepId,
  TOUR_MIX,
} from '../../../sim/index.ts';
import type { KeptFit } from '../../app/fittedPlayer.ts';
import { fitInUse, knownPlayer } from '../../app/settings.ts';
import { shownRecords } from '../../app/shownRecords.ts';

/** Green speeds: a club's, or those of tournaments. */
export const GREENS = { club: CLUB_MIX, fast: TOUR_MIX } as const;
export type Greens = keyof typeof GREENS;

/** Pace of first putts by habit, m past, and between which it may be set. */
export const usualPace = signal(PLAIN_PACE);
export const PACES = { min: 0.05, max: 1.2 };
export const greens = signal<Greens>('club');

export interface CostQuestion {
  readonly likely: readonly Member[];
  /** The fit whose players they are. */
  readonly fit: KeptFit | undefined;
  /** m past */
  readonly usual: number;
  readonly greens: Greens;
}

export const question = computed(
  (): CostQuestion => ({
    likely: knownPlayer.value.members,
    fit: fitInUse.value,
    usual: usualPace.value,
    greens: greens.value,
  }),
);

/** The same question has the same text. */
export const keyOf = ({ likely: players, usual, greens: speeds }: CostQuestion): string =>
  JSON.stringify([players.map(({ player: one, weight }) => [...Object.values(one), weight]), usual, speeds]);

/** Where first putts come from: the record shown, or the stated mix where there is none. */
export const mix = computed(() => firstPuttMix(playedHoles(shownRecords.value?.putts ?? [])));

/** Two steps held against each other. */
export const firstStep = signal<StepId>('paceShare');
export const secondStep = signal<StepId>('lineHalf');

export const benchmarkId = signal('scratch-modelled');
export const benchmark = computed(() => puttingBenchmarkOf(benchmarkId.value) ?? BENCHMARKS[0]);

/** Which putts of "hit them firmer" the table shows. */
export const FIRMER_DIRECTIONS = ['any', 'uphill', 'sidehill', 'downhill'] as const;
export type FirmerDirection = (typeof FIRMER_DIRECTIONS)[number];
export const firmerDirection = signal<FirmerDirection>('any');
