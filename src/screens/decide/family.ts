/**
 * Die or firm for everybody the person may be (app/settings.ts): a preset's family, or the players of a fit. One after the other in the
 * worker, the middle one first; the verdict sharpens with each. Leaves out: the sums (sim/costs/die-or-firm.ts), words (text/family.ts).
 * On a plane only: on a green every player would need a table of next putts of their own, seconds each.
 */
import { batch, signal } from '@preact/signals';
import { proxy } from 'comlink';
import type { DieOrFirm, KnownPlayer, Player, Putt } from '../../../sim/index.ts';
import { createLane } from '../../worker/client.ts';
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
/** Members asked, of how many; undefined when idle. */
export const familyProgress = signal<{ readonly asked: number; readonly of: number } | undefined>(undefined);

const lane = createLane({ interrupt: true });
let newest: FamilyQuestion | undefined;

export const askFamily = async (question: FamilyQuestion): Promise<void> => {
  const { putt, known, paces } = question;
  if (putt.surface.kind !== 'plane' || known.members.length < 2) return;
  newest = question;
  familyProgress.value = { asked: 0, of: known.members.length };
  const members: MemberAnswer[] = [];
  const told = proxy((found: DieOrFirm, player: Player, difference: number | undefined) => {
    if (newest !== question) return;
    members.push({ player, difference });
    batch(() => {
      family.value = { ...question, found, members: [...members] };
      familyBehind.value = false;
      familyProgress.value = found.asked < found.of ? { asked: found.asked, of: found.of } : undefined;
    });
  });
  await lane.latest((engine, send) => engine.dieOrFirm(send.putt(putt), paces, known, told));
  if (newest === question) familyProgress.value = undefined;
};

/** The question no longer stands: its work is ended at once; what was found stays, marked as behind. */
export const dropFamily = (): void => {
  newest = undefined;
  lane.cancel();
  familyBehind.value = true;
  familyProgress.value = undefined;
};
