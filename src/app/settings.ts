/**
 * What the person has chosen for every screen: units, theme, their own errors, whether putts skid, which balls drop, the hand
 * that holds the telephone on the course, and whether they write down more of a putt. Kept in localStorage; anything found
 * there that is not what we would have written is dropped, field by field, so an old or damaged entry breaks nothing.
 */
import { effect, signal } from '@preact/signals';
import { CAPTURES, type CaptureName, degreesToRadians, type Player, presetOf } from '../../sim/index.ts';
import type { Units } from '../text/format.ts';

export type Theme = 'auto' | 'light' | 'dark';
/** The hand that holds the telephone on the course. */
export type Hand = 'right' | 'left';

const KEY = 'borrow.settings.1';

/** Allowed range of each error, SI: slider ends and the gate for loaded values. */
export const PLAYER_RANGES: Readonly<Record<keyof Player, { readonly min: number; readonly max: number }>> = {
  lineSd: { min: degreesToRadians(0.1), max: degreesToRadians(4) },
  paceSd: { min: 0.01, max: 0.3 },
  readSd: { min: 0, max: 0.8 },
  readBias: { min: -0.6, max: 0.6 },
  paceBias: { min: -0.2, max: 0.2 },
};

/** Length of a step that is believed, m. */
export const STEP_RANGE = { min: 0.4, max: 1.3 } as const;

/** Whom a visitor plays as before picking another: a single-digit player, which is who comes. */
const FIRST_PRESET = 'handicap-6';
const firstPlayer = (): Player => {
  const preset = presetOf(FIRST_PRESET);
  if (preset === undefined)
    throw new Error(`Got no preset ${FIRST_PRESET}; expected it in player/presets.ts.`);
  return preset.player;
};
export const DEFAULT_PLAYER: Player = firstPlayer();

export interface StoredSettings {
  readonly units: Units;
  readonly theme: Theme;
  readonly player: Player;
  /** Whether putts skid before they roll. */
  readonly skid: boolean;
  readonly capture: CaptureName;
  readonly hand: Hand;
  /** Whether the recording form stays open on what may be left out. */
  readonly fullRecord: boolean;
  /** The person's own step, m; left out: not measured. */
  readonly step?: number;
}

const DEFAULTS: StoredSettings = {
  units: 'imperial',
  theme: 'auto',
  player: DEFAULT_PLAYER,
  skid: false,
  capture: CAPTURES[0],
  hand: 'right',
  fullRecord: false,
};

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const loadPlayer = (value: unknown): Player => {
  if (!isRecord(value)) return DEFAULT_PLAYER;
  const player: Record<string, number> = { ...DEFAULT_PLAYER };
  for (const [name, range] of Object.entries(PLAYER_RANGES)) {
    const found = value[name];
    if (typeof found !== 'number' || !(found >= range.min && found <= range.max)) return DEFAULT_PLAYER;
    player[name] = found;
  }
  return player as unknown as Player;
};

const loadStep = (value: unknown): number | undefined =>
  typeof value === 'number' && value >= STEP_RANGE.min && value <= STEP_RANGE.max ? value : undefined;

/** Reads a stored text; whatever is missing or wrong takes its default. */
export const parseSettings = (text: string | null): StoredSettings => {
  if (text === null) return DEFAULTS;
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch {
    return DEFAULTS;
  }
  if (!isRecord(found)) return DEFAULTS;
  return {
    units: found.units === 'metric' ? 'metric' : 'imperial',
    theme: found.theme === 'light' || found.theme === 'dark' ? found.theme : 'auto',
    player: loadPlayer(found.player),
    skid: found.skid === true,
    capture: CAPTURES.find((name) => name === found.capture) ?? CAPTURES[0],
    hand: found.hand === 'left' ? 'left' : 'right',
    fullRecord: found.fullRecord === true,
    step: loadStep(found.step),
  };
};

/** Storage can be forbidden (private windows, sandboxed frames): then settings last for the visit only. */
const readStorage = (): string | null => {
  try {
    return globalThis.localStorage?.getItem(KEY) ?? null;
  } catch {
    return null;
  }
};
const writeStorage = (text: string): void => {
  try {
    globalThis.localStorage?.setItem(KEY, text);
  } catch {
    // Nothing is lost that the person would miss during this visit.
  }
};

const loaded = parseSettings(readStorage());

export const units = signal<Units>(loaded.units);
export const theme = signal<Theme>(loaded.theme);
/** The person's errors, SI (radians and shares). */
export const player = signal<Player>(loaded.player);
export const skid = signal(loaded.skid);
export const capture = signal<CaptureName>(loaded.capture);
export const hand = signal<Hand>(loaded.hand);
export const fullRecord = signal(loaded.fullRecord);
/** The person's step, m; undefined: not measured. */
export const step = signal<number | undefined>(loaded.step);

/** The signals as one object, for screens that take them as a prop. */
export const settings = { units, theme, player };
export type Settings = typeof settings;

/** Starts keeping the settings; returns the function that stops it. */
export const keepSettings = (): (() => void) =>
  effect(() =>
    writeStorage(
      JSON.stringify({
        units: units.value,
        theme: theme.value,
        player: player.value,
        skid: skid.value,
        capture: capture.value,
        hand: hand.value,
        fullRecord: fullRecord.value,
        step: step.value,
      } satisfies StoredSettings),
    ),
  );
