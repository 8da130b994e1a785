/**
 * What the person has chosen for every screen: units, theme, whose errors are played with, whether putts skid, which balls drop, the hand
 * that holds the telephone on the course, and whether they write down more of a putt. Kept on the device (kept.ts); anything found
 * there that is not what we would have written is dropped, field by field, so an old or damaged entry breaks nothing.
 */
import { computed, effect, signal } from '@preact/signals';
import * as z from 'zod';
import {
  familyOf,
  type KnownPlayer,
  type Member,
  narrowedPlayer,
  OFFERED_CAPTURES,
  type OfferedCapture,
  type Player,
  type PlayerOrigin,
  type Preset,
  presetOf,
  type Sitting,
  setByHand,
} from '../../sim/index.ts';
import type { Units } from '../text/format.ts';
import type { TakenOver } from '../text/olderErrors.ts';
import type { Chosen } from './chosen.ts';
import { type FitSource, type KeptFit, keptFitOf, playerOfFit } from './fittedPlayer.ts';
import { keptText, keptValue } from './kept.ts';
import { chosenOf, olderPlayerOf } from './olderErrors.ts';
import { PLAYER_RANGES } from './playerRanges.ts';
import { replaces, sameSitting, sittingsOf } from './sittings.ts';

export type Theme = 'auto' | 'light' | 'dark';
/** The hand that holds the telephone on the course. */
export type Hand = 'right' | 'left';

const KEY = 'borrow.settings.2';
/** Where settings and fits were while reading was one number; taken over once, then removed. */
const OLDER_KEY = 'borrow.settings.1';
const older = keptText(OLDER_KEY);
const olderFit = keptText('borrow.fit.1');

/** Length of a step that is believed, m. */
export const STEP_RANGE = { min: 0.4, max: 1.3 } as const;

/** Usual paces that are believed, m past. */
export const MEANT_PACE_RANGE = { min: 0.02, max: 1.5 } as const;

/** Whom a visitor plays as before picking another: a single-digit player, which is who comes. */
const FIRST_PRESET = 'handicap-6';
const firstPlayer = (): Player => {
  const preset = presetOf(FIRST_PRESET);
  if (preset === undefined)
    throw new Error(`Got no preset ${FIRST_PRESET}; expected it in player/presets.ts.`);
  return preset.player;
};
export const DEFAULT_PLAYER: Player = firstPlayer();

const FIRST_CHOICE: Chosen = { origin: { kind: 'preset', id: FIRST_PRESET }, player: DEFAULT_PLAYER };

export interface StoredSettings {
  readonly units: Units;
  readonly theme: Theme;
  readonly chosen: Chosen;
  /** The person has not put the sentence away yet that says how older errors were taken over. */
  readonly takenOver?: TakenOver;
  /** Whether putts skid before they roll. */
  readonly skid: boolean;
  readonly capture: OfferedCapture;
  readonly hand: Hand;
  /** Whether the recording form stays open on what may be left out. */
  readonly fullRecord: boolean;
  /** The person's own step, m; left out: not measured. */
  readonly step?: number;
  /** The pace they usually putt at, m past, or that they would not say; left out: not asked yet. */
  readonly meantPace?: number | 'skipped';
}

const DEFAULTS: StoredSettings = {
  units: 'imperial',
  theme: 'auto',
  chosen: FIRST_CHOICE,
  skid: false,
  capture: OFFERED_CAPTURES[0],
  hand: 'right',
  fullRecord: false,
};

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const loadPlayer = (value: unknown): Player | undefined => {
  if (!isRecord(value)) return undefined;
  const player: Record<string, number> = { ...DEFAULT_PLAYER };
  for (const [name, range] of Object.entries(PLAYER_RANGES)) {
    const found = value[name];
    if (typeof found !== 'number' || !(found >= range.min && found <= range.max)) return undefined;
    player[name] = found;
  }
  return player as unknown as Player;
};

const loadOrigin = (value: unknown): PlayerOrigin | undefined => {
  if (!isRecord(value)) return undefined;
  if (value.kind === 'byHand') return { kind: 'byHand' };
  if (value.kind === 'preset' && typeof value.id === 'string') {
    const narrowedBy = sittingsOf(value.narrowedBy);
    return { kind: 'preset', id: value.id, ...(narrowedBy.length > 0 ? { narrowedBy } : {}) };
  }
  if (value.kind === 'fit' && (value.source === 'own' || value.source === 'demo'))
    return { kind: 'fit', source: value.source };
  return undefined;
};

const loadChosen = (value: unknown): Chosen => {
  if (!isRecord(value)) return FIRST_CHOICE;
  const origin = loadOrigin(value.origin);
  const player = loadPlayer(value.player);
  return origin && player ? { origin, player } : FIRST_CHOICE;
};

const loadTakenOver = (value: unknown): TakenOver | undefined =>
  isRecord(value) && (value.as === 'preset' || value.as === 'byHand')
    ? { as: value.as, fitDropped: value.fitDropped === true }
    : undefined;

const loadStep = (value: unknown): number | undefined =>
  typeof value === 'number' && value >= STEP_RANGE.min && value <= STEP_RANGE.max ? value : undefined;

const loadMeantPace = (value: unknown): number | 'skipped' | undefined => {
  if (value === 'skipped') return value;
  const { min, max } = MEANT_PACE_RANGE;
  return typeof value === 'number' && value >= min && value <= max ? value : undefined;
};

/** What is kept, field by field: whatever is missing or wrong takes its default. */
const loadSettings = (value: unknown): StoredSettings => {
  const found = isRecord(value) ? value : {};
  return {
    units: found.units === 'metric' ? 'metric' : 'imperial',
    theme: found.theme === 'light' || found.theme === 'dark' ? found.theme : 'auto',
    chosen: loadChosen(found.chosen),
    takenOver: loadTakenOver(found.takenOver),
    skid: found.skid === true,
    capture: OFFERED_CAPTURES.find((name) => name === found.capture) ?? OFFERED_CAPTURES[0],
    hand: found.hand === 'left' ? 'left' : 'right',
    fullRecord: found.fullRecord === true,
    step: loadStep(found.step),
    meantPace: loadMeantPace(found.meantPace),
  };
};

const kept = keptValue<StoredSettings>({
  key: KEY,
  schema: z.unknown().transform(loadSettings),
  otherwise: () => DEFAULTS,
});
/** Reads a stored text. */
export const parseSettings = kept.parse;

const olderPlayer = keptValue<unknown>({
  key: OLDER_KEY,
  schema: z.object({ player: z.unknown().optional() }).transform(({ player }) => player),
  otherwise: () => undefined,
});
/**
 * Reads a text of the version before. All but the errors have the same names there.
 * @param hadFit a fit of that version was kept
 */
export const parseOlderSettings = (text: string, hadFit: boolean): StoredSettings => {
  const player = olderPlayerOf(olderPlayer.parse(text));
  const chosen = player ? chosenOf(player, DEFAULT_PLAYER) : FIRST_CHOICE;
  const as = chosen.origin.kind === 'preset' ? 'preset' : 'byHand';
  return {
    ...parseSettings(text),
    chosen,
    takenOver: player || hadFit ? { as, fitDropped: hadFit } : undefined,
  };
};

const load = (): StoredSettings => {
  const text = older.load();
  return keptText(KEY).load() === undefined && text !== undefined
    ? parseOlderSettings(text, olderFit.load() !== undefined)
    : kept.load();
};
const loaded = load();

export const units = signal<Units>(loaded.units);
export const theme = signal<Theme>(loaded.theme);
const chosen = signal<Chosen>(loaded.chosen);
/** How older errors were taken over, until the person has put the sentence away. */
export const takenOver = signal<TakenOver | undefined>(loaded.takenOver);
export const skid = signal(loaded.skid);
export const capture = signal<OfferedCapture>(loaded.capture);
export const hand = signal<Hand>(loaded.hand);
export const fullRecord = signal(loaded.fullRecord);
/** The person's step, m; undefined: not measured. */
export const step = signal<number | undefined>(loaded.step);
/** The pace the person usually putts at, m past; undefined: not asked yet. */
export const meantPace = signal<number | 'skipped' | undefined>(loaded.meantPace);

const alike = (players: readonly Player[]): Member[] =>
  players.map((one) => ({ player: one, weight: 1 / players.length }));

/** The fit whose player is in use; undefined: they are a preset's or set by hand. */
export const fitInUse = computed((): KeptFit | undefined => {
  const { origin } = chosen.value;
  return origin.kind === 'fit' ? keptFitOf(origin.source) : undefined;
});

/** The preset in use, narrowed or not; undefined: they are a fit's or set by hand. */
export const presetInUse = computed((): Preset | undefined => {
  const { origin } = chosen.value;
  return origin.kind === 'preset' ? presetOf(origin.id) : undefined;
});
const NOTHING: readonly Sitting[] = [];
/** What has narrowed the family of the preset in use, in the order in which it was taken. */
export const narrowedBy = computed((): readonly Sitting[] => {
  const { origin } = chosen.value;
  return (origin.kind === 'preset' && origin.narrowedBy) || NOTHING;
});

/**
 * Whose errors every screen works with, where these come from, and who else it may be. A preset and a fit are looked up anew: a record
 * fitted again takes its player along. What can no longer be looked up leaves its numbers, as if set by hand.
 */
export const knownPlayer = computed((): KnownPlayer => {
  const { origin, player: numbers } = chosen.value;
  const fit = fitInUse.value;
  if (fit !== undefined) return { player: playerOfFit(fit), origin, members: alike(fit.answer.players) };
  const preset = presetInUse.value;
  if (preset === undefined) return setByHand(numbers);
  return narrowedPlayer({ player: preset.player, origin, members: familyOf(preset) }, narrowedBy.value);
});

/** The person's errors alone, SI (radians and shares). */
export const player = computed((): Player => knownPlayer.value.player);

/** Does nothing where there is no such preset. */
export const choosePreset = (id: string): void => {
  const preset = presetOf(id);
  if (preset) chosen.value = { origin: { kind: 'preset', id }, player: preset.player };
};
const setNarrowedBy = (sittings: readonly Sitting[]): void => {
  const preset = presetInUse.peek();
  if (preset === undefined) return;
  const origin = {
    kind: 'preset',
    id: preset.id,
    ...(sittings.length > 0 ? { narrowedBy: sittings } : {}),
  } as const;
  chosen.value = { origin, player: preset.player };
};
export const hasNarrowed = (sitting: Sitting): boolean =>
  narrowedBy.value.some((one) => sameSitting(one, sitting));
/** Narrows the family of the preset in use; nothing where none is. What this sitting stands for is taken out. */
export const narrowBy = (sitting: Sitting): void =>
  setNarrowedBy([
    ...narrowedBy.peek().filter((one) => !sameSitting(one, sitting) && !replaces(sitting, one)),
    sitting,
  ]);
/** As if that sitting had never been. */
export const widenBy = (sitting: Sitting): void => {
  if (hasNarrowed(sitting)) setNarrowedBy(narrowedBy.peek().filter((one) => !sameSitting(one, sitting)));
};
/** The preset as it was before anything narrowed its family. */
export const backToPreset = (): void => setNarrowedBy([]);

/** Does nothing where there is no such fit. */
export const chooseFit = (source: FitSource): void => {
  const fit = keptFitOf(source);
  if (fit) chosen.value = { origin: { kind: 'fit', source }, player: playerOfFit(fit) };
};
/** Some of the errors as the person has them; the others stay as they are. */
export const setErrors = (errors: Partial<Player>): void => {
  chosen.value = { origin: { kind: 'byHand' }, player: { ...player.peek(), ...errors } };
};

/** The signals as one object, for screens that take them as a prop. */
export const settings = { units, theme, player };
export type Settings = typeof settings;

/** Starts keeping the settings; returns the function that stops it. */
export const keepSettings = (): (() => void) =>
  effect(() => {
    const done = kept.save({
      units: units.value,
      theme: theme.value,
      chosen: { origin: chosen.value.origin, player: player.value },
      takenOver: takenOver.value,
      skid: skid.value,
      capture: capture.value,
      hand: hand.value,
      fullRecord: fullRecord.value,
      step: step.value,
      meantPace: meantPace.value,
    });
    // Only now: whoever could not write keeps what there was.
    if (done) {
      older.forget();
      olderFit.forget();
    }
  });
