/**
 * An invented player who has played less: for tests that work on what he recorded, and are not about how much it is. In the page, until
 * it is loaded again: of what the app adds to his records only the first rounds, their putts and their practice get there.
 */
import type { Page } from 'playwright';

/** @param rounds how many, of the two dozen the app invents (src/store/demo.ts) */
export const inventFewer = (on: Page, rounds: number): Promise<void> =>
  on.evaluate((most) => {
    const { add } = IDBObjectStore.prototype;
    const isLeftOut = ({ id }: { id: string }): boolean =>
      Number(/^demo-(?:round|putt|practice)-(\d+)/.exec(id)?.[1] ?? 0) >= most;
    IDBObjectStore.prototype.add = function (this: IDBObjectStore, record, ...key) {
      const ofDemo = this.transaction.db.name === 'borrow-demo';
      // A request that succeeds and changes nothing.
      return ofDemo && isLeftOut(record) ? (this.count() as IDBRequest) : add.call(this, record, ...key);
    };
  }, rounds);
