/**
 * What the practice screen is set to: the drill, what the list shows, the ground. Kept on the device; what is found there and is not
 * ours is dropped. Leaves out: green speed and slope (state/situation.ts), the carpet (state/carpet.ts), the player (state/settings.ts), scores (entry.ts).
 */
import { computed, effect, signal } from '@preact/signals';
import * as z from 'zod';
import { PUTTING_DRILLS, puttingDrill } from '../../../drills/putting-drills.ts';
import {
  type DrillGround,
  type GroundKind,
  type PuttingDrill,
  TRAINED,
  type Trained,
} from '../../../sim/index.ts';
import { carpetSpeed } from '../../state/carpet.ts';
import { keptValue } from '../../state/kept.ts';
import { greenSpeed, slope } from '../../state/situation.ts';

export const GROUND_OPTIONS = [
  { value: 'grass', label: 'grass' },
  { value: 'carpet', label: 'carpet' },
] as const;

export const LONGEST_MINUTES = ['any', '8', '10', '12', '15'] as const;
export type LongestMinutes = (typeof LONGEST_MINUTES)[number];

export interface DrillFilter {
  readonly ground: GroundKind | 'any';
  readonly trains: Trained | 'any';
  readonly minutes: LongestMinutes;
}

export interface StoredPractice {
  readonly drillId: string;
  readonly ground: GroundKind;
  readonly filter: DrillFilter;
}

const DEFAULTS: StoredPractice = {
  drillId: PUTTING_DRILLS[0].id,
  ground: 'grass',
  filter: { ground: 'any', trains: 'any', minutes: 'any' },
};

const oneOf = <Value extends string>(known: readonly Value[], otherwise: Value) =>
  z.enum(known as [Value, ...Value[]]).catch(otherwise);

const filterSchema = z.object({
  ground: oneOf(['any', 'grass', 'carpet'], 'any'),
  trains: oneOf(['any', ...TRAINED], 'any'),
  minutes: oneOf(LONGEST_MINUTES, 'any'),
});
const kept = keptValue<StoredPractice>({
  key: 'borrow.practice.1',
  schema: z.object({
    drillId: z
      .string()
      .refine((id) => puttingDrill(id) !== undefined)
      .catch(DEFAULTS.drillId),
    ground: oneOf(['grass', 'carpet'], DEFAULTS.ground),
    filter: filterSchema.catch(DEFAULTS.filter),
  }),
  otherwise: () => DEFAULTS,
});
/** Reads a stored text; whatever is missing or wrong takes its default. */
export const parsePractice = kept.parse;

const loaded = kept.load();
const drillId = signal(loaded.drillId);
export const filter = signal(loaded.filter);
const wantedGround = signal(loaded.ground);

export const chosen = computed<PuttingDrill>(() => puttingDrill(drillId.value) ?? PUTTING_DRILLS[0]);
export const choose = (id: string): void => {
  drillId.value = id;
};

/** A drill for one ground is done there; one for both where the person says. */
export const groundKind = computed<GroundKind>(() =>
  chosen.value.ground === 'both' ? wantedGround.value : chosen.value.ground,
);
export const chooseGround = (kind: GroundKind): void => {
  wantedGround.value = kind;
};

/** The drill of a link, on the ground it names; what nobody knows is passed over. */
export const openWith = (id: string, on: string | undefined): void => {
  if (puttingDrill(id) === undefined) return;
  choose(id);
  if (on === 'grass' || on === 'carpet') chooseGround(on);
};

export const ground = computed<DrillGround>(() =>
  groundKind.value === 'carpet'
    ? { kind: 'carpet', greenSpeed: carpetSpeed.value }
    : { kind: 'grass', greenSpeed: greenSpeed.value, slope: slope.value },
);

/** Drills the filter lets through, in the library's order. */
export const filterDrills = (
  drills: readonly PuttingDrill[],
  { ground: on, trains, minutes }: DrillFilter,
): readonly PuttingDrill[] =>
  drills.filter(
    (drill) =>
      (on === 'any' || drill.ground === 'both' || drill.ground === on) &&
      (trains === 'any' || drill.trains === trains) &&
      (minutes === 'any' || drill.minutes <= Number(minutes)),
  );

/** Starts keeping the settings; returns the function that stops it. */
export const keepPractice = (): (() => void) =>
  effect(() => void kept.save({ drillId: drillId.value, ground: wantedGround.value, filter: filter.value }));
