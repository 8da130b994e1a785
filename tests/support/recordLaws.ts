/** What must hold of all records in a database, whatever was imported. Written without the program's own checks. */
import type { RawRecords } from '../../src/store/recordsNow.ts';
import { TABLE_NAMES, TABLES } from '../../src/store/tables.ts';

/** Sentences about what does not hold; empty: all is well. */
export const brokenLaws = (raw: RawRecords): string[] => {
  const broken: string[] = [];
  for (const table of TABLE_NAMES)
    for (const record of raw[table])
      if (!TABLES[table].schema.safeParse(record).success)
        broken.push(`${table}: a record the gate does not let pass`);
  const rounds = raw.rounds as { id: string; holes: number; endedAt?: number }[];
  const putts = raw.putts as { roundId: string; hole: number; stroke: number }[];
  const strokes = new Set<string>();
  for (const { roundId, hole, stroke } of putts) {
    const round = rounds.find(({ id }) => id === roundId);
    if (round === undefined) broken.push(`a putt of no round (${roundId})`);
    else if (hole > round.holes) broken.push(`hole ${hole} of a round of ${round.holes}`);
    const key = JSON.stringify([roundId, hole, stroke]);
    if (strokes.has(key)) broken.push(`stroke ${stroke} of hole ${hole} twice`);
    strokes.add(key);
  }
  if (rounds.some(({ endedAt }) => endedAt === undefined)) broken.push('a round opened by an import');
  return broken;
};
