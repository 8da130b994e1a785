/** Small facts about the records: when the last backup was handed over. */
import type { Database } from './database.ts';

/** ms since 1970; undefined: never. */
export const lastBackup = async (database: Database): Promise<number | undefined> =>
  (await database.notes.get('lastBackup'))?.at;

/** Called once the file has left the page. @param at ms since 1970 */
export const noteBackup = async (database: Database, at: number): Promise<void> => {
  await database.notes.put({ name: 'lastBackup', at });
};
