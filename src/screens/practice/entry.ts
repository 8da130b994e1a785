/**
 * A score being entered, one for each drill: what it becomes when it is kept, and what is said when the device refuses. An entry leaves
 * the form only when the store has written it. Leaves out: the store (store/drillResults.ts), drawing (ScoreForm.tsx).
 */
import { signal } from '@preact/signals';
import { type DrillGround, type PuttingDrill, scoreRange } from '../../../sim/index.ts';
import type { KeptResult } from '../../store/recordSchema.ts';

export interface Entry {
  /** Of the record it becomes: a second try writes the same one. */
  readonly id: string | undefined;
  readonly score: number | undefined;
  /** Whether the green speed set on the page was that of the day. */
  readonly speedKnown: boolean;
  readonly note: string;
  readonly state: 'entering' | 'saving' | 'saved' | 'refused';
}

export interface EntryWorld {
  keep(result: KeptResult): Promise<void>;
  newId(): string;
  /** ms since 1970 */
  now(): number;
  /** Calendar day of a moment, YYYY-MM-DD. */
  dayOf(moment: number): string;
}

const NOTHING: Entry = { id: undefined, score: undefined, speedKnown: false, note: '', state: 'entering' };

const entries = signal<Readonly<Record<string, Entry>>>({});
export const entryOf = ({ id }: Pick<PuttingDrill, 'id'>): Entry => entries.value[id] ?? NOTHING;

const put = ({ id }: Pick<PuttingDrill, 'id'>, entry: Entry): void => {
  entries.value = { ...entries.peek(), [id]: entry };
};

/** What the person changes. While it is being saved it stays as it is. */
export const changeEntry = (
  drill: PuttingDrill,
  change: Partial<Pick<Entry, 'score' | 'speedKnown' | 'note'>>,
): void => {
  const entry = entryOf(drill);
  if (entry.state !== 'saving') put(drill, { ...entry, ...change, state: 'entering' });
};

/** One more or fewer, within what the drill can give; the first step begins at the least. */
export const stepScore = (drill: PuttingDrill, by: number): void => {
  const { least, most } = scoreRange(drill);
  const { score } = entryOf(drill);
  const next = score === undefined ? (by > 0 ? least + by : least) : score + by;
  changeEntry(drill, { score: Math.min(Math.max(next, least), most) });
};

/** Writes the entry. Only the store's own word empties the form. */
export const saveEntry = async (
  drill: PuttingDrill,
  ground: DrillGround,
  world: EntryWorld,
): Promise<void> => {
  const entry = entryOf(drill);
  const { score, speedKnown } = entry;
  if (score === undefined || entry.state === 'saving') return;
  const id = entry.id ?? world.newId();
  put(drill, { ...entry, id, state: 'saving' });
  const now = world.now();
  const note = entry.note.trim();
  try {
    await world.keep({
      id,
      day: world.dayOf(now),
      recordedAt: now,
      drillId: drill.id,
      version: drill.version,
      ground: ground.kind,
      ...(speedKnown ? { greenSpeed: ground.greenSpeed } : {}),
      score,
      ...(note === '' ? {} : { note }),
    });
    put(drill, { ...NOTHING, speedKnown, state: 'saved' });
  } catch {
    put(drill, { ...entry, id, state: 'refused' });
  }
};
