/**
 * Whether the browser may clear the records away by itself, and how much room they take. Answers for: asking, which a browser
 * likes to see at an act of the person (the first record, the first backup). Leaves out: words (screens/data/words.ts).
 */

/** yes: never cleared without the person's act. no: may be, when room runs short. unknown: the browser does not say. */
export type Persisted = 'yes' | 'no' | 'unknown';

export interface StorageState {
  readonly persisted: Persisted;
  /** Bytes, as far as the browser says. */
  readonly used: number | undefined;
  readonly room: number | undefined;
}

const manager = (): StorageManager | undefined => globalThis.navigator?.storage;

const answered = (granted: boolean | undefined): Persisted =>
  granted === undefined ? 'unknown' : granted ? 'yes' : 'no';

const quietly = async <Answer>(asked: () => Promise<Answer> | undefined): Promise<Answer | undefined> => {
  try {
    return await asked();
  } catch {
    return undefined;
  }
};

export const storageState = async (): Promise<StorageState> => {
  const granted = await quietly(() => manager()?.persisted?.());
  const estimate = await quietly(() => manager()?.estimate?.());
  return { persisted: answered(granted), used: estimate?.usage, room: estimate?.quota };
};

/** Asks the browser never to clear the records by itself; never throws, and does not ask again once it is granted. */
export const askToPersist = async (): Promise<Persisted> => {
  if (await quietly(() => manager()?.persisted?.())) return 'yes';
  return answered(await quietly(() => manager()?.persist?.()));
};
