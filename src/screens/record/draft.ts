/**
 * The putt being entered: what each tap does to it, which question comes next, when it is complete, and the record it becomes.
 * Pure: ids and moments are handed in. Leaves out: the other putts of the hole (hole.ts), keeping (recorder.ts), views.
 */
import type {
  BreakWay,
  Climb,
  MissReach,
  MissSide,
  PuttCircumstances,
  RecordedPutt,
} from '../../../sim/index.ts';

/** What is asked: the putt before the stroke, where it went, what was left, or a look at all of it before it is saved. */
export type Pad = 'putt' | 'result' | 'leave' | 'check';
export type Result = 'holed' | 'missed' | 'conceded';

export interface PuttDraft extends PuttCircumstances {
  /** The record's id from the first tap on: a putt written just before the page died is known by it. */
  readonly id: string;
  readonly roundId: string;
  readonly hole: number;
  readonly offGreen: boolean;
  /** m */
  readonly distance?: number;
  /** The distance came from the leave before, m: nobody has tapped it. */
  readonly handedOn?: number;
  /** Distance, climb and break are given, or the person went on without the last two. */
  readonly described: boolean;
  readonly result?: Result;
  readonly side?: MissSide;
  readonly reach?: MissReach;
  /** m */
  readonly leave?: number;
  /** Shown before it is saved: taken back, corrected, or refused by the device. */
  readonly looked: boolean;
  /** The question asked for by hand. */
  readonly asks?: Pad;
}

export type Tap =
  | { readonly kind: 'distance'; readonly metres: number; readonly fine?: boolean }
  | { readonly kind: 'climb'; readonly climb: Climb }
  | { readonly kind: 'breaks'; readonly breaks: BreakWay }
  | { readonly kind: 'offGreen'; readonly offGreen: boolean }
  | { readonly kind: 'goOn' }
  /** Optional words about the putt; an undefined one takes the word back. */
  | { readonly kind: 'more'; readonly more: Omit<PuttCircumstances, 'climb' | 'breaks'> }
  | { readonly kind: 'holed' }
  | { readonly kind: 'conceded' }
  | { readonly kind: 'missed'; readonly side?: MissSide; readonly reach?: MissReach }
  | { readonly kind: 'leave'; readonly metres: number; readonly fine?: boolean }
  | { readonly kind: 'ask'; readonly pad: Pad };

/** The first putt of a hole, or the one after a leave. @param left m, what the putt before left */
export const freshDraft = (at: { id: string; roundId: string; hole: number; left?: number }): PuttDraft => {
  const { left, ...place } = at;
  const first = { ...place, offGreen: false, described: false, looked: false };
  return left === undefined ? first : { ...first, distance: left, handedOn: left, described: true };
};

export const isComplete = ({ distance, result, leave }: PuttDraft): boolean =>
  distance !== undefined && result !== undefined && (result !== 'missed' || leave !== undefined);

/** Whether anything in it would be missed. */
export const isTouched = (draft: PuttDraft): boolean =>
  draft.looked ||
  draft.offGreen ||
  draft.result !== undefined ||
  draft.distance !== draft.handedOn ||
  [draft.climb, draft.breaks, draft.slopeFelt, draft.paceMeant, draft.startedAsMeant, draft.paceAsMeant].some(
    (given) => given !== undefined,
  );

export const padOf = (draft: PuttDraft): Pad => {
  if (draft.asks !== undefined) return draft.asks;
  if (draft.distance === undefined || !draft.described) return 'putt';
  if (draft.result === undefined) return 'result';
  if (draft.result === 'missed' && draft.leave === undefined) return 'leave';
  // Complete and on its way to the device: its last question stays until the answer is there.
  if (!draft.looked) return draft.result === 'missed' ? 'leave' : 'result';
  return 'check';
};

const sideFits = (side: MissSide | undefined, breaks: BreakWay | undefined): boolean => {
  if (side === undefined) return true;
  if (breaks === undefined) return false;
  return side === 'online' || (breaks === 'straight') === (side === 'left' || side === 'right');
};

/** With the question answered that was asked by hand, and on to the next one once nothing of the putt is open. */
const described = (draft: PuttDraft): PuttDraft => {
  const { distance, climb, breaks } = draft;
  const all = distance !== undefined && climb !== undefined && breaks !== undefined;
  return all ? { ...draft, described: true, asks: undefined } : draft;
};

/** What a miss no longer says once the break is another: high of a straight putt is asked again. */
const withFittingSide = (draft: PuttDraft): PuttDraft =>
  sideFits(draft.side, draft.breaks)
    ? draft
    : { ...draft, side: undefined, result: undefined, asks: draft.looked ? 'result' : undefined };

/** The draft after a tap. */
export const tapped = (draft: PuttDraft, tap: Tap): PuttDraft => {
  switch (tap.kind) {
    case 'distance': {
      const next = { ...draft, distance: tap.metres };
      if (tap.fine) return next;
      // A later putt was described by its leave: only the distance was asked for.
      return draft.looked ? { ...next, asks: undefined } : described(next);
    }
    case 'climb':
      return described({ ...draft, climb: tap.climb });
    case 'breaks':
      return withFittingSide(described({ ...draft, breaks: tap.breaks }));
    case 'offGreen':
      return { ...draft, offGreen: tap.offGreen };
    case 'goOn':
      return draft.distance === undefined ? draft : { ...draft, described: true, asks: undefined };
    case 'more':
      return { ...draft, ...tap.more };
    case 'holed':
    case 'conceded':
      return {
        ...draft,
        result: tap.kind,
        side: undefined,
        reach: undefined,
        leave: undefined,
        asks: undefined,
        offGreen: draft.offGreen && tap.kind === 'holed',
      };
    case 'missed':
      return { ...draft, result: 'missed', side: tap.side, reach: tap.reach, asks: undefined };
    case 'leave':
      return { ...draft, leave: tap.metres, asks: tap.fine ? 'leave' : undefined };
    case 'ask':
      return { ...draft, asks: tap.pad };
  }
};

/** One question back; undefined when nothing of this putt is left to take back. */
export const backFrom = (draft: PuttDraft): PuttDraft | undefined => {
  const pad = padOf(draft);
  if (draft.looked) return pad === 'check' ? undefined : { ...draft, asks: undefined };
  if (pad === 'leave')
    return {
      ...draft,
      result: undefined,
      side: undefined,
      reach: undefined,
      leave: undefined,
      asks: undefined,
    };
  if (pad === 'result' && draft.handedOn === undefined) return { ...draft, described: false };
  if (!isTouched(draft)) return undefined;
  const { id, roundId, hole, handedOn } = draft;
  return freshDraft({ id, roundId, hole, left: handedOn });
};

/** Complete, and nobody asked to see it first: to be written at once. */
export const isToBeSaved = (draft: PuttDraft): boolean =>
  isComplete(draft) && !draft.looked && draft.asks === undefined;

const whenGiven = <Value extends object>(value: Value): Partial<Value> =>
  Object.fromEntries(Object.entries(value).filter(([, given]) => given !== undefined)) as Partial<Value>;

/** The record of a complete draft. Its place on the hole is the store's to say. @param recordedAt ms since 1970 */
export const puttOf = (draft: PuttDraft, recordedAt: number): RecordedPutt => {
  const { id, roundId, hole, distance, result, side, reach, leave } = draft;
  if (distance === undefined || result === undefined)
    throw new Error('Got a putt half entered, expected a complete one.');
  const { climb, breaks, slopeFelt, paceMeant, startedAsMeant, paceAsMeant } = draft;
  return {
    id,
    roundId,
    hole,
    stroke: 1,
    kind: result === 'conceded' ? 'conceded' : draft.offGreen ? 'offGreen' : 'putt',
    distance,
    ...whenGiven({ climb, breaks }),
    // Nobody struck a conceded putt.
    ...(result === 'conceded' ? {} : whenGiven({ slopeFelt, paceMeant, startedAsMeant, paceAsMeant })),
    holed: result === 'holed',
    ...(result === 'missed' && leave !== undefined ? { miss: { ...whenGiven({ side, reach }), leave } } : {}),
    recordedAt,
  };
};

/** A putt on record as it was entered, to be looked at: taken back or corrected. */
export const draftOf = (putt: RecordedPutt): PuttDraft => {
  const { id, roundId, hole, kind, distance, holed, miss } = putt;
  const { climb, breaks, slopeFelt, paceMeant, startedAsMeant, paceAsMeant } = putt;
  return {
    id,
    roundId,
    hole,
    offGreen: kind === 'offGreen',
    distance,
    ...whenGiven({ climb, breaks, slopeFelt, paceMeant, startedAsMeant, paceAsMeant }),
    described: true,
    result: kind === 'conceded' ? 'conceded' : holed ? 'holed' : 'missed',
    ...whenGiven({ side: miss?.side, reach: miss?.reach, leave: miss?.leave }),
    looked: true,
  };
};

const withoutPlace = ({ stroke: _stroke, recordedAt: _recordedAt, ...rest }: RecordedPutt) =>
  JSON.stringify(Object.entries(rest).sort(([a], [b]) => (a < b ? -1 : 1)));

/** Whether the record says what the draft would. */
export const saysTheSame = (draft: PuttDraft, putt: RecordedPutt): boolean =>
  draft.id === putt.id && isComplete(draft) && withoutPlace(puttOf(draft, 0)) === withoutPlace(putt);
