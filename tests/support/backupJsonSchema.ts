/** The published schema of backup files, as the shapes of the program give it. `npx tsx tests/bench/make-backup-schema.ts` writes it. */
import * as z from 'zod';
import { backupSchema } from '../../src/store/backup.ts';

export const backupJsonSchema = (): unknown => ({
  ...z.toJSONSchema(backupSchema),
  title: 'Backup of Borrow',
  description:
    'Everything a player recorded, in one file. Lengths in metres, moments in milliseconds since 1970, days as the calendar of the player said. What a schema cannot say: a putt is missed exactly when it was struck and not holed; high and low are sides of putts that break, left and right of straight ones; holes belong to their round; ids are whole characters without blanks at their ends, and each is there once in its table; an answer belongs to one question; an end of an interval that is left out is not known. Files of version 1 had readSets alone, without "day"; measurements and plans begin with version 4.',
});
