/**
 * What rounds and putts of an import ask of one another and of those that are here: a putt has its round and a hole of it, a
 * stroke is there once, and a hole goes in whole or not at all (half a hole would tell a three-putt as a two-putt).
 * One refusal can be the cause of the next, so the checks are run until nothing more is refused.
 */
import type { RecordedPutt, RecordedRound } from '../../sim/index.ts';
import { type Draft, holeKey, isWritten, refuse } from './importDraft.ts';
import type { RecordsNow } from './recordsNow.ts';
import { each, type Work } from './work.ts';

/** The hole a refused record would have been on, as far as it can be told. */
const holeOfRefused = ({ record, found }: Draft<'putts'>): string | undefined => {
  if (record !== undefined) return holeKey(record);
  if (typeof found !== 'object' || found === null || !('roundId' in found) || !('hole' in found))
    return undefined;
  const { roundId, hole } = found;
  return typeof roundId === 'string' && typeof hole === 'number' ? holeKey({ roundId, hole }) : undefined;
};

/** Rounds as they would be after the import, and why one of the file would not be there. */
const roundsAfter = (drafts: readonly Draft<'rounds'>[], now: RecordsNow) => {
  const written = new Map<string, RecordedRound>();
  const refused = new Map<string, string>();
  for (const draft of drafts) {
    if (draft.record !== undefined && isWritten(draft)) written.set(draft.record.id, draft.record);
    const { found } = draft;
    if (draft.verdict === 'refuse' && typeof found === 'object' && found !== null && 'id' in found)
      refused.set(String(found.id), draft.place);
  }
  return {
    of: (id: string): RecordedRound | undefined => written.get(id) ?? now.rounds.get(id),
    refusedAt: (id: string): string | undefined => refused.get(id),
  };
};

const lackOf = (
  { roundId, hole }: RecordedPutt,
  rounds: ReturnType<typeof roundsAfter>,
): string | undefined => {
  const round = rounds.of(roundId);
  if (round !== undefined)
    return hole <= round.holes
      ? undefined
      : `Got hole ${hole} of a round of ${round.holes}, expected a hole of the round. Correct the hole, or the round’s holes.`;
  const place = rounds.refusedAt(roundId);
  return place === undefined
    ? 'Got a putt whose round is neither in the file nor here, expected its round. Add the round to the file.'
    : `Its round is refused (${place}): mend that first.`;
};

/** Putts here by hole, for the holes asked about. */
function* hereByHole(
  now: RecordsNow,
  holes: ReadonlyMap<string, unknown>,
): Work<Map<string, RecordedPutt[]>> {
  const found = new Map<string, RecordedPutt[]>();
  yield* each(
    [...now.putts.values()],
    (putt) => {
      const key = holeKey(putt);
      if (!holes.has(key)) return;
      const group = found.get(key);
      if (group === undefined) found.set(key, [putt]);
      else group.push(putt);
    },
    [0.82, 0.84],
  );
  return found;
}

export function* checkTogether(
  rounds: readonly Draft<'rounds'>[],
  putts: readonly Draft<'putts'>[],
  now: RecordsNow,
): Work<void> {
  const byHole = new Map<string, Draft<'putts'>[]>();
  const draftOf = new Map<string, Draft<'putts'>>();
  yield* each(
    putts,
    (draft) => {
      // Of equal copies the first is the one that is written.
      if (draft.record !== undefined && !draftOf.has(draft.record.id)) draftOf.set(draft.record.id, draft);
      const key = holeOfRefused(draft);
      if (key === undefined) return;
      const group = byHole.get(key);
      if (group === undefined) byHole.set(key, [draft]);
      else group.push(draft);
    },
    [0.8, 0.82],
  );
  const here = yield* hereByHole(now, byHole);
  /** A putt that is here now and stays as it is. */
  const stays = ({ id }: RecordedPutt): boolean => {
    const draft = draftOf.get(id);
    return draft === undefined || draft.verdict !== 'change';
  };

  /** Strokes of a hole after the import that would be there twice. */
  const doubled = (key: string, drafts: readonly Draft<'putts'>[]): number | undefined => {
    const seen = new Set<number>();
    const after = [
      ...(here.get(key) ?? []).filter(stays),
      ...drafts.flatMap((draft) => (draft.record && isWritten(draft) ? [draft.record] : [])),
    ];
    for (const { stroke } of after) {
      if (seen.has(stroke)) return stroke;
      seen.add(stroke);
    }
    return undefined;
  };
  const refuseWritten = (drafts: readonly Draft<'putts'>[], reason: string): boolean => {
    const written = drafts.filter(isWritten);
    for (const draft of written) refuse(draft, reason);
    return written.length > 0;
  };

  const shrunk = rounds.filter(({ record, here: before }) => record && before && record.holes < before.holes);
  const shrunkIds = new Set(shrunk.map(({ record }) => record?.id));
  /** The last hole of each shrunk round that has a putt which stays. */
  const farthestStays = (): Map<string, number> => {
    const farthest = new Map<string, number>();
    if (shrunk.length === 0) return farthest;
    for (const putt of now.putts.values())
      if (shrunkIds.has(putt.roundId) && stays(putt))
        farthest.set(putt.roundId, Math.max(putt.hole, farthest.get(putt.roundId) ?? 0));
    return farthest;
  };

  for (let again = true; again; ) {
    again = false;
    const stayed = farthestStays();
    for (const draft of shrunk) {
      if (!isWritten(draft) || draft.record === undefined) continue;
      const farthest = stayed.get(draft.record.id) ?? 0;
      if (farthest <= draft.record.holes) continue;
      refuse(
        draft,
        `Got a round of ${draft.record.holes} holes, expected at least ${farthest}: putts of that hole are recorded here.`,
      );
      again = true;
    }
    const after = roundsAfter(rounds, now);
    yield* each(
      putts,
      (draft) => {
        if (draft.record === undefined || !isWritten(draft)) return;
        const lack = lackOf(draft.record, after);
        if (lack === undefined) return;
        refuse(draft, lack);
        again = true;
      },
      [0.84, 0.92],
    );
    yield* each(
      [...byHole],
      ([key, drafts]) => {
        const refused = drafts.find(({ verdict }) => verdict === 'refuse');
        if (refused !== undefined) {
          const whole = `Another putt of this hole is refused (${refused.place}): a hole goes in whole or not at all.`;
          if (refuseWritten(drafts, whole)) again = true;
          return;
        }
        const stroke = doubled(key, drafts);
        if (stroke === undefined) return;
        const hole = drafts[0].record?.hole;
        const twice = `Got a second stroke number ${stroke} on hole ${hole} of this round, expected each number once. Correct the stroke, or give another round an id of its own.`;
        if (refuseWritten(drafts, twice)) again = true;
      },
      [0.92, 1],
    );
  }
}
