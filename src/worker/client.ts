/**
 * The page's side of the worker. A lane is one worker with one running and at most one waiting question: the newest
 * question wins, a replaced one resolves to undefined. A running question cannot be interrupted inside the engine, so
 * cancelling ends the worker and the next question starts a fresh one.
 */
import { type Remote, releaseProxy, wrap } from 'comlink';
import type { FieldSurface, NextPutts, Putt } from '../../sim/index.ts';
import type { EngineWorker, SentPutt } from './messages.ts';

/** Puts things in the form the worker takes; what is large travels ahead, and only when the worker has not got it yet. */
export interface Send {
  putt(putt: Putt): SentPutt;
  table(table: NextPutts): 'held';
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

export const createLane = ({ interrupt = false }: LaneOptions = {}): Lane => {
  let worker: Worker | undefined;
  let engine: Remote<EngineWorker> | undefined;
  let held: FieldSurface | undefined;
  /** Told by its numbers: tables are copied to give them another hole. */
  let heldTable: Float64Array | undefined;
  let dropRunning: (() => void) | undefined;
  let failRunning: (() => void) | undefined;
  let waiting: Waiting | undefined;

  const engineOf = (): Remote<EngineWorker> => {
    if (engine === undefined) {
      worker = new Worker(new URL('./engine.ts', import.meta.url), { type: 'module' });
      // A worker that cannot start answers nothing: without this its first question would wait for ever.
      worker.addEventListener('error', () => failRunning?.());
      engine = wrap<EngineWorker>(worker);
    }
    return engine;
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
  };
  const end = (): void => {
    engine?.[releaseProxy]();
    worker?.terminate();
    engine = undefined;
    worker = undefined;
    held = undefined;
    heldTable = undefined;
    dropRunning?.();
    dropRunning = undefined;
  };

  const lane: Lane = {
    latest: <Answer>(ask: Ask<Answer>) =>
      new Promise<Answer | undefined>((resolve, reject) => {
        const start = (): void => {
          const drop = (): void => resolve(undefined);
          dropRunning = drop;
          failRunning = () => reject(new Error('its worker did not start'));
          const finish = (): void => {
            if (dropRunning !== drop) return;
            dropRunning = undefined;
            const next = waiting;
            waiting = undefined;
            next?.start();
          };
          ask(engineOf(), send).then(
            (answer) => {
              resolve(answer);
              finish();
            },
            (problem: unknown) => {
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
