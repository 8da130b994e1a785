/**
 * Scores half entered, one for each drill, kept outside the records (localStorage) so that they outlive a reload, a closed tab and a refusal
 * of the database. Found again, each is another program's text until it has passed the shape here. Leaves out: the form (entry.ts).
 */
import * as z from 'zod';
import { type PuttingDrill, scoreRange } from '../../../sim/index.ts';
import { idSchema, LONGEST_NAME } from '../../store/recordSchema.ts';

/** What of an entry is kept. */
export interface KeptEntry {
  readonly id: string | undefined;
  readonly score: number | undefined;
  readonly speedKnown: boolean;
  readonly note: string;
}

/** A key for each drill: two tabs with two drills do not write over one another. */
const keyOf = ({ id }: Pick<PuttingDrill, 'id'>): string => `borrow.practice.entry.1.${id}`;

const entrySchema = z.strictObject({
  id: idSchema.optional(),
  score: z.number().int().optional(),
  speedKnown: z.boolean(),
  note: z.string().max(LONGEST_NAME),
});

/** A text as written by `keepEntry`; anything else is no entry, and neither is a score that the drill cannot give. */
export const parseEntry = (text: string | null, drill: PuttingDrill): KeptEntry | undefined => {
  if (text === null) return undefined;
  try {
    const { id, score, speedKnown, note } = entrySchema.parse(JSON.parse(text));
    const { least, most } = scoreRange(drill);
    return score === undefined || (score >= least && score <= most)
      ? { id, score, speedKnown, note }
      : undefined;
  } catch {
    return undefined;
  }
};

export const loadEntry = (drill: PuttingDrill): KeptEntry | undefined => {
  try {
    return parseEntry(globalThis.localStorage?.getItem(keyOf(drill)) ?? null, drill);
  } catch {
    return undefined;
  }
};

/** @param entry undefined: nothing of it would be missed */
export const keepEntry = (drill: Pick<PuttingDrill, 'id'>, entry: KeptEntry | undefined): void => {
  try {
    if (entry === undefined) globalThis.localStorage?.removeItem(keyOf(drill));
    else {
      const { id, score, speedKnown, note } = entry;
      globalThis.localStorage?.setItem(keyOf(drill), JSON.stringify({ id, score, speedKnown, note }));
    }
  } catch {
    // Full or forbidden: it stays on the page, which says what is not saved.
  }
};
