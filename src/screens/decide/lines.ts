/**
 * The two lines of the putt and where their misses stop: what the map shows. On a plane the lines are worked out at once,
 * so they never lag behind the ball; on a green, where one may take 10 ms, by a worker, newest putt first.
 */
import { computed, effect, signal } from '@preact/signals';
import { type Putt, readPutt } from '../../../sim/index.ts';
import { player } from '../../state/settings.ts';
import { diePace, firmPace, problem, putt } from '../../state/situation.ts';
import { createLane } from '../../worker/client.ts';
import type { TwoClouds, TwoReads } from '../../worker/messages.ts';
import { tell } from './work.ts';

/** Rolls in each cloud: enough to see its shape, few enough to see the map. */
export const CLOUD_SIZE = 160;
const CLOUD_SEED = 20;

export interface PuttLines extends TwoReads {
  readonly putt: Putt;
}

export interface PuttClouds extends TwoClouds {
  readonly putt: Putt;
}

const lane = createLane();
const fromWorker = signal<PuttLines | undefined>(undefined);
const cloudsFound = signal<PuttClouds | undefined>(undefined);

/** undefined: the putt cannot be played, or its green is so new that nothing is known yet. */
export const lines = computed<PuttLines | undefined>(() => {
  if (problem.value !== undefined) return undefined;
  const asked = putt.value;
  if (asked.surface.kind === 'plane')
    return { putt: asked, die: readPutt(asked, diePace.value), firm: readPutt(asked, firmPace.value) };
  const found = fromWorker.value;
  return found?.putt.surface === asked.surface ? found : undefined;
});

/** The clouds last rolled on this ground: during a drag they may be a frame or two old. */
export const clouds = computed<PuttClouds | undefined>(() => {
  const found = cloudsFound.value;
  return problem.value === undefined && found?.putt.surface === putt.value.surface ? found : undefined;
});

/** Starts following the putt; returns the function that stops. */
export const followLines = (): (() => void) => {
  const stop = effect(() => {
    const asked = putt.value;
    const paces = { die: diePace.value, firm: firmPace.value };
    const errors = player.value;
    if (problem.value !== undefined) return;
    lane
      .latest(async (engine, send) => {
        const sent = send.putt(asked);
        if (asked.surface.kind === 'field')
          fromWorker.value = { putt: asked, ...(await engine.lines(sent, paces)) };
        cloudsFound.value = {
          putt: asked,
          ...(await engine.clouds(sent, paces, errors, CLOUD_SIZE, CLOUD_SEED)),
        };
      })
      .catch(tell);
  });
  return () => {
    stop();
    lane.cancel();
  };
};
