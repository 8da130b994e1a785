/** What the browser's own database holds, read past the app: as stored, not as shown. */
import type { Page } from 'playwright';

export interface OnDevice {
  readonly version: number;
  readonly tables: Readonly<Record<string, readonly Record<string, unknown>[]>>;
}

/** @param page any page of the origin */
export const readDevice = (page: Page, name = 'borrow'): Promise<OnDevice> =>
  page.evaluate(
    (wanted) =>
      new Promise<OnDevice>((resolve, reject) => {
        const opened = indexedDB.open(wanted);
        opened.onerror = () => reject(opened.error);
        opened.onsuccess = () => {
          const database = opened.result;
          const names = [...database.objectStoreNames];
          const tables: Record<string, Record<string, unknown>[]> = {};
          const done = (): void => {
            const { version } = database;
            database.close();
            resolve({ version, tables });
          };
          if (names.length === 0) return done();
          const transaction = database.transaction(names, 'readonly');
          for (const table of names) {
            const found = transaction.objectStore(table).getAll();
            found.onsuccess = () => {
              tables[table] = found.result;
            };
          }
          transaction.oncomplete = done;
          transaction.onerror = () => reject(transaction.error);
        };
      }),
    name,
  );
