/**
 * Answers as people read them in a terminal: one sentence, a table with its units, the caution. Leaves out: numbers of any
 * kind that the engine did not give; number and length words are src/text's.
 */
import { inchesToMetres, type Odds, type PaceRow, puttOdds, readPutt } from '../../sim/index.ts';
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
import { columns, facts, wrap } from './layout.ts';
import type { Command, PuttRequest } from './request.ts';
import { tableWithin } from './workLimit.ts';

export const CAUTION =
  'For practice and review; not during a round (Rule 4.3a). Left out: grain, wind, bumps, spin; slope and green speed are estimates.';

const NONE = '-';

/** The answer, then what it is about; a table, set out already; notes. */
const page = (answer: string, about: string, table?: string, ...notes: readonly string[]): string =>
  `${[`${wrap(answer)}\n${wrap(about)}`, ...(table === undefined ? [] : [table]), ...[...notes, CAUTION].map((note) => wrap(note))].join('\n\n')}\n`;

/** "12 ft from 3:00 on 2%, green speed 10 ft; player: Tour-like". */
const puttWords = <Name extends Command>(asked: Asked<Name>): string => {
  const request: PuttRequest = asked.request;
  const putt = toPutt(request);
  const length = Math.hypot(putt.ball.x - putt.hole.x, putt.ball.y - putt.hole.y);
  const slope = request.surface.kind === 'plane' ? request.surface.slope : 0;
  const place = slope === 0 ? 'on the level' : `from ${formatClock(asked.clock)} on ${formatSlope(slope)}`;
  const player = asked.playerName === '' ? '' : `; player: ${asked.playerName}`;
  return `${formatLength(length, asked.units)} ${place}, green speed ${formatGreenSpeed(putt.greenSpeed)}${player}`;
};

const degrees = (radians: number): string => {
  const size = Math.abs((radians * 180) / Math.PI).toFixed(2);
  return Number(size) === 0 ? '0 deg' : `${size} deg ${radians > 0 ? 'left' : 'right'}`;
};
const speedWords = (speed: number): string => `${speed.toFixed(2)} m/s`;
const aimWords = (aimOffset: number | undefined, units: Units): string =>
  aimOffset === undefined ? 'away from the hole' : formatAim(aimOffset, units);

/** An aim that is shown as nothing. */
const straight = (aimOffset: number, units: Units): boolean =>
  formatAim(aimOffset, units) === formatAim(0, units);

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
  const place = roll.lippedOut && roll.status === 'atRest' ? 'It lips out' : PLACES[roll.status];
  return page(`${place}${end}.`, puttWords(asked), facts(lines));
};

export const readPage = (asked: Asked<'read'>): string => {
  const read = askRead(asked.request);
  const { units } = asked;
  const pace = formatShort(asked.request.paceM, units);
  if (read.status === 'noLine') return page(`No line for ${pace} past. ${read.reason}`, puttWords(asked));
  const aim =
    read.aimOffset === undefined
      ? `Start ${degrees(read.start)} of the hole`
      : straight(read.aimOffset, units)
        ? 'Aim at the hole centre'
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
  if (read.paceBand) {
    const { low, high } = read.paceBand;
    const from = low < 0 ? 'just reaching the hole' : formatShort(low, units);
    lines.push(['paces that drop', `${from} to ${formatShort(high, units)} past`]);
  }
  if (read.otherStart !== undefined) lines.push(['another line starts', degrees(read.otherStart)]);
  return page(`${aim} and hit it to stop ${pace} past.`, puttWords(asked), facts(lines));
};

const oddsFacts = (odds: Odds, units: Units): [string, string][] => [
  ['holed', formatPercent(odds.holed, 1)],
  ['short', formatPercent(odds.short, 1)],
  ['past, high side', formatPercent(odds.high, 1)],
  ['past, low side', formatPercent(odds.low, 1)],
  ['of these, lipped out', formatPercent(odds.lippedOut, 1)],
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
  if (odds.status === 'noLine') return page(`No line for ${pace} past. ${odds.reason}`, puttWords(asked));
  return page(
    `${pace} past drops ${formatPercent(odds.holed, 0)} of the time and takes ${formatPutts(odds.expectedPutts)} putts.`,
    puttWords(asked),
    facts(oddsFacts(odds, asked.units)),
  );
};

/** Paces shown among those worked out, in inches or centimetres: close together near the hole, wider apart beyond. */
const SHOWN: Readonly<Record<Units, readonly number[]>> = {
  imperial: [2, 4, 6, 8, 12, 18, 24, 30, 36, 48, 58].map(inchesToMetres),
  metric: [5, 10, 20, 30, 40, 50, 60, 75, 100, 125, 150].map((centimetres) => centimetres / 100),
};
const HEAD = ['past', 'aim', 'holed', 'short', 'high', 'low', '3-putt', 'putts', 'leave', ''];
const LEGEND =
  'Past: where the ball would stop past the covered hole. Aim: beside the hole centre, measured at the hole. Holed to 3-putt: shares of all putts; high, low: missed past the hole on that side. Leave: middle distance left after a miss. Fewest: fewest putts; most: holes most.';

const compareLine = ({ pace, read, odds }: PaceRow, names: readonly string[], units: Units): string[] => {
  const first = formatShort(pace, units);
  const remark = names.join(', ');
  if (read.status === 'noLine' || odds === undefined)
    return [first, 'no line', ...Array<string>(HEAD.length - 3).fill(NONE), remark];
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
    remark,
  ];
};

/** A row of the table this near a pace with a name would say the same again, m. */
const SAME_PACE = 0.005;

const reasonOf = (read: PaceRow['read']): string | undefined =>
  read.status === 'noLine' ? read.reason : undefined;

export const comparePage = (asked: Asked<'compare'>): string => {
  const { request, units, diePace, firmPace } = asked;
  const putt = toPutt(request);
  const player = toPlayer(request.player);
  const table = tableWithin(putt, player);
  const { rows, best } = askCompare(request, table);
  const at = (pace: number): PaceRow => rows[request.pacesM.indexOf(pace)];
  const die = at(diePace);
  const firm = at(firmPace);

  const shown: { row: PaceRow; names: string[] }[] = [];
  /** Two paces that read the same are one row. */
  const show = (row: PaceRow, ...names: readonly string[]): void => {
    const text = formatShort(row.pace, units);
    const same = shown.find((other) => formatShort(other.row.pace, units) === text);
    if (same) same.names.push(...names);
    else shown.push({ row, names: [...names] });
  };
  const fresh = (pace: number): PaceRow => {
    const odds = puttOdds(putt, pace, player, table);
    return { pace, read: readPutt(putt, pace), odds: odds.status === 'ok' ? odds : undefined };
  };
  show(die, 'die');
  show(firm, 'firm');
  if (best) {
    show(fresh(best.fewestPutts), 'fewest');
    show(fresh(best.mostHoled), 'most');
  }
  for (const pace of SHOWN[units]) {
    const row = rows.find((other) => Math.abs(other.pace - pace) < 1e-9);
    const named = shown.some((other) => Math.abs(other.row.pace - pace) < SAME_PACE);
    if (row && !named) show(row);
  }
  shown.sort((first, second) => first.row.pace - second.row.pace);

  const reason = reasonOf(die.read) ?? reasonOf(firm.read) ?? '';
  const answer =
    die.odds && firm.odds
      ? `${verdictHeadline(die.odds, firm.odds)} ${verdictDetail(die.odds, firm.odds, units)}`
      : `${verdictMissing(reasonOf(die.read), reasonOf(firm.read))} ${reason}`.trim();
  const bestWords = best ? ` Fewest putts: ${formatShort(best.fewestPutts, units)} past.` : '';
  // Where no pace has a line a table would say it a dozen times.
  if (rows.every(({ odds }) => odds === undefined)) return page(answer, puttWords(asked));
  return page(
    `${answer}${bestWords}`,
    puttWords(asked),
    columns([HEAD, ...shown.map(({ row, names }) => compareLine(row, names, units))]),
    LEGEND,
  );
};
