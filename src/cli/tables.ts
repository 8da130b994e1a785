/**
 * Answers as people read them in a terminal: one sentence, a table with its units, the caution. Leaves out: numbers of any
 * kind that the engine did not give; number and length words are src/text's.
 */
import {
  type NoLine,
  type Odds,
  type PaceRow,
  prepareNextPutts,
  puttOdds,
  type Read,
  readPutt,
} from '../../sim/index.ts';
import {
  formatAim,
  formatClock,
  formatGreenSpeed,
  formatLeave,
  formatLength,
  formatPercent,
  formatPutts,
  formatSeconds,
  formatShort,
  formatSlope,
  holeWords,
  type Units,
} from '../text/format.ts';
import { verdictDetail, verdictHeadline, verdictMissing } from '../text/verdict.ts';
import { askCompare, askOdds, askRead, askRoll, toPlayer, toPutt } from './answer.ts';
import type { Asked } from './flags.ts';
import type { Command, PuttRequest } from './request.ts';

export const CAUTION =
  'For practice and review; not during a round (Rule 4.3a). Left out: grain, wind, bumps, spin; slope and green speed are estimates.';

const NONE = '-';

/** Columns as wide as their widest cell: the first flush left, the others flush right. */
const columns = (rows: readonly (readonly string[])[]): string => {
  const widths = rows[0].map((_, index) => Math.max(...rows.map((row) => row[index].length)));
  return rows
    .map((row) =>
      row
        .map((cell, index) => (index === 0 ? cell.padEnd(widths[0]) : cell.padStart(widths[index])))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
};

const facts = (rows: readonly (readonly [string, string])[]): string => {
  const width = Math.max(...rows.map(([name]) => name.length));
  return rows.map(([name, value]) => `${name.padEnd(width)}  ${value}`).join('\n');
};

const page = (...parts: readonly string[]): string => `${[...parts, CAUTION].join('\n\n')}\n`;

/** "12 ft at 3:00 on 2%, green speed 10 ft". */
const puttWords = <Name extends Command>(asked: Asked<Name>): string => {
  const request: PuttRequest = asked.request;
  const putt = toPutt(request);
  const length = Math.hypot(putt.ball.x - putt.hole.x, putt.ball.y - putt.hole.y);
  const slope = request.surface.kind === 'plane' ? request.surface.slope : 0;
  const place = slope === 0 ? 'on the level' : `from ${formatClock(asked.clock)} on ${formatSlope(slope)}`;
  return `${formatLength(length, asked.units)} ${place}, green speed ${formatGreenSpeed(putt.greenSpeed)}`;
};

const degrees = (radians: number): string => {
  const size = Math.abs((radians * 180) / Math.PI).toFixed(2);
  return Number(size) === 0 ? '0 deg' : `${size} deg ${radians > 0 ? 'left' : 'right'}`;
};
const speedWords = (speed: number): string => `${speed.toFixed(2)} m/s`;
const aimWords = (aimOffset: number | undefined, units: Units): string =>
  aimOffset === undefined ? 'away from the hole' : formatAim(aimOffset, units);

const PLACES: Record<'holed' | 'atRest' | 'neverStops' | 'leftSurface', string> = {
  holed: 'It drops',
  atRest: 'It misses',
  neverStops: 'It never stops: this slope does not hold a ball at this green speed',
  leftSurface: 'It leaves the green',
};

export const rollPage = (asked: Asked<'roll'>): string => {
  const roll = askRoll(asked.request);
  const putt = toPutt(asked.request);
  const { units } = asked;
  const lines: [string, string][] = [
    ['start', `${degrees((asked.request.startDeg * Math.PI) / 180)} of the ball-to-hole line`],
    ['launch speed', speedWords(asked.request.speed)],
  ];
  let end = '';
  if (roll.status === 'atRest' && roll.rest) {
    const toHole = Math.atan2(putt.hole.y - putt.ball.y, putt.hole.x - putt.ball.x);
    const awayX = roll.rest.x - putt.hole.x;
    const awayY = roll.rest.y - putt.hole.y;
    const past = awayX * Math.cos(toHole) + awayY * Math.sin(toHole);
    const left = awayY * Math.cos(toHole) - awayX * Math.sin(toHole);
    end = ` and stops ${formatLeave(Math.hypot(awayX, awayY), units)} from the hole`;
    lines.push(
      [past < 0 ? 'short by' : 'past by', formatLeave(Math.abs(past), units)],
      ['beside the line', formatAim(left, units)],
    );
  }
  if (roll.arrival) lines.push(['speed at the hole', speedWords(roll.arrival.speed)]);
  if (roll.status !== 'neverStops') lines.push(['time', formatSeconds(roll.time)]);
  return page(`${PLACES[roll.status]}${end} (${puttWords(asked)}).`, facts(lines));
};

export const readPage = (asked: Asked<'read'>): string => {
  const read = askRead(asked.request);
  const { units } = asked;
  const pace = formatShort(asked.request.paceM, units);
  if (read.status === 'noLine') return page(`No line (${puttWords(asked)}, ${pace} past): ${read.reason}`);
  const aim =
    read.aimOffset === undefined
      ? `Start ${degrees(read.start)} of the hole`
      : `Aim ${formatAim(read.aimOffset, units)} of the hole centre, ${holeWords(read.aimOffset)},`;
  const lines: [string, string][] = [
    ['aim beside the hole centre', aimWords(read.aimOffset, units)],
    ['start line', degrees(read.start)],
    ['curve height', formatAim(read.curveHeight, units)],
    ['launch speed', speedWords(read.speed)],
    ['speed at the hole', speedWords(read.arrivalSpeed)],
    ['time to the hole', formatSeconds(read.time)],
  ];
  if (read.startBand)
    lines.push([
      'start lines that drop',
      `${degrees(read.startBand.low)} to ${degrees(read.startBand.high)}`,
    ]);
  if (read.paceBand)
    lines.push([
      'paces that drop',
      `${formatShort(read.paceBand.low, units)} to ${formatShort(read.paceBand.high, units)} past`,
    ]);
  if (read.otherStart !== undefined) lines.push(['another line starts', degrees(read.otherStart)]);
  return page(`${aim} and hit it to stop ${pace} past (${puttWords(asked)}).`, facts(lines));
};

const oddsFacts = (odds: Odds, units: Units): [string, string][] => [
  ['holed', formatPercent(odds.holed, 1)],
  ['short', formatPercent(odds.short, 1)],
  ['past, high side', formatPercent(odds.high, 1)],
  ['past, low side', formatPercent(odds.low, 1)],
  ['three putts or more', formatPercent(odds.threePutt, 1)],
  ['expected putts', formatPutts(odds.expectedPutts)],
  [
    'a miss is left',
    `${formatLeave(odds.leaveMedian, units)} (${formatLeave(odds.leaveP10, units)} to ${formatLeave(odds.leaveP90, units)} eight times in ten)`,
  ],
];

export const oddsPage = (asked: Asked<'odds'>): string => {
  const odds = askOdds(asked.request);
  const pace = formatShort(asked.request.paceM, asked.units);
  if (odds.status === 'noLine') return page(`No line (${puttWords(asked)}, ${pace} past): ${odds.reason}`);
  return page(
    `${pace} past drops ${formatPercent(odds.holed, 0)} of the time and takes ${formatPutts(odds.expectedPutts)} putts (${puttWords(asked)}; player: ${asked.playerName}).`,
    facts(oddsFacts(odds, asked.units)),
  );
};

/** Paces shown among those worked out, m: about every 10 cm near the hole, every 25 beyond. */
const SHOWN = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.75, 1, 1.25, 1.5];
const HEAD = ['past the hole', 'aim', 'holed', 'short', 'high', 'low', '3-putt', 'putts', 'miss left'];

const compareLine = ({ pace, read, odds }: PaceRow, name: string, units: Units): string[] => {
  const first = `${formatShort(pace, units)}${name === '' ? '' : `, ${name}`}`;
  if (read.status === 'noLine' || odds === undefined)
    return [first, 'no line', ...Array<string>(HEAD.length - 2).fill(NONE)];
  return [
    first,
    aimWords(read.aimOffset, units),
    formatPercent(odds.holed, 1),
    formatPercent(odds.short, 1),
    formatPercent(odds.high, 1),
    formatPercent(odds.low, 1),
    formatPercent(odds.threePutt, 1),
    formatPutts(odds.expectedPutts),
    formatLeave(odds.leaveMedian, units),
  ];
};

const reasonOf = (read: Read | NoLine): string | undefined =>
  read.status === 'noLine' ? read.reason : undefined;

/** Two paces the person cannot tell apart are one row, m. */
const SAME_PACE = 0.005;

export const comparePage = (asked: Asked<'compare'>): string => {
  const { request, units, diePace, firmPace } = asked;
  const putt = toPutt(request);
  const player = toPlayer(request.player);
  const table = prepareNextPutts(putt, player);
  const { rows, best } = askCompare(request, table);
  const at = (pace: number): PaceRow => rows[request.pacesM.indexOf(pace)];
  const die = at(diePace);
  const firm = at(firmPace);

  const named: { pace: number; names: string[]; row: PaceRow }[] = [];
  const name = (pace: number, words: string, row: PaceRow): void => {
    const same = named.find((other) => Math.abs(other.pace - pace) < SAME_PACE);
    if (same) same.names.push(words);
    else named.push({ pace, names: [words], row });
  };
  name(diePace, 'die', die);
  name(firmPace, 'firm', firm);
  const fresh = (pace: number): PaceRow => {
    const odds = puttOdds(putt, pace, player, table);
    return { pace, read: readPutt(putt, pace), odds: odds.status === 'ok' ? odds : undefined };
  };
  if (best) {
    name(best.fewestPutts, 'fewest putts', fresh(best.fewestPutts));
    name(best.mostHoled, 'holes most', fresh(best.mostHoled));
  }
  const others = rows.filter(
    ({ pace }) =>
      SHOWN.some((shown) => Math.abs(shown - pace) < 1e-9) &&
      !named.some((other) => Math.abs(other.pace - pace) < SAME_PACE),
  );
  const all = [
    ...named.map(({ row, names }) => ({ row, words: names.join(', ') })),
    ...others.map((row) => ({ row, words: '' })),
  ];
  all.sort((first, second) => first.row.pace - second.row.pace);

  const answer =
    die.odds && firm.odds
      ? `${verdictHeadline(die.odds, firm.odds)} ${verdictDetail(die.odds, firm.odds, units)}`
      : `${verdictMissing(reasonOf(die.read), reasonOf(firm.read))} ${reasonOf(die.read) ?? reasonOf(firm.read) ?? ''}`.trim();
  const bestWords = best ? ` Fewest putts: ${formatShort(best.fewestPutts, units)} past.` : '';
  return page(
    `${answer}${bestWords}`,
    `${puttWords(asked)}; player: ${asked.playerName}`,
    columns([HEAD, ...all.map(({ row, words }) => compareLine(row, words, units))]),
    'Aim: beside the hole centre, measured at the hole. High, low: missed past it on that side. Shares are of all putts; "miss left" is the middle distance left after a miss.',
  );
};
