/** What is on this device, and the ways out: a backup, CSV files, records that cannot be read as they are. */
import { localDay } from '../../store/day.ts';
import { TABLE_NAMES } from '../../store/tables.ts';
import { counted } from './counted.ts';
import type { DataSession } from './session.ts';
import { BACKUP_HOLDS, overviewSentence, PERSISTED_WORDS, roomWords } from './words.ts';

const isBusy = ({ stage }: DataSession): boolean => stage.value.kind === 'working';

const Unreadable = ({ on }: { on: DataSession }) => {
  const found = on.unreadable.value;
  const count = found === undefined ? 0 : TABLE_NAMES.reduce((sum, table) => sum + found[table].length, 0);
  if (count === 0) return null;
  return (
    <div class="data-row">
      <p class="problem">
        {counted(count, 'record')} cannot be read, perhaps made by a later version of this page; left
        untouched, and not part of backups.
      </p>
      <button type="button" onClick={on.exportUnreadable}>
        Save {count === 1 ? 'it' : 'them'} as found
      </button>
    </div>
  );
};

export const OverviewCard = ({ on }: { on: DataSession }) => {
  const overview = on.overview.value;
  const made = overview?.lastBackup;
  return (
    <section class="card" aria-label="Your data">
      <h1 data-testid="overview">
        {overview === undefined
          ? 'Looking up your records…'
          : overviewSentence(
              overview.holding,
              made === undefined ? undefined : localDay(made),
              localDay(Date.now()),
            )}
      </h1>
      <p class="quiet">
        Everything stays in this browser, on this device: nothing is sent anywhere. A backup is one file with
        everything: {BACKUP_HOLDS}.
      </p>
      <div class="data-actions">
        <button type="button" class="data-main" disabled={isBusy(on)} onClick={() => void on.backUp()}>
          Make a backup
        </button>
      </div>
      <Unreadable on={on} />
    </section>
  );
};

export const ExportCard = ({ on }: { on: DataSession }) => (
  <section class="card" aria-label="For a spreadsheet">
    <h2>For a spreadsheet</h2>
    <p>
      One line per putt, or per practice set; lengths in metres. What you change there comes back through
      “Open a file”.
    </p>
    <div class="data-actions">
      <button type="button" disabled={isBusy(on)} onClick={() => void on.exportPutts()}>
        Putts as CSV
      </button>
      <button type="button" disabled={isBusy(on)} onClick={() => void on.exportPractice()}>
        Practice as CSV
      </button>
    </div>
  </section>
);

export const StorageCard = ({ on }: { on: DataSession }) => {
  const storage = on.overview.value?.storage;
  return (
    <section class="card" aria-label="Storage" data-testid="storage">
      <h2>Storage</h2>
      {storage === undefined ? (
        <p class="quiet">Asking the browser…</p>
      ) : (
        <>
          <p>{PERSISTED_WORDS[storage.persisted]}</p>
          <p class="quiet">{roomWords(storage)}</p>
          {storage.persisted === 'no' && (
            <div class="data-actions">
              <button type="button" onClick={() => void on.askToPersist()}>
                Ask the browser to keep them
              </button>
            </div>
          )}
        </>
      )}
    </section>
  );
};
