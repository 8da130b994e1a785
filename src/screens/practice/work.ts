/**
 * Keeps the expected score in step with drill, player and ground: worked out in a worker, answers already found are kept. Leaves out:
 * what is asked (state.ts), words.
 */
import { batch, computed, effect, signal } from '@preact/signals';
import type { DrillExpectation, NoExpectation } from '../../../sim/index.ts';
import { capture, player } from '../../state/settings.ts';
import { createLane } from '../../worker/client.ts';
import type { DrillQuestion } from '../../worker/messages.ts';
import { chosen, ground } from './state.ts';

const question = computed<DrillQuestion>(() => ({
  drill: chosen.value,
  player: player.value,
  ground: ground.value,
  capture: capture.value,
}));
const keyOf = ({ drill, ...rest }: DrillQuestion): string => JSON.stringify([drill.id, drill.version, rest]);

/** The answer to the question as it is now; undefined: being worked out. */
export const expectation = signal<DrillExpectation | NoExpectation | undefined>(undefined);
export const failure = signal<string | undefined>(undefined);

const lane = createLane();
/** Quiet time before work starts, ms: a slider on its way should not start work at every step. */
const PAUSE = 200;
const MOST_KEPT = 100;
const kept = new Map<string, DrillExpectation | NoExpectation>();

const run = async (asked: DrillQuestion): Promise<void> => {
  const key = keyOf(asked);
  try {
    const found = await lane.latest(async (engine) => engine.drillScore(asked));
    if (found === undefined) return;
    kept.set(key, found);
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    if (key === keyOf(question.peek())) expectation.value = found;
  } catch (cause) {
    if (key !== keyOf(question.peek())) return;
    failure.value = `The engine could not answer: ${cause instanceof Error ? cause.message : String(cause)}. Change the ground or an error below to try again.`;
  }
};

/** Starts following the question; returns the function that stops. */
export const followExpectation = (): (() => void) => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const asked = question.value;
    clearTimeout(timer);
    const found = kept.get(keyOf(asked));
    batch(() => {
      expectation.value = found;
      failure.value = undefined;
    });
    if (found === undefined) timer = setTimeout(() => void run(asked), PAUSE);
  });
  return () => {
    stop();
    clearTimeout(timer);
    lane.cancel();
  };
};
