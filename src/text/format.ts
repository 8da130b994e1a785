/**
 * Visible numbers: the one place where metres, shares and radians become words for both screens.
 * Answers for: short and long lengths in the person's units, percentages, clock positions, hole words.
 * Leaves out: parsing of typed input (parse.ts) and whole sentences (verdict.ts, describe.ts).
 * Offsets are metres from the hole centre, positive to the left as seen from the ball.
 */
import { HOLE_RADIUS, metresToFeet, metresToInches } from '../../sim/index.ts';

export type Units = 'imperial' | 'metric';

/** A ball's width, m (1.68 in): the step between "on the edge" and half a cup. */
const BALL_WIDTH = 0.042672;
const CUP_WIDTH = 2 * HOLE_RADIUS;
/** Aims nearer the centre than this are called dead centre, m (a quarter inch: less than anyone aims by eye). */
const DEAD_CENTRE = 0.00635;

/** "-0" never reaches the page. */
const fixed = (value: number, digits: number): string => {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
};

/** A short length (aim, leave, pace): "29 in" or "74 cm"; one decimal below 10 in, none above. */
export const formatShort = (metres: number, units: Units): string => {
  const value = units === 'imperial' ? metresToInches(metres) : metres * 100;
  const digits = units === 'imperial' && Math.abs(value) < 9.95 ? 1 : 0;
  return `${fixed(value, digits).replace(/\.0$/, '')} ${units === 'imperial' ? 'in' : 'cm'}`;
};

/** The length of a putt: "12 ft", "12.4 ft" or "3.66 m". */
export const formatLength = (metres: number, units: Units): string =>
  units === 'imperial' ? `${fixed(metresToFeet(metres), 1).replace(/\.0$/, '')} ft` : `${fixed(metres, 2)} m`;

/** A leave: inches (cm) up to three feet (a metre), feet (metres) beyond, with one decimal. */
export const formatLeave = (metres: number, units: Units): string => {
  if (units === 'metric') return metres < 1 ? formatShort(metres, units) : `${fixed(metres, 1)} m`;
  return metres < 0.9144 ? formatShort(metres, units) : `${fixed(metresToFeet(metres), 1)} ft`;
};

/** Two leaves as one range, in the unit of the larger: "0.3 to 2.6 ft", "9 to 31 in". */
export const formatSpan = (low: number, high: number, units: Units): string => {
  const end = formatLeave(high, units);
  const unit = end.replace(/^\S+ /, '');
  const value = unit === 'm' ? low : unit === 'ft' ? metresToFeet(low) : Number.NaN;
  const start = Number.isNaN(value) ? formatShort(low, units).replace(/ .*/, '') : fixed(value, 1);
  return `${start} to ${end}`;
};

/** Green speed: a Stimpmeter reading is quoted in feet everywhere. */
export const formatGreenSpeed = (metres: number): string =>
  `${fixed(metresToFeet(metres), 1).replace(/\.0$/, '')} ft`;

/** A share 0..1 as a percentage: "27%"; when `digits` is left out one decimal below 9.95%, and "under 0.1%" for less. */
export const formatPercent = (share: number, digits?: number): string => {
  const percent = share * 100;
  if (digits === undefined && percent > 0 && percent < 0.05) return 'under 0.1%';
  return `${fixed(percent, digits ?? (Math.abs(percent) < 9.95 ? 1 : 0))}%`;
};

/** Slope as rise over run: "2%" or "1.5%". */
export const formatSlope = (slope: number): string => `${fixed(slope * 100, 1).replace(/\.0$/, '')}%`;

export const formatPutts = (putts: number): string => fixed(putts, 2);
export const formatSeconds = (seconds: number): string => `${fixed(seconds, 1)} s`;

/** Hours 0..12 as a clock face: 3.5 is "3:30", 0 is "12:00"; to the nearest five minutes. */
export const formatClock = (hours: number): string => {
  const steps = Math.round((((hours % 12) + 12) % 12) * 12) % 144;
  const hour = Math.floor(steps / 12);
  return `${hour === 0 ? 12 : hour}:${String((steps % 12) * 5).padStart(2, '0')}`;
};

/** Which side of the hole an offset lies. */
export const sideOf = (offset: number): 'left' | 'right' => (offset >= 0 ? 'left' : 'right');

/** "29 in right", "3 in left" or "0 in": an aim offset with its side. */
export const formatAim = (offset: number, units: Units): string => {
  const size = formatShort(Math.abs(offset), units);
  return Number.parseFloat(size) === 0 ? size : `${size} ${sideOf(offset)}`;
};

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** Half cups outside the edge in words: 1 -> "half a cup", 3 -> "a cup and a half", 5 -> "two and a half cups". */
const cupWords = (halves: number): string => {
  const whole = Math.floor(halves / 2);
  const half = halves % 2 === 1;
  if (whole === 0) return 'half a cup';
  if (whole === 1) return half ? 'a cup and a half' : 'a cup';
  const count = COUNTS[whole] ?? String(whole);
  return half && whole <= 5 ? `${count} and a half cups` : `${count} cups`;
};

/** An aim offset as a golfer says it: "dead centre", "inside the left edge", "a cup and a half outside the right edge". */
export const holeWords = (offset: number): string => {
  const distance = Math.abs(offset);
  const side = sideOf(offset);
  if (distance < DEAD_CENTRE) return 'dead centre';
  const outside = distance - HOLE_RADIUS;
  if (outside < -HOLE_RADIUS / 2) return `just ${side} of centre`;
  if (outside < -BALL_WIDTH / 4) return `inside the ${side} edge`;
  if (outside < BALL_WIDTH / 4) return `on the ${side} edge`;
  // Between the edge and half a cup the ball itself is the nearer yardstick.
  if (outside < (BALL_WIDTH + CUP_WIDTH / 2) / 2) return `a ball outside the ${side} edge`;
  const cups = outside / CUP_WIDTH;
  // Beyond six cups nobody counts halves.
  const halves = cups > 6 ? 2 * Math.round(cups) : Math.round(cups * 2);
  return `${cupWords(halves)} outside the ${side} edge`;
};

/** The same without the side, for where the side is already said: "a cup and a half outside". */
export const holeWordsShort = (offset: number): string =>
  holeWords(offset)
    .replace(/ outside the (left|right) edge/, ' outside')
    .replace(/the (left|right) edge/, 'the edge')
    .replace(/just (left|right) of centre/, 'near the centre');

// Made once: making one takes forty times as long as a day, and a table may have three thousand.
const dayFormat = new Intl.DateTimeFormat(undefined, {
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  timeZone: 'UTC',
});
const weekdayFormat = new Intl.DateTimeFormat(undefined, {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  timeZone: 'UTC',
});

/** A calendar day of a record, YYYY-MM-DD, in the reader's way of writing it: no time zone can move it. */
export const formatDay = (day: string): string => dayFormat.format(Date.parse(`${day}T00:00:00Z`));

/** The same with its weekday, without the year: "Sat, Nov 28". */
export const formatWeekday = (day: string): string => weekdayFormat.format(Date.parse(`${day}T00:00:00Z`));
