/** The expected score, kept in step with drill, player and ground (state/job.ts). Leaves out: what is asked for (state.ts), words. */
import { computed } from '@preact/signals';
import type { DrillExpectation, NoExpectation } from '../../../sim/index.ts';
import { createJob } from '../../state/job.ts';
import { capture, player } from '../../state/settings.ts';
import type { DrillQuestion } from '../../worker/messages.ts';
import { chosen, ground } from './state.ts';

const question = computed<DrillQuestion>(() => ({
  drill: chosen.value,
  player: player.value,
  ground: ground.value,
  capture: capture.value,
}));

const scores = createJob<DrillQuestion, DrillExpectation | NoExpectation>(question, {
  keyOf: ({ drill, ...rest }) => JSON.stringify([drill.id, drill.version, rest]),
  ask: (asked, { lane }) => lane.latest(async (engine) => engine.drillScore(asked)),
  most: 100,
  pause: 200,
  mend: 'Change the ground or an error below to try again.',
});

/** The answer to the question as it is now; undefined: being worked out. */
export const expectation = computed(() => (scores.behind.value ? undefined : scores.shown.value?.found));
export const { failure, follow: followExpectation } = scores;
