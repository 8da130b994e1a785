/**
 * The one way of keeping a value outside the records: in the browser's storage, under a key, behind a shape. Every value that outlives its
 * screen and is no record goes through here; a test (tests/src/state/kept.test.ts) holds all other files to that. Leaves out: records
 * (store/database.ts).
 * - Unreadable, or not what we would have written: the value counts as not there.
 * - Storage forbidden (private windows, sandboxed frames) or full: nothing is read, a write answers false, and the value lasts as long as
 *   the page, which is what its screen goes on showing. Nothing throws.
 * - Another tab writes: this page keeps what it shows and the last write wins, unless it follows the value.
 */
import * as z from 'zod';

/** No compiled checks: the page's content policy forbids making code from text, and asking for it logs an error. */
z.config({ jitless: true });

/** Where a value is kept; asking may throw. */
export type Place = () => Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | undefined;
export const onDevice: Place = () => globalThis.localStorage;
/** Until the tab is closed. */
export const forVisit: Place = () => globalThis.sessionStorage;

export interface KeptText {
  /** undefined: none, or storage is forbidden. */
  load(): string | undefined;
  /** @returns whether it is kept */
  save(text: string): boolean;
  /** @returns whether it is gone */
  forget(): boolean;
  /** Follows what other tabs write on the device; undefined: it is forgotten. */
  follow(next: (text: string | undefined) => void): void;
}

/** A text as it stands, for what is no value of ours to judge. */
export const keptText = (key: string, place = onDevice): KeptText => {
  const tried = (act: (storage: NonNullable<ReturnType<Place>>) => void): boolean => {
    try {
      const storage = place();
      if (storage === undefined) return false;
      act(storage);
      return true;
    } catch {
      return false;
    }
  };
  return {
    load() {
      let found: string | null = null;
      tried((storage) => {
        found = storage.getItem(key);
      });
      return found ?? undefined;
    },
    save: (text) => tried((storage) => storage.setItem(key, text)),
    forget: () => tried((storage) => storage.removeItem(key)),
    follow(next) {
      globalThis.window?.addEventListener('storage', (event) => {
        if (event.key === key) next(event.newValue ?? undefined);
      });
    },
  };
};

export interface KeptOptions<Value> {
  readonly key: string;
  /** Default: on the device. */
  readonly place?: Place;
  /** What a kept value must be; may mend one field by field. */
  readonly schema: z.ZodType<Value>;
  /** The value where none is kept, or none that passes. */
  readonly otherwise: () => Value;
  /** A word by itself, not JSON. Default: no. */
  readonly plain?: boolean;
}

export interface KeptValue<Value> {
  /** A text as kept, judged. */
  parse(text: string | null | undefined): Value;
  load(): Value;
  /** @param value undefined: nothing is to be kept @returns whether that is so now */
  save(value: Value): boolean;
  forget(): boolean;
  /** Follows what other tabs write on the device. */
  follow(next: (value: Value) => void): void;
}

export const keptValue = <Value>({
  key,
  place = onDevice,
  schema,
  otherwise,
  plain = false,
}: KeptOptions<Value>): KeptValue<Value> => {
  const text = keptText(key, place);
  const parse = (found: string | null | undefined): Value => {
    if (found === null || found === undefined) return otherwise();
    try {
      const judged = schema.safeParse(plain ? found : JSON.parse(found));
      return judged.success ? judged.data : otherwise();
    } catch {
      return otherwise();
    }
  };
  return {
    parse,
    load: () => parse(text.load()),
    save: (value) =>
      value === undefined ? text.forget() : text.save(plain ? String(value) : JSON.stringify(value)),
    forget: text.forget,
    follow: (next) => text.follow((found) => next(parse(found))),
  };
};
