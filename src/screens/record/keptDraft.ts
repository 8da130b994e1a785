/**
 * What was tapped and is not saved yet, kept outside the records (state/kept.ts) so that it outlives a reload, a closed tab and a
 * refusal of the database. Found again, it is another program's text until it has passed the shape here.
 */
import * as z from 'zod';
import { keptValue } from '../../state/kept.ts';
import {
  BREAK_WAYS,
  CLIMBS,
  LONGEST_PUTT,
  MISS_REACHES,
  MISS_SIDES,
  PACES_MEANT,
  SHORTEST_PUTT,
  SLOPES_FELT,
} from '../../store/recordSchema.ts';
import type { PuttDraft } from './draft.ts';

const length = z.number().min(SHORTEST_PUTT).max(LONGEST_PUTT);
const id = z.string().min(8).max(64);

const draftSchema = z.strictObject({
  id,
  roundId: id,
  hole: z.number().int().min(1).max(18),
  offGreen: z.boolean(),
  distance: length.optional(),
  handedOn: length.optional(),
  climb: z.enum(CLIMBS).optional(),
  breaks: z.enum(BREAK_WAYS).optional(),
  slopeFelt: z.enum(SLOPES_FELT).optional(),
  paceMeant: z.enum(PACES_MEANT).optional(),
  startedAsMeant: z.boolean().optional(),
  paceAsMeant: z.boolean().optional(),
  described: z.boolean(),
  result: z.enum(['holed', 'missed', 'conceded']).optional(),
  side: z.enum(MISS_SIDES).optional(),
  reach: z.enum(MISS_REACHES).optional(),
  leave: length.optional(),
  looked: z.boolean(),
  asks: z.enum(['putt', 'result', 'leave', 'check']).optional(),
}) satisfies z.ZodType<PuttDraft>;

const kept = keptValue<PuttDraft | undefined>({
  key: 'borrow.putt.draft.1',
  schema: draftSchema,
  otherwise: () => undefined,
});

/** A text as written by `keepDraft`; anything else is no draft. */
export const parseDraft = kept.parse;
export const loadDraft = kept.load;
/** Full or forbidden: the draft stays on the page, which says what is not saved. */
export const keepDraft = (draft: PuttDraft | undefined): void => void kept.save(draft);
