/** The records of a page in a real browser, read and written past the app, by IndexedDB's own calls. */
import type { Page } from 'playwright';
import type { RawRecords } from '../../src/store/recordsNow.ts';
import { TABLE_NAMES, type TableName } from '../../src/store/tables.ts';

export const pageRecords = (page: Page, database = 'borrow'): Promise<RawRecords> =>
  page.evaluate(
    ({ name, stores }) =>
      new Promise<RawRecords>((resolve, reject) => {
        const opening = indexedDB.open(name);
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction(stores, 'readonly');
          const asked = stores.map((store) => transaction.objectStore(store).getAll());
          transaction.oncomplete = () => {
            opening.result.close();
            resolve(Object.fromEntries(stores.map((store, index) => [store, asked[index].result])) as never);
          };
          transaction.onerror = () => reject(transaction.error);
        };
      }),
    { name: database, stores: [...TABLE_NAMES] },
  );

/** Empties the tables, then puts records there as they are. */
export const setPageRecords = (page: Page, records: Partial<Record<TableName, unknown[]>> = {}) =>
  page.evaluate(
    ({ stores, given }) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('borrow');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction(stores, 'readwrite');
          for (const store of stores) {
            transaction.objectStore(store).clear();
            for (const record of given[store as keyof typeof given] ?? [])
              transaction.objectStore(store).put(record);
          }
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
          transaction.onerror = () => reject(transaction.error);
        };
      }),
    { stores: [...TABLE_NAMES], given: records },
  );
