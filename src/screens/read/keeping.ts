/**
 * The read sets of this visit and of the device, kept in step. Answers for: losing nothing that was committed, and saying so when the
 * device refuses. Leaves out: which question follows (session.ts).
 */
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { mergeSets } from '../../store/readSetMerge.ts';
import type { ReadStore } from '../../store/readSets.ts';
import type { KeptSet } from '../../store/schema.ts';

export interface OpenedReadStore {
  readonly store: ReadStore;
  /** A sentence for the person when sets will not outlive the visit. */
  readonly problem: string | undefined;
}

export interface Keeping {
  readonly sets: Signal<readonly KeptSet[]>;
  readonly unreadable: Signal<number>;
  /** false until the records have been looked at. */
  readonly ready: Signal<boolean>;
  readonly storageProblem: Signal<string | undefined>;
  /** Whether everything committed is on the device (or in memory, where the device refuses and the page says so). */
  readonly saved: ReadonlySignal<boolean>;
  open(): Promise<ReadStore>;
  keep(set: KeptSet): Promise<void>;
  /** The set as the page has it now. */
  newest(set: KeptSet): KeptSet;
}

/** @param onSpread told of every newer version of a set */
export const createKeeping = (
  openStore: () => Promise<OpenedReadStore>,
  onSpread: (set: KeptSet) => void,
): Keeping => {
  const sets = signal<readonly KeptSet[]>([]);
  const unreadable = signal(0);
  const ready = signal(false);
  const storageProblem = signal<string | undefined>(undefined);
  /** Writes the device has not confirmed yet, and the one it refused. */
  const pending = signal(0);
  const refused = signal(false);
  const saved = computed(() => pending.value === 0 && !refused.value);
  let opening: Promise<ReadStore> | undefined;
  /** What open() found wrong with the store, for as long as the visit lasts. */
  let lasting: string | undefined;

  /** Puts a newer version of a set wherever the page holds an older one. */
  const spread = (set: KeptSet): void => {
    const known = sets.peek().some(({ id }) => id === set.id);
    sets.value = known ? sets.peek().map((one) => (one.id === set.id ? set : one)) : [set, ...sets.peek()];
    onSpread(set);
  };

  const open = (): Promise<ReadStore> => {
    opening ??= (async () => {
      const opened = await openStore();
      lasting = opened.problem;
      try {
        const found = await opened.store.list();
        // Begun before the records were open: keep() is waiting to add it.
        const begun = sets.peek().filter(({ id }) => !found.records.some((one) => one.id === id));
        sets.value = [...begun, ...found.records];
        unreadable.value = found.unreadable;
      } catch {
        lasting = 'Your earlier sets could not be read: load the page again to try once more.';
      }
      storageProblem.value = lasting;
      ready.value = true;
      return opened.store;
    })();
    return opening;
  };

  return {
    sets,
    unreadable,
    ready,
    storageProblem,
    saved,
    open,
    newest: (set) => sets.peek().find(({ id }) => id === set.id) ?? set,
    async keep(set) {
      spread(set);
      pending.value += 1;
      try {
        const store = await open();
        const kept = await store.keep(set);
        // The page may have moved on while the device was writing.
        const newer = sets.peek().find(({ id }) => id === kept.id);
        spread(newer === undefined ? kept : mergeSets(kept, newer));
        storageProblem.value = lasting;
        refused.value = false;
      } catch {
        refused.value = true;
        storageProblem.value =
          'The last answer could not be saved on this device (full or forbidden storage). It is kept on this page and saved again with the next one: free some space before you close the page.';
      } finally {
        pending.value -= 1;
      }
    },
  };
};
