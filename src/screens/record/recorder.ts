/**
 * A round being written down: which hole, which putt, what is saved and what the device refused. Answers for losing nothing that
 * was tapped: a putt leaves the form only when the store has written it. What it needs of the world (records, clock, ids, a
 * place for the draft) is handed in. Leaves out: taps (draft.ts), the other putts (hole.ts), one change at a
 * time (writing.ts), drawing.
 * A write says what hole it was made from; changed elsewhere, it is refused and the person decides, having seen both.
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { RecordedPutt, RecordedRound } from '../../../sim/index.ts';
import type { Records, RoundInHand } from '../../store/records.ts';
import {
  backFrom,
  draftOf,
  freshDraft,
  isComplete,
  isToBeSaved,
  isTouched,
  type PuttDraft,
  puttOf,
  saysTheSame,
  type Tap,
  tapped,
} from './draft.ts';
import {
  holeToGoOn,
  isFinished,
  isHoledOut,
  isSameList,
  nextHole,
  puttsOfHole,
  undoTarget,
  withHole,
  withoutPuttOf,
  withPutt,
} from './hole.ts';
import { createWriting, type Refusal } from './writing.ts';

export interface World {
  records(): Promise<Records>;
  /** ms since 1970 */
  now(): number;
  newId(): string;
  keepDraft(draft: PuttDraft | undefined): void;
  loadDraft(): PuttDraft | undefined;
}

export interface Saved {
  readonly hole: number;
  readonly stroke: number;
  readonly id: string;
}

export interface Recorder {
  readonly round: ReadonlySignal<RoundInHand | undefined>;
  readonly draft: ReadonlySignal<PuttDraft | undefined>;
  readonly saving: ReadonlySignal<boolean>;
  readonly refusal: ReadonlySignal<Refusal | undefined>;
  /** The putt the store wrote last, in this visit. */
  readonly lastSaved: ReadonlySignal<Saved | undefined>;
  /** A putt of a round that is no longer open, tapped and not saved. */
  readonly leftOver: ReadonlySignal<PuttDraft | undefined>;
  /** Asked for while a putt on the form is not saved: leaves the form for it. */
  readonly leaving: ReadonlySignal<(() => void) | undefined>;
  /** Whether something tapped is not on the device yet. */
  readonly unsaved: ReadonlySignal<boolean>;
  /** The records' open round as it is now; undefined when none is open. */
  follow(found: RoundInHand | undefined): void;
  tap(tap: Tap): Promise<void>;
  back(): void;
  goTo(hole: number): void;
  correct(putt: RecordedPutt): void;
  /** Takes the wish to leave back. */
  stay(): void;
  /** Writes the draft as it is; `over`: after what another tab has written meanwhile, or in its place. */
  save(over?: 'after' | 'instead'): Promise<void>;
  /** Lets the draft go; what is on the device stays. */
  drop(): void;
  undo(): Promise<void>;
  /** Takes the putt being corrected out of the records. */
  remove(): Promise<void>;
  /** Says that a hole had no putt, or takes that back. */
  setWithoutPutt(without: boolean): Promise<void>;
}

export const createRecorder = (world: World): Recorder => {
  const round = signal<RoundInHand | undefined>(undefined);
  const draft = signal<PuttDraft | undefined>(undefined);
  const lastSaved = signal<Saved | undefined>(undefined);
  const leftOver = signal<PuttDraft | undefined>(undefined);
  const leaving = signal<(() => void) | undefined>(undefined);
  const unsaved = computed(() => draft.value !== undefined && isTouched(draft.value));
  /** The putts of the draft's hole when its first tap was made: what a write is made from. */
  let base: readonly RecordedPutt[] = [];
  const { saving, refusal, write, later } = createWriting(world, round, (found) => follow(found));

  const setDraft = (next: PuttDraft | undefined): void => {
    draft.value = next;
    world.keepDraft(next);
  };
  /** An empty form on a hole, after the putts it holds. */
  const begin = (inHand: RoundInHand, hole: number): void => {
    base = puttsOfHole(inHand, hole);
    const left = base.at(-1)?.miss?.leave;
    refusal.value = undefined;
    setDraft(freshDraft({ id: world.newId(), roundId: inHand.round.id, hole, left }));
  };
  const beginNext = (inHand: RoundInHand, from: number): void =>
    begin(inHand, isFinished(inHand, from) ? (nextHole(inHand, from) ?? from) : from);

  /** The form shows all it holds, beside the reason why it is not saved. */
  const lookAtDraft = (): void => {
    const now = draft.peek();
    if (refusal.peek() && now && isComplete(now)) setDraft({ ...now, looked: true, asks: undefined });
  };

  const saveDraft = async (over?: 'after' | 'instead'): Promise<void> => {
    const now = draft.peek();
    const inHand = round.peek();
    if (now === undefined || inHand === undefined || !isComplete(now)) return;
    const onDevice = puttsOfHole(inHand, now.hole);
    const before = over === undefined ? base : onDevice;
    const after = withPutt(over === 'after' ? onDevice : base, puttOf(now, world.now()));
    const saved = after.find(({ id }) => id === now.id);
    await write(
      'putt',
      (records) => records.changeHole({ roundId: now.roundId, hole: now.hole, before, after }),
      () => {
        const written = withHole(round.peek() ?? inHand, now.hole, after);
        round.value = written;
        lastSaved.value = saved && { hole: now.hole, stroke: saved.stroke, id: saved.id };
        beginNext(written, now.hole);
      },
    );
    lookAtDraft();
  };

  const setWithoutPutt = async (hole: number, without: boolean): Promise<void> => {
    const inHand = round.peek();
    if (inHand === undefined) return;
    const others = inHand.round.withoutPutt.filter((one) => one !== hole);
    const after: RecordedRound = { ...inHand.round, withoutPutt: without ? [...others, hole] : others };
    await write(
      'hole',
      (records) => records.changeRound(inHand.round, after),
      () => {
        const written = { ...inHand, round: after };
        round.value = written;
        lastSaved.value = undefined;
        if (without) beginNext(written, hole);
        else begin(written, hole);
      },
    );
  };

  /** Goes elsewhere at once, or asks first when a putt on the form is not saved. */
  const leaveFor = (go: () => void): void => {
    if (saving.peek()) return;
    leaving.value = undefined;
    if (!unsaved.peek() || isAsOnDevice()) go();
    else
      leaving.value = () => {
        leaving.value = undefined;
        go();
      };
  };
  const isAsOnDevice = (): boolean => {
    const now = draft.peek();
    return now !== undefined && base.some((putt) => saysTheSame(now, putt));
  };

  /** A draft of a round that is not open: nothing, if its putt was written just before. */
  const leaveOver = async (old: PuttDraft): Promise<void> => {
    const found = await (await world.records()).round(old.roundId).catch(() => undefined);
    if (!found?.putts.some((putt) => saysTheSame(old, putt))) leftOver.value = old;
  };

  /** The page has just been opened on this round; `kept` is what was tapped before. */
  const resume = (found: RoundInHand, kept: PuttDraft | undefined): void => {
    if (kept === undefined || kept.hole > found.round.holes) {
      begin(found, holeToGoOn(found));
      return;
    }
    const putts = puttsOfHole(found, kept.hole);
    const onDevice = putts.find(({ id }) => id === kept.id);
    const written = onDevice !== undefined && (!kept.looked || saysTheSame(kept, onDevice));
    if (!isTouched(kept) || written) {
      beginNext(found, kept.hole);
      return;
    }
    base = putts;
    setDraft(isComplete(kept) ? { ...kept, looked: true } : kept);
  };

  const follow = (found: RoundInHand | undefined): void => {
    if (later(found)) return;
    const shown = draft.peek();
    const known = shown ?? world.loadDraft();
    const ours = known !== undefined && known.roundId === found?.round.id;
    round.value = found;
    if (ours) leftOver.value = undefined;
    if (!ours) {
      if (known && isTouched(known)) void leaveOver(known);
      draft.value = undefined;
      lastSaved.value = undefined;
      if (found) begin(found, holeToGoOn(found));
    } else if (shown === undefined) {
      resume(found, known);
    } else if (!isTouched(shown)) {
      const putts = puttsOfHole(found, shown.hole);
      if (isSameList(putts, base)) base = putts;
      else begin(found, shown.hole);
    }
  };

  return {
    round,
    draft,
    saving,
    refusal,
    lastSaved,
    leftOver,
    leaving,
    unsaved,
    follow,
    async tap(tap) {
      const now = draft.peek();
      if (now === undefined || saving.peek()) return;
      const next = tapped(now, tap);
      setDraft(next);
      if (isToBeSaved(next)) await saveDraft();
    },
    back() {
      const now = draft.peek();
      if (now === undefined || saving.peek()) return;
      const back = backFrom(now);
      if (back) setDraft(back);
    },
    goTo(hole) {
      leaveFor(() => {
        const inHand = round.peek();
        if (inHand) begin(inHand, hole);
      });
    },
    correct(putt) {
      leaveFor(() => {
        const inHand = round.peek();
        if (inHand === undefined) return;
        base = puttsOfHole(inHand, putt.hole);
        refusal.value = undefined;
        setDraft(draftOf(putt));
      });
    },
    stay() {
      leaving.value = undefined;
    },
    save: saveDraft,
    drop() {
      leaving.value = undefined;
      const inHand = round.peek();
      const now = draft.peek();
      if (inHand && now) beginNext(inHand, now.hole);
      leftOver.value = undefined;
      if (inHand === undefined) world.keepDraft(undefined);
    },
    async undo() {
      const inHand = round.peek();
      const now = draft.peek();
      if (inHand === undefined || now === undefined) return;
      const target = undoTarget(inHand, now.hole);
      if (target === undefined) return;
      if (target.kind === 'withoutPutt') return setWithoutPutt(target.hole, false);
      const before = puttsOfHole(inHand, target.hole);
      const after = withoutPuttOf(before, target.putt.id);
      await write(
        'hole',
        (records) => records.changeHole({ roundId: inHand.round.id, hole: target.hole, before, after }),
        () => {
          round.value = withHole(inHand, target.hole, after);
          base = after;
          lastSaved.value = undefined;
          setDraft(draftOf(target.putt));
        },
      );
    },
    async remove() {
      const inHand = round.peek();
      const now = draft.peek();
      if (inHand === undefined || now === undefined) return;
      const after = withoutPuttOf(base, now.id);
      await write(
        'hole',
        (records) => records.changeHole({ roundId: now.roundId, hole: now.hole, before: base, after }),
        () => {
          const written = withHole(inHand, now.hole, after);
          round.value = written;
          lastSaved.value = undefined;
          begin(written, isHoledOut(after) ? (nextHole(written, now.hole) ?? now.hole) : now.hole);
        },
      );
    },
    setWithoutPutt: (without) => {
      const now = draft.peek();
      return now === undefined ? Promise.resolve() : setWithoutPutt(now.hole, without);
    },
  };
};
