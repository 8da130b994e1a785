/**
 * The data screen's state: what is on the device, and the one piece of work that runs: a backup, an export, a file being read,
 * its plan waiting for the person, the import. Answers for: the order of things, progress and cancelling. Leaves out: drawing,
 * words (screens/data/words.ts), what files hold (src/store). What it needs of the world is handed in.
 */
import { type Signal, signal } from '@preact/signals';
import { makeBackup } from '../../store/backup.ts';
import { carryOut } from '../../store/carryOut.ts';
import { practiceCsv, puttsCsv } from '../../store/csv.ts';
import type { Database } from '../../store/database.ts';
import { LARGEST_FILE, readImportFile } from '../../store/fileText.ts';
import type { ImportFile } from '../../store/importFile.ts';
import { type ImportPlan, type PlanOptions, planImport, writtenBy } from '../../store/importPlan.ts';
import { lastBackup, noteBackup } from '../../store/notes.ts';
import type { Persisted, StorageState } from '../../store/persistence.ts';
import { judgeRecords, type RawRecords, type RecordsNow, rawRecords } from '../../store/recordsNow.ts';
import { perTable, TABLE_NAMES } from '../../store/tables.ts';
import { inSlices, type SlicesOptions, type Work } from '../../store/work.ts';
import { counted } from './counted.ts';
import type { Holding } from './words.ts';

export interface DataWorld {
  openDatabase(): Promise<Database>;
  /** ms since 1970 */
  now(): number;
  /** Calendar day of a moment, YYYY-MM-DD. */
  dayOf(moment: number): string;
  handOver(name: string, type: string, pieces: readonly string[]): void;
  storageState(): Promise<StorageState>;
  askToPersist(): Promise<Persisted>;
}

export interface Overview {
  readonly holding: Holding;
  /** ms since 1970; undefined: never. */
  readonly lastBackup: number | undefined;
  readonly storage: StorageState;
}

export interface Preview {
  readonly kind: 'preview';
  readonly name: string;
  readonly file: ImportFile;
  readonly plan: ImportPlan;
  readonly differing: NonNullable<PlanOptions['differing']>;
  /** The person wants the rest without what is refused. */
  readonly leaveOut: boolean;
  /** What happened to the last try, in a sentence. */
  readonly note: string | undefined;
}

export type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly what: string; readonly share: number }
  | Preview
  /** What came of the last piece of work; a problem is an alert. */
  | { readonly kind: 'said'; readonly problem: boolean; readonly sentence: string };

export interface DataSession {
  readonly overview: Signal<Overview | undefined>;
  /** Records that cannot be read; undefined until looked through. */
  readonly unreadable: Signal<RawRecords | undefined>;
  readonly stage: Signal<Stage>;
  /** Looks at the device anew. */
  look(): Promise<void>;
  backUp(): Promise<void>;
  exportPutts(): Promise<void>;
  exportPractice(): Promise<void>;
  exportUnreadable(): void;
  open(file: File): Promise<void>;
  chooseDiffering(differing: Preview['differing']): Promise<void>;
  chooseLeaveOut(leaveOut: boolean): void;
  carryOut(): Promise<void>;
  /** Ends the work that runs, or puts the plan aside. */
  cancel(): void;
  askToPersist(): Promise<void>;
}

const CHANGED =
  'The records on this device changed meanwhile, in another tab perhaps. Nothing was imported: this is the plan for the records as they are now.';
const DEVICE_REFUSED =
  'The device refused to write (full or forbidden storage). Nothing was imported: free some space and try again.';
const CANCELLED = 'Cancelled: nothing was imported.';

export const createDataSession = (world: DataWorld): DataSession => {
  const overview = signal<Overview | undefined>(undefined);
  const unreadable = signal<RawRecords | undefined>(undefined);
  const stage = signal<Stage>({ kind: 'idle' });
  let running: AbortController | undefined;
  /** An import is being written: what became of it is said by itself alone. */
  let writing = false;

  const say = (sentence: string, problem = false): void => {
    stage.value = { kind: 'said', problem, sentence };
  };

  /** Runs one piece of work, the one before it ended; a cancelled one leaves the stage to whoever cancelled it. */
  const work = async (
    what: string,
    act: (options: Required<SlicesOptions>) => Promise<void>,
  ): Promise<void> => {
    if (writing) return;
    running?.abort();
    const mine = new AbortController();
    running = mine;
    stage.value = { kind: 'working', what, share: 0 };
    const onProgress = (share: number): void => {
      if (!mine.signal.aborted) stage.value = { kind: 'working', what, share };
    };
    try {
      await act({ onProgress, signal: mine.signal });
    } catch (problem) {
      if (mine.signal.aborted) return;
      say(
        `It did not work (${problem instanceof Error ? problem.message : String(problem)}). Nothing was changed: load the page again and try once more.`,
        true,
      );
    } finally {
      if (running === mine) running = undefined;
    }
  };

  /** A part of the progress of the whole. */
  const part = ({ onProgress, signal: ended }: Required<SlicesOptions>, from: number, to: number) => ({
    onProgress: (share: number) => onProgress(from + (to - from) * share),
    signal: ended,
  });

  const recordsNow = async (options: Required<SlicesOptions>, from = 0, to = 0.4): Promise<RecordsNow> => {
    const raw = await rawRecords(await world.openDatabase());
    const now = await inSlices(judgeRecords(raw), part(options, from, to));
    unreadable.value = now.unreadable;
    return now;
  };

  const look = async (): Promise<void> => {
    const database = await world.openDatabase();
    const tables = TABLE_NAMES.map((name) => database.table(name));
    const counts = await database.transaction('r', tables, () =>
      Promise.all(tables.map((table) => table.count())),
    );
    const holding = perTable((name) => counts[TABLE_NAMES.indexOf(name)]);
    overview.value = {
      holding,
      lastBackup: await lastBackup(database),
      storage: await world.storageState(),
    };
  };

  const fileName = (what: string, ending: string): string =>
    `borrow-${what}-${world.dayOf(world.now())}.${ending}`;

  const showPlan = async (
    { name, file, differing, leaveOut, note }: Omit<Preview, 'kind' | 'plan'>,
    options: Required<SlicesOptions>,
  ): Promise<void> => {
    const now = await recordsNow(options, 0.3, 0.6);
    const plan = await inSlices(planImport(file, now, { differing }), part(options, 0.6, 1));
    stage.value = { kind: 'preview', name, file, plan, differing, leaveOut, note };
  };

  const exportCsv = (what: string, textOf: (now: RecordsNow) => Work<string[]>): Promise<void> =>
    work(`Writing your ${what}`, async (options) => {
      const now = await recordsNow(options);
      const pieces = await inSlices(textOf(now), part(options, 0.4, 1));
      const name = fileName(what, 'csv');
      world.handOver(name, 'text/csv', pieces);
      say(`Handed to the browser as ${name}.`);
    });

  return {
    overview,
    unreadable,
    stage,
    async look() {
      await look();
      if (unreadable.peek() === undefined) {
        const raw = await rawRecords(await world.openDatabase());
        unreadable.value ??= (await inSlices(judgeRecords(raw))).unreadable;
      }
    },
    backUp: () =>
      work('Writing the backup', async (options) => {
        // Asked before anything takes time: a browser listens while the person's act is fresh.
        const asked = world.askToPersist();
        const now = await recordsNow(options);
        const madeAt = world.now();
        const pieces = await inSlices(makeBackup(now, madeAt), part(options, 0.4, 1));
        const name = fileName('backup', 'json');
        world.handOver(name, 'application/json', pieces);
        await noteBackup(await world.openDatabase(), madeAt);
        await look();
        // The answer may wait for the person, and changes nothing of the backup.
        void asked.then(look);
        say(`Handed to the browser as ${name}. Keep it somewhere else than on this device.`);
      }),
    exportPutts: () => exportCsv('putts', (now) => puttsCsv(now.rounds.values(), now.putts.values())),
    exportPractice: () => exportCsv('practice', (now) => practiceCsv(now.practice.values())),
    exportUnreadable() {
      const found = unreadable.peek();
      if (found !== undefined)
        world.handOver(fileName('unreadable', 'json'), 'application/json', [JSON.stringify(found, null, 1)]);
    },
    open: (file) =>
      work(`Reading ${file.name}`, async (options) => {
        if (file.size > LARGEST_FILE) {
          say(
            `${file.name}: Got ${counted(file.size, 'byte')}, expected ${counted(LARGEST_FILE, 'byte')} at most. Choose another file.`,
            true,
          );
          return;
        }
        const bytes = new Uint8Array(await file.arrayBuffer());
        const read = await inSlices(readImportFile(bytes, { dayOf: world.dayOf }), part(options, 0, 0.3));
        if (!read.ok) {
          say(`${file.name}: ${read.problem} Nothing was imported.`, true);
          return;
        }
        await showPlan(
          { name: file.name, file: read.file, differing: 'take', leaveOut: false, note: undefined },
          options,
        );
      }),
    async chooseDiffering(differing) {
      const before = stage.peek();
      if (before.kind !== 'preview') return;
      await work(`Reading ${before.name}`, (options) => showPlan({ ...before, differing }, options));
    },
    chooseLeaveOut(leaveOut) {
      const before = stage.peek();
      if (before.kind === 'preview') stage.value = { ...before, leaveOut };
    },
    async carryOut() {
      const preview = stage.peek();
      if (preview.kind !== 'preview') return;
      const { name, plan, leaveOut } = preview;
      if (plan.counts.refuse > 0 && !leaveOut) return;
      await work(`Importing ${name}`, async (options) => {
        writing = true;
        try {
          const done = await carryOut(await world.openDatabase(), plan, {
            leaveOutRefused: leaveOut,
            ...options,
          });
          if (done === 'changedElsewhere') {
            await showPlan({ ...preview, note: CHANGED }, options);
            return;
          }
        } catch {
          if (options.signal.aborted) say(CANCELLED);
          else stage.value = { ...preview, note: DEVICE_REFUSED };
          return;
        } finally {
          writing = false;
        }
        const { refuse } = plan.counts;
        const left = refuse > 0 ? `; ${counted(refuse, 'refused one', 'refused ones')} left out` : '';
        say(`${counted(writtenBy(plan), 'record')} imported from ${name}${left}.`);
        await look();
      });
    },
    cancel() {
      running?.abort();
      // Too late perhaps: then everything is written, and said to be.
      if (writing) return;
      running = undefined;
      say(CANCELLED);
    },
    async askToPersist() {
      await world.askToPersist();
      await look();
    },
  };
};
