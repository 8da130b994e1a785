/** Writes src/store/backup.schema.json from the shapes of the program. Run it after a change of them; then `npx biome format --write`. */
import { writeFileSync } from 'node:fs';
import { backupJsonSchema } from '../support/backupJsonSchema.ts';

writeFileSync('src/store/backup.schema.json', `${JSON.stringify(backupJsonSchema(), null, 2)}\n`);
