/** The page's side of the reading screen's worker (reading.ts), started with the first question put to it. */
import { type Remote, wrap } from 'comlink';
import type { ReadingWorker } from './reading.ts';

type Ask<Answer> = (engine: Remote<ReadingWorker>) => Promise<Answer>;

/** @returns asks the worker; rejects when it cannot start, or when the engine throws */
export const createReadingClient = (): (<Answer>(ask: Ask<Answer>) => Promise<Answer>) => {
  let engine: Remote<ReadingWorker> | undefined;
  let broken: Promise<never> | undefined;
  return (ask) => {
    if (engine === undefined || broken === undefined) {
      const worker = new Worker(new URL('./reading.ts', import.meta.url), { type: 'module' });
      // A worker that cannot start answers nothing: without this its questions would wait for ever.
      broken = new Promise((_resolve, reject) => {
        worker.addEventListener('error', () => reject(new Error('the worker did not start')));
      });
      broken.catch(() => undefined);
      engine = wrap<ReadingWorker>(worker);
    }
    return Promise.race([ask(engine), broken]);
  };
};
