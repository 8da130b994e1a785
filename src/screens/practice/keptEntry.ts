/**
 * Scores half entered, one for each drill, kept outside the records (state/kept.ts) so that they outlive a reload, a closed tab and a refusal
 * of the database. Found again, each is another program's text until it has passed the shape here. Leaves out: the form (entry.ts).
 */
import * as z from 'zod';
import { type PuttingDrill, scoreRange } from '../../../sim/index.ts';
import { type KeptValue, keptText, keptValue } from '../../state/kept.ts';
import { idSchema, LONGEST_NAME } from '../../store/recordSchema.ts';

/** What of an entry is kept. */
export interface KeptEntry {
  readonly id: string | undefined;
  readonly score: number | undefined;
  readonly speedKnown: boolean;
  readonly note: string;
}

const entrySchema = z.strictObject({
  id: idSchema.optional(),
  score: z.number().int().optional(),
  speedKnown: z.boolean(),
  note: z.string().max(LONGEST_NAME),
});

/** A key for each drill: two tabs with two drills do not write over one another. */
const keyOf = ({ id }: Pick<PuttingDrill, 'id'>): string => `borrow.practice.entry.1.${id}`;

const keptOf = (drill: PuttingDrill): KeptValue<KeptEntry | undefined> => {
  const { least, most } = scoreRange(drill);
  return keptValue<KeptEntry | undefined>({
    key: keyOf(drill),
    schema: entrySchema
      .refine(({ score = least }) => score >= least && score <= most)
      .transform(({ id, score, speedKnown, note }) => ({ id, score, speedKnown, note })),
    otherwise: () => undefined,
  });
};

/** A text as written by `keepEntry`; anything else is no entry, and neither is a score that the drill cannot give. */
export const parseEntry = (text: string | null, drill: PuttingDrill): KeptEntry | undefined =>
  keptOf(drill).parse(text);

export const loadEntry = (drill: PuttingDrill): KeptEntry | undefined => keptOf(drill).load();

/** Full or forbidden: it stays on the page, which says what is not saved. @param entry undefined: nothing of it would be missed */
export const keepEntry = (drill: Pick<PuttingDrill, 'id'>, entry: KeptEntry | undefined): void => {
  const text = keptText(keyOf(drill));
  if (entry === undefined) text.forget();
  else {
    const { id, score, speedKnown, note } = entry;
    text.save(JSON.stringify({ id, score, speedKnown, note }));
  }
};
