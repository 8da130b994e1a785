/**
 * What the answer is worth if the green is not as thought: a foot slower or faster, half a percent flatter or steeper.
 * Each condition needs a table of next putts of its own; on a plane those serve every place of the ball, so that only the
 * first answer waits for them.
 */
import { batch, signal } from '@preact/signals';
import type { Player, Putt, Surface } from '../../../sim/index.ts';
import { hasTable, keepTable, tableFor } from '../../state/nextPutts.ts';
import { createLane } from '../../worker/client.ts';
import { CASE_NAMES, type SensitivityCase, type TwoPaces } from '../../worker/messages.ts';

export interface MarginQuestion {
  readonly putt: Putt;
  readonly player: Player;
  readonly paces: TwoPaces;
}

export const margin = signal<
  { readonly surface: Surface; readonly cases: readonly SensitivityCase[] } | undefined
>(undefined);
/** The margin is of an earlier putt or player. */
export const marginBehind = signal(true);
/** Share of the work done, 0..1; undefined when idle. */
export const marginProgress = signal<number | undefined>(undefined);

const lane = createLane();
let newest: MarginQuestion | undefined;

/** Works it out in the worker; gives up between two conditions when a newer question came. */
export const askMargin = async (question: MarginQuestion): Promise<void> => {
  newest = question;
  const { putt, player, paces } = question;
  const found = await lane.latest(async (engine, send) => {
    const sent = send.putt(putt);
    const cases: SensitivityCase[] = [];
    for (const name of CASE_NAMES) {
      if (newest !== question) return undefined;
      if (!hasTable(putt, player, name)) {
        marginProgress.value = cases.length / CASE_NAMES.length;
        keepTable(putt, player, name, await engine.prepareNextPutts(sent, player, name));
      }
      cases.push(await engine.compareCase(sent, name, paces, player, tableFor(putt, player, name)));
    }
    return cases;
  });
  if (newest !== question) return;
  batch(() => {
    marginProgress.value = undefined;
    if (found === undefined) return;
    margin.value = { surface: putt.surface, cases: found };
    marginBehind.value = false;
  });
};

/**
 * The question no longer stands; the worker finishes the condition it is at and stops. What was found stays, marked as
 * behind, unless it is of other ground.
 */
export const dropMargin = (surface: Surface): void => {
  newest = undefined;
  const old = margin.peek()?.surface;
  if (old !== surface && !(old?.kind === 'plane' && surface.kind === 'plane')) margin.value = undefined;
  marginBehind.value = true;
  marginProgress.value = undefined;
};

export const cancelMargin = (): void => {
  newest = undefined;
  marginBehind.value = true;
  marginProgress.value = undefined;
  lane.cancel();
};
