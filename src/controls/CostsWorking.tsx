/** How far the table of costs is, and the way to stop it. */

import { behind, resumeWork, stopped, stopWork, work } from '../state/costs/work.ts';
import { WorkLine } from './WorkLine.tsx';

const WORDS = 'Playing your putts with every error and without';

export const Working = () => (
  <WorkLine
    stopped={stopped.value}
    work={work.value === undefined ? undefined : { words: WORDS, share: work.value }}
    rest={behind.value ? 'Waiting for your errors to keep still…' : 'All is worked out.'}
    onStop={stopWork}
    onResume={resumeWork}
  />
);
