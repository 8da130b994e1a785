/** The table of costs, kept in step with the question (state/job.ts). Leaves out: what is asked (question.ts), what follows (answer.ts). */
import { proxy } from 'comlink';
import type { CostTable } from '../../../sim/index.ts';
import { createJob } from '../job.ts';
import { type CostQuestion, GREENS, keyOf, question } from './question.ts';

/** The middle player's table stands first: it is not that of all who may be meant, and marked so by the work still shown. */
export const costJob = createJob<CostQuestion, CostTable>(question, {
  keyOf,
  async ask({ likely, usual, greens }, { lane, told, first }) {
    let table: CostTable | undefined;
    const onTable = proxy((made: CostTable) => {
      table = made;
      first(made);
    });
    await lane.latest(async (engine) => {
      await engine.costTable(likely, { usual, mix: GREENS[greens] }, proxy(told), onTable);
      return true;
    });
    return table;
  },
  interrupt: true,
  most: 12,
  pause: 500,
  mend: 'Change an error below to try again.',
});
