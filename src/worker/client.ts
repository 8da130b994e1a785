/**
 * The page's side of the worker. A lane is one worker with one running and at most one waiting question: the newest
 * question wins, a replaced one resolves to undefined. A running question cannot be interrupted inside the engine, so
 * cancelling ends the worker and the next question starts a fresh one.
 */
import { type Remote, releaseProxy, wrap } from 'comlink';
import type { FieldSurface, GreenMap, NextPutts, Putt } from '../../sim/index.ts';
import type { EngineWorker, SentPutt } from './messages.ts';

/** Puts things in the form the worker takes; what is large travels ahead, and only when the worker has not got it yet. */
export interface Send {
  putt(putt: Putt): SentPutt;
  table(table: NextPutts): 'held';
  /** Told apart by identity: hand over the same empty map with every tile of it. */
  map(map: GreenMap): 'held';
}
type Ask<Answer> = (engine: Remote<EngineWorker>, send: Send) => Promise<Answer>;

export interface Lane {
  /**
   * Runs `ask` with the worker; resolves to undefined when a newer question or `cancel` replaced it. One `ask` is about
   * one green and one table: the worker holds the last ones sent.
   */
  latest<Answer>(ask: Ask<Answer>): Promise<Answer | undefined>;
  /** Ends what runs and drops what waits. */
  cancel(): void;
}

export interface LaneOptions {
  /** true: a new question ends the running one at once (long work); false (default): it waits for it (short work). */
  readonly interrupt?: boolean;
}

interface Waiting {
  readonly start: () => void;
  readonly drop: () => void;
}

/** A worker that has said nothing for this long after it was made has not started, ms; and how often one is made. */
const START_LIMIT = 12_000;
const MOST_STARTS = 3;

export const createLane = ({ interrupt = false }: LaneOptions = {}): Lane => {
  let worker: Worker | undefined;
  let engine: Remote<EngineWorker> | undefined;
  let held: FieldSurface | undefined;
  /** Told by its numbers: tables are copied to give them another hole. */
  let heldTable: Float64Array | undefined;
  let heldMap: GreenMap | undefined;
  let dropRunning: (() => void) | undefined;
  let failRunning: ((awake: boolean) => void) | undefined;
  let waiting: Waiting | undefined;

  const engineOf = (): Remote<EngineWorker> => {
    if (engine !== undefined) return engine;
    const mine = new Worker(new URL('./engine.ts', import.meta.url), { type: 'module' });
    const made = wrap<EngineWorker>(mine);
    worker = mine;
    engine = made;
    let awake = false;
    const failed = (): void => {
      if (worker === mine) failRunning?.(awake);
    };
    // A worker that does not start answers nothing: without this its first question would wait for ever.
    const limit = setTimeout(() => awake || failed(), START_LIMIT);
    mine.addEventListener('error', failed);
    void made.ready().then(() => {
      awake = true;
      clearTimeout(limit);
    });
    return made;
  };
  // Messages keep their order: no need to wait for what travels ahead.
  const send: Send = {
    putt(putt) {
      const { surface } = putt;
      if (surface.kind === 'plane') return { ...putt, surface };
      if (held !== surface) {
        held = surface;
        void engineOf().hold(surface);
      }
      return { ...putt, surface: 'held' };
    },
    table(table) {
      if (heldTable !== table.expected) {
        heldTable = table.expected;
        void engineOf().holdTable(table);
      }
      return 'held';
    },
    map(map) {
      if (heldMap !== map) {
        heldMap = map;
        void engineOf().holdMap(map);
      }
      return 'held';
    },
  };
  const end = (): void => {
    engine?.[releaseProxy]();
    worker?.terminate();
    engine = undefined;
    worker = undefined;
    held = undefined;
    heldTable = undefined;
    heldMap = undefined;
    dropRunning?.();
    dropRunning = undefined;
  };

  const lane: Lane = {
    latest: <Answer>(ask: Ask<Answer>) =>
      new Promise<Answer | undefined>((resolve, reject) => {
        let starts = 0;
        const start = (): void => {
          starts += 1;
          let over = false;
          const drop = (): void => {
            over = true;
            resolve(undefined);
          };
          const finish = (): void => {
            if (over) return;
            over = true;
            dropRunning = undefined;
            failRunning = undefined;
            const next = waiting;
            waiting = undefined;
            next?.start();
          };
          dropRunning = drop;
          failRunning = (awake) => {
            const again = !awake && starts < MOST_STARTS;
            if (again) over = true;
            else reject(new Error(awake ? 'its worker stopped' : 'its worker did not start'));
            // The question is not dropped with its worker: it is asked again, or has been refused.
            dropRunning = undefined;
            end();
            if (again) start();
            else finish();
          };
          ask(engineOf(), send).then(
            (answer) => {
              if (over) return;
              resolve(answer);
              finish();
            },
            (problem: unknown) => {
              if (over) return;
              reject(problem);
              finish();
            },
          );
        };
        if (interrupt && dropRunning !== undefined) end();
        if (dropRunning === undefined) {
          start();
          return;
        }
        waiting?.drop();
        waiting = { start, drop: () => resolve(undefined) };
      }),
    cancel() {
      waiting?.drop();
      waiting = undefined;
      if (dropRunning !== undefined) end();
    },
  };
  return lane;
};
