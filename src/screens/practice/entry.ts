/**
 * A score being entered, one for each drill: what it becomes when it is kept, and what is said when the device refuses. An entry leaves
 * the form only when the store has written it, and outlives a reload until then. Leaves out: the store (store/drillResults.ts), where half an
 * entry is kept (keptEntry.ts), drawing (ScoreForm.tsx).
 */
import { signal } from '@preact/signals';
import { PUTTING_DRILLS } from '../../../drills/putting-drills.ts';
import { type DrillGround, type PuttingDrill, scoreRange } from '../../../sim/index.ts';
import type { KeptResult } from '../../store/recordSchema.ts';
import { type KeptEntry, keepEntry, loadEntry } from './keptEntry.ts';

/**
 * id: of the record it becomes; a second try writes the same one. speedKnown: the green speed set on the page was that of the day.
 */
export interface Entry extends KeptEntry {
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

/** As a page before this one left them. */
const leftOver = (): Record<string, Entry> =>
  Object.fromEntries(
    PUTTING_DRILLS.flatMap((drill) => {
      const kept = loadEntry(drill);
      return kept === undefined ? [] : [[drill.id, { ...kept, state: 'entering' as const }]];
    }),
  );

const entries = signal<Readonly<Record<string, Entry>>>(leftOver());
export const entryOf = ({ id }: Pick<PuttingDrill, 'id'>): Entry => entries.value[id] ?? NOTHING;

const put = ({ id }: Pick<PuttingDrill, 'id'>, entry: Entry): void => {
  entries.value = { ...entries.peek(), [id]: entry };
  const { score, speedKnown, note, state } = entry;
  const isEmpty = state === 'saved' || (score === undefined && !speedKnown && note === '');
  keepEntry({ id }, isEmpty ? undefined : entry);
};

/** An entry whose record is there was written just before its page died: it leaves the form. @param ids of the records there are */
export const forgetWritten = (ids: ReadonlySet<string>): void => {
  for (const [id, entry] of Object.entries(entries.peek()))
    if (entry.id !== undefined && entry.state === 'entering' && ids.has(entry.id)) put({ id }, NOTHING);
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
