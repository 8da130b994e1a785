/**
 * Die or firm for everybody the person may be (state/settings.ts): a preset's family, or the players of a fit. One after the other in the
 * worker, the middle one first; the verdict sharpens with each. Leaves out: the sums (sim/costs/die-or-firm.ts), words (text/family.ts).
 * On a green each takes a second or two, after some ten for what they share (MODEL.md, section 5): the worker keeps that for the next ball.
 */
import { batch, signal } from '@preact/signals';
import { proxy } from 'comlink';
import type { DieOrFirm, KnownPlayer, Player, Putt } from '../../../sim/index.ts';
import { type Key, keyOf, sameKey } from '../../state/nextPutts.ts';
import { createLane } from '../../worker/client.ts';
import { familyShare } from '../../worker/familyShare.ts';
import type { TwoPaces } from '../../worker/messages.ts';

export interface FamilyQuestion {
  readonly putt: Putt;
  readonly known: KnownPlayer;
  readonly paces: TwoPaces;
}

/** What one of them gains: putts that firm takes more than die; undefined: one of the two has no line for them. */
export interface MemberAnswer {
  readonly player: Player;
  readonly difference: number | undefined;
}

export interface FamilyAnswer extends FamilyQuestion {
  readonly found: DieOrFirm;
  readonly members: readonly MemberAnswer[];
}

/** undefined: not asked yet, or nobody but the one player is meant. */
export const family = signal<FamilyAnswer | undefined>(undefined);
/** The answer is of an earlier putt, pace or player. */
export const familyBehind = signal(true);
/** Members asked, of how many, and the share of the work done; undefined when idle. */
export const familyProgress = signal<
  { readonly asked: number; readonly of: number; readonly share: number } | undefined
>(undefined);

const lane = createLane();
let newest: FamilyQuestion | undefined;
/** What the worker is at; it stops by itself after the player in hand when that is not the newest. */
let running: { readonly ground: Key; readonly onGreen: boolean } | undefined;

/** What of a question the worker keeps for the next one. */
const groundOf = ({ putt, known }: FamilyQuestion): Key => [...keyOf(putt, known.player), known];

export const askFamily = async (question: FamilyQuestion): Promise<void> => {
  const { putt, known, paces } = question;
  const ground = groundOf(question);
  // Work for another green or player is of no use any more.
  if (running && !sameKey(running.ground, ground)) lane.cancel();
  if (known.members.length < 2) {
    // Nobody else is meant any more: what was said of others does not stay.
    family.value = undefined;
    return;
  }
  newest = question;
  const mine = { ground, onGreen: putt.surface.kind === 'field' };
  running = mine;
  const done = familyShare(mine.onGreen);
  const of = known.members.length;
  familyProgress.value = { asked: 0, of, share: 0 };
  const members: MemberAnswer[] = [];
  const told = proxy((found: DieOrFirm, player: Player, difference: number | undefined): boolean => {
    if (newest !== question) return false;
    members.push({ player, difference });
    const share = done.asked(found.asked, found.of);
    batch(() => {
      family.value = { ...question, found, members: [...members] };
      familyBehind.value = false;
      familyProgress.value = found.asked < found.of ? { asked: found.asked, of: found.of, share } : undefined;
    });
    return true;
  });
  const onProgress = proxy((share: number) => {
    if (newest === question && members.length === 0)
      familyProgress.value = { asked: 0, of, share: done.preparing(share) };
  });
  await lane.latest((engine, send) => engine.dieOrFirm(send.putt(putt), paces, known, told, onProgress));
  if (running === mine) running = undefined;
  if (newest === question) familyProgress.value = undefined;
};

/**
 * The question no longer stands; what was found stays, marked as behind. On a plane its work is ended at once, on a green it goes on as far
 * as the next question may need it.
 * @param end there is no next question
 */
export const dropFamily = (end = false): void => {
  if (end || !running?.onGreen) lane.cancel();
  newest = undefined;
  familyBehind.value = true;
  familyProgress.value = undefined;
};
