/** How far the table of costs is, and the way to stop it. */

import { costJob } from '../state/costs/work.ts';
import { WorkLine } from './WorkLine.tsx';

const WORDS = 'Playing your putts with every error and without';

export const Working = () => (
  <WorkLine
    stopped={costJob.stopped.value}
    work={costJob.work.value === undefined ? undefined : { words: WORDS, share: costJob.work.value }}
    rest={costJob.behind.value ? 'Waiting for your errors to keep still…' : 'All is worked out.'}
    onStop={costJob.stop}
    onResume={costJob.resume}
  />
);
