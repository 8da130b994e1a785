/** The worker: a switch that calls sim, nothing more. */
import { expose } from 'comlink';
import {
  checkPutt,
  comparePaces,
  costTables,
  dieOrFirmFor,
  differenceOn,
  expectedScore,
  type FieldSurface,
  fitErrors,
  type GreenMap,
  Grounds,
  heldTables,
  inTellingOrder,
  type KnownPlayer,
  type NextPutts,
  type Player,
  type Putt,
  playPlaces,
  prepareNextPutts,
  readPutt,
  type Surface,
  sampleMisses,
} from '../../sim/index.ts';
import { changedPutt } from './cases.ts';
import type { EngineWorker, SentPutt } from './messages.ts';

let held: FieldSurface | undefined;
let heldTable: NextPutts | undefined;
let heldMap: GreenMap | undefined;
/** Made at the first fit, for all that follow. */
let grounds: Grounds | undefined;

const whole = ({ surface, ...rest }: SentPutt): Putt => {
  const ground = surface === 'held' ? held : surface;
  if (ground === undefined) throw new Error('Got a putt before its green, expected hold() first.');
  return { ...rest, surface: ground };
};

const tableOf = ({ hole }: Putt): NextPutts => {
  if (heldTable === undefined) throw new Error('Got a putt before its table, expected holdTable() first.');
  return { ...heldTable, hole };
};

/** Players asked on a field, where each takes a second or two: a preset's family whole, a fit's by those that span it. */
const MOST_ON_FIELD = 12;

type Tables = (player: Player) => NextPutts;
/** Of the last ground and family asked about: another ball on it asks for the same. */
let tables: { readonly surface: Surface; readonly rest: string; readonly of: Tables } | undefined;

const tablesFor = (
  putt: Putt,
  { player, members }: Pick<KnownPlayer, 'player' | 'members'>,
  most: number,
  onProgress: (share: number) => void,
): Tables => {
  const { surface, greenSpeed, hole, capture, skid } = putt;
  const isField = surface.kind === 'field';
  const among = inTellingOrder(members, most).map((member) => member.player);
  const rest = JSON.stringify([greenSpeed, capture, skid === true, player, among, isField ? hole : surface]);
  if (tables === undefined || tables.rest !== rest || (isField && tables.surface !== surface))
    tables = { surface, rest, of: heldTables(putt, player, { among, onProgress }) };
  const { of } = tables;
  return (one) => ({ ...of(one), hole });
};

const worker: EngineWorker = {
  ready: () => true,
  hold(surface) {
    held = surface;
  },
  read: (sent, pace) => readPutt(whole(sent), pace),
  lines(sent, { die, firm }) {
    const putt = whole(sent);
    return { die: readPutt(putt, die), firm: readPutt(putt, firm) };
  },
  clouds(sent, { die, firm }, player, count, seed) {
    const putt = whole(sent);
    return {
      die: sampleMisses(putt, die, player, count, seed),
      firm: sampleMisses(putt, firm, player, count, seed),
    };
  },
  holdTable(table) {
    heldTable = table;
  },
  holdMap(map) {
    heldMap = map;
  },
  playPlaces(sent, player, nodes) {
    const putt = whole(sent);
    if (heldMap === undefined) throw new Error('Got places before their map, expected holdMap() first.');
    return playPlaces({ putt, player, table: tableOf(putt) }, heldMap, nodes);
  },
  compare(sent, paces, player) {
    const putt = whole(sent);
    return comparePaces(putt, paces, player, tableOf(putt));
  },
  prepareNextPutts(sent, player, change, onProgress) {
    const putt = change === undefined ? whole(sent) : changedPutt(whole(sent), change);
    return checkPutt(putt) === undefined ? prepareNextPutts(putt, player, { onProgress }) : undefined;
  },
  costTable(likely, options, onProgress, onTable) {
    for (const table of costTables(likely, { ...options, onProgress })) onTable(table);
  },
  async dieOrFirm(sent, paces, known, told, onProgress) {
    const putt = whole(sent);
    const most = putt.surface.kind === 'field' ? MOST_ON_FIELD : known.members.length;
    const difference = differenceOn(putt, paces, tablesFor(putt, known, most, onProgress));
    let last: { player: Player; difference: number | undefined } | undefined;
    const play = (player: Player): number | undefined => {
      last = { player, difference: difference(player) };
      return last.difference;
    };
    // Told one by one, with a breath between, so that what is told leaves the worker before the next is played.
    for (const found of dieOrFirmFor(known.members, play, most))
      if (last && !(await told(found, last.player, last.difference))) return;
  },
  async familyTables(sent, known, most, told, onProgress) {
    const tableFor = tablesFor(whole(sent), known, most, onProgress);
    for (const member of inTellingOrder(known.members, most))
      if (!(await told(member, tableFor(member.player)))) return;
  },
  fitErrors(record, options, onProgress) {
    grounds ??= new Grounds();
    return fitErrors(record, {
      ...options,
      grounds,
      wanted(done) {
        onProgress(done);
        return true;
      },
    });
  },
  drillScore: ({ drill, player, ground, capture }) => expectedScore(drill, player, ground, { capture }),
  compareCase(sent, name, { die, firm }, player, nextPutts) {
    const putt = changedPutt(whole(sent), name);
    const nothing = { name, difference: undefined, dieAim: undefined, firmAim: undefined };
    if (checkPutt(putt) !== undefined) return nothing;
    const [first, second] = comparePaces(putt, [die, firm], player, nextPutts).rows;
    if (!first || !second) return nothing;
    return {
      name,
      difference:
        first.odds && second.odds ? second.odds.expectedPutts - first.odds.expectedPutts : undefined,
      dieAim: first.read.status === 'ok' ? first.read.aimOffset : undefined,
      firmAim: second.read.status === 'ok' ? second.read.aimOffset : undefined,
    };
  },
};

expose(worker);
