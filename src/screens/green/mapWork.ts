/**
 * Keeps the map in step with the question: the table of next putts first, from it a first picture at once, then places played
 * in tiles by two workers, then what a foot of green speed does to it, then tables of the others the person may be (family.ts). The old map stays, marked as behind. Leaves out:
 * tiles (tiles.ts), what is kept (maps.ts), words.
 */
import { batch, effect, signal } from '@preact/signals';
import { proxy } from 'comlink';
import type { GreenMap, Member, NextPutts } from '../../../sim/index.ts';
import { hasTable, keepTable, tableFor } from '../../state/nextPutts.ts';
import { problem } from '../../state/situation.ts';
import { createLane, type Lane } from '../../worker/client.ts';
import { familyShare } from '../../worker/familyShare.ts';
import type { CaseName } from '../../worker/messages.ts';
import { keepMap, type MapQuestion, mapFor, mirrorOf, newMap } from './maps.ts';
import { question } from './question.ts';
import { isDone, type PlayTile, pictureOf, type Refinement, refine } from './tiles.ts';

export interface ShownMap {
  readonly question: MapQuestion;
  /** With a value everywhere there can be one. */
  readonly map: GreenMap;
  readonly table: NextPutts;
  /** Every place that needs playing is played. */
  readonly done: boolean;
}

/** The speeds tried, m of green speed away from what is thought. */
export const SPEEDS = ['slower', 'faster'] as const satisfies readonly CaseName[];
export type OtherSpeeds = Readonly<Record<(typeof SPEEDS)[number], NextPutts | undefined>>;

/** The last map; undefined only before the first. */
export const shown = signal<ShownMap | undefined>(undefined);
/** The question has moved on since `shown` was worked out. */
export const behind = signal(true);
/** Tables of the same green a foot slower and faster; a table is undefined where no ball would stop. */
export const otherSpeeds = signal<
  { readonly question: MapQuestion; readonly tables: OtherSpeeds } | undefined
>(undefined);
/** Next putts of others the person may be, by the choices of the one the map is of; it grows with each. */
export interface FamilyTables {
  readonly question: MapQuestion;
  readonly members: readonly (Member & { readonly table: NextPutts })[];
  /** How many there will be. */
  readonly of: number;
}
export const familyTables = signal<FamilyTables | undefined>(undefined);
/** What is being worked out now, and how much of it is done, 0 to 1. */
export const work = signal<
  { readonly what: 'table' | 'map' | 'speeds' | 'family'; readonly share: number } | undefined
>(undefined);
/** The person stopped the work. */
export const stopped = signal(false);
export const failure = signal<string | undefined>(undefined);

const lanes: readonly Lane[] = [createLane(), createLane()];
/** Quiet time before work starts, ms: dragging a hole over a green should not queue what it will throw away. */
const PAUSE = 120;
/** Time between two pictures of a map in the making, ms for each of its nodes: one takes the page 3 microseconds a node or so. */
const BETWEEN_PICTURES = 0.06;

/** The work that is wanted; another object, or none, and what runs gives up at its next step. */
let current: object | undefined;
let timer: ReturnType<typeof setTimeout> | undefined;

const show = (asked: MapQuestion, { map, table, done }: Omit<ShownMap, 'question'>): void =>
  batch(() => {
    shown.value = { question: asked, map, table, done };
    behind.value = false;
    failure.value = undefined;
  });

const makeTable = async (
  lane: Lane,
  { putt, player }: MapQuestion,
  change: CaseName | undefined,
  onShare: (share: number) => void,
): Promise<boolean> => {
  if (hasTable(putt, player, change)) return true;
  let answered = false;
  const table = await lane.latest(async (engine, send) => {
    const told = proxy((share: number) => {
      if (!answered) onShare(share);
    });
    const made = await engine.prepareNextPutts(send.putt(putt), player, change, told);
    answered = true;
    return made;
  });
  if (answered) keepTable(putt, player, change, table);
  return answered;
};

const playMap = async (asked: MapQuestion, table: NextPutts, wanted: () => boolean): Promise<Refinement> => {
  const from = mapFor(asked) ?? newMap(asked);
  show(asked, { map: pictureOf(from.map, table), table, done: isDone(from) });
  if (isDone(from)) return from;
  const { putt, player } = asked;
  // Workers need its grid only: one object for the whole run, so that it travels once.
  const grid = from.map;
  const players = lanes.map(
    (lane): PlayTile =>
      (nodes) =>
        lane.latest((engine, send) =>
          engine.playPlaces(send.putt(putt), player, nodes, send.table(table), send.map(grid)),
        ),
  );
  let last = performance.now();
  const end = await refine({
    from,
    table,
    players,
    mirror: mirrorOf(putt, grid),
    wanted,
    onProgress(now, share) {
      if (!wanted()) return;
      keepMap(asked, { ...now, table });
      work.value = { what: 'map', share };
      if (performance.now() - last < BETWEEN_PICTURES * now.map.status.length) return;
      show(asked, { map: pictureOf(now.map, table), table, done: false });
      last = performance.now();
    },
  });
  if (wanted()) show(asked, { map: pictureOf(end.map, table), table, done: isDone(end) });
  return end;
};

const trySpeeds = async (asked: MapQuestion, wanted: () => boolean): Promise<void> => {
  const { putt, player } = asked;
  const shares: number[] = SPEEDS.map((name) => (hasTable(putt, player, name) ? 1 : 0));
  const tell = (): void => {
    if (wanted()) work.value = { what: 'speeds', share: (shares[0] + shares[1]) / 2 };
  };
  await Promise.all(
    SPEEDS.map((name, at) =>
      makeTable(lanes[at], asked, name, (share) => {
        shares[at] = share;
        tell();
      }),
    ),
  );
  if (!wanted()) return;
  otherSpeeds.value = {
    question: asked,
    tables: { slower: tableFor(putt, player, 'slower'), faster: tableFor(putt, player, 'faster') },
  };
};

/** Players asked: a preset's family whole, of a fit's those that span it. On a green each takes a second or two. */
const MOST_ASKED = 5;

const askFamily = async (asked: MapQuestion, wanted: () => boolean): Promise<void> => {
  const { putt, player } = asked;
  const among = asked.among?.filter(({ weight }) => weight > 0) ?? [];
  const known = familyTables.peek();
  if (among.length < 2 || (known?.question === asked && known.members.length === known.of)) return;
  const of = Math.min(MOST_ASKED, among.length);
  const done = familyShare(putt.surface.kind === 'field');
  work.value = { what: 'family', share: 0 };
  const members: (Member & { table: NextPutts })[] = [];
  const told = proxy((member: Member, table: NextPutts): boolean => {
    if (!wanted()) return false;
    members.push({ ...member, table });
    familyTables.value = { question: asked, members: [...members], of };
    work.value = { what: 'family', share: done.asked(members.length, of) };
    return true;
  });
  const onProgress = proxy((share: number) => {
    if (wanted() && members.length === 0) work.value = { what: 'family', share: done.preparing(share) };
  });
  await lanes[0].latest((engine, send) =>
    engine.familyTables(send.putt(putt), { player, members: among }, of, told, onProgress),
  );
};

const run = async (asked: MapQuestion): Promise<void> => {
  const mine = {};
  current = mine;
  const wanted = (): boolean => current === mine;
  let table = tableFor(asked.putt, asked.player) ?? mapFor(asked)?.table;
  if (table === undefined) {
    work.value = { what: 'table', share: 0 };
    // The second worker starts meanwhile.
    void lanes[1].latest((engine) => engine.ready()).catch(() => undefined);
    await makeTable(lanes[0], asked, undefined, (share) => {
      if (wanted()) work.value = { what: 'table', share };
    });
    table = tableFor(asked.putt, asked.player);
  }
  if (!wanted()) return;
  if (table === undefined) {
    work.value = undefined;
    return;
  }
  const end = await playMap(asked, table, wanted);
  if (!wanted() || !isDone(end)) return;
  await trySpeeds(asked, wanted);
  if (wanted()) await askFamily(asked, wanted);
  if (wanted()) work.value = undefined;
};

const start = (asked: MapQuestion): void => {
  run(asked).catch((cause: unknown) => {
    halt();
    failure.value = `The engine could not answer: ${cause instanceof Error ? cause.message : String(cause)}. Change the green to try again.`;
  });
};

/** A tile is soon over and leaves its worker warm; a table is not, and is ended with its worker. */
const halt = (): void => {
  clearTimeout(timer);
  current = undefined;
  if (work.peek() !== undefined && work.peek()?.what !== 'map') for (const lane of lanes) lane.cancel();
  work.value = undefined;
};

/** The person has seen enough; what is there stays. */
export const stopWork = (): void => {
  halt();
  stopped.value = true;
};

/** Goes on where it was stopped. */
export const resumeWork = (): void => {
  stopped.value = false;
  start(question.peek());
};

/** Starts following the question; returns the function that stops. */
export const followMap = (): (() => void) => {
  const stop = effect(() => {
    const asked = question.value;
    const refused = problem.value !== undefined;
    halt();
    stopped.value = false;
    behind.value = true;
    if (refused) return;
    const found = mapFor(asked);
    // What was worked out before is there in the same frame.
    if (found)
      show(asked, { map: pictureOf(found.map, found.table), table: found.table, done: isDone(found) });
    timer = setTimeout(() => start(asked), found ? 0 : PAUSE);
  });
  return () => {
    stop();
    halt();
  };
};
