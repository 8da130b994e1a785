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
import type { KeptFit } from '../fittedPlayer.ts';
import { fitInUse, knownPlayer, meantPace } from '../settings.ts';
import { shownRecords } from '../shownRecords.ts';

/** Green speeds: a club's, or those of tournaments. */
export const GREENS = { club: CLUB_MIX, fast: TOUR_MIX } as const;
export type Greens = keyof typeof GREENS;

/** Between which the pace of first putts by habit may be set, m past. */
export const PACES = { min: 0.05, max: 1.2 };
/** What was said on "Your errors", until it is set here. */
const said = meantPace.peek();
/** Pace of first putts by habit, m past. */
export const usualPace = signal(
  typeof said === 'number' ? Math.min(Math.max(said, PACES.min), PACES.max) : PLAIN_PACE,
);
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
