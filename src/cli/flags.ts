/**
 * Flags as people type them, turned into the same request a program would send. Answers for: which flags a command takes,
 * their units, and where ball, hole and slope stand in the plane. Leaves out: limits that request.ts checks for everyone,
 * and printing.
 * Frame: hole at the origin, downhill towards -y, so that 12 o'clock is up the page as in every drawing.
 */
import {
  CAPTURES,
  clockToBearing,
  DIE_PACE,
  EARLIER_IDS,
  FIRM_PACE,
  feetToMetres,
  inchesToMetres,
  metresToFeet,
  PRESETS,
  presetOf,
  radiansToDegrees,
} from '../../sim/index.ts';
import type { Units } from '../text/format.ts';
import {
  type Limits,
  type Parsed,
  parseClock,
  parseGreenSpeed,
  parseLength,
  parsePace,
  parsePercent,
} from '../text/parse.ts';
import {
  type Checked,
  type Command,
  checkRequest,
  LIMITS,
  READ_SD_REPLACED,
  type RequestOf,
} from './request.ts';
import { showValue } from './show.ts';

/** Direction a ball runs off in the frame above, radians. */
const DOWNHILL = -Math.PI / 2;

/** Lists only the flags: values and examples are in help.ts. */
const PUTT_FLAGS = ['length', 'slope', 'ball', 'green-speed', 'capture', 'skid', 'units'];
const PLAYER_FLAGS = ['player', 'line-sd', 'pace-sd', 'pace-bias', 'slope-sd', 'speed-sd', 'read-bias'];
export const FLAGS: Readonly<Record<Command, readonly string[]>> = {
  roll: [...PUTT_FLAGS, 'start', 'speed'],
  read: [...PUTT_FLAGS, 'pace'],
  odds: [...PUTT_FLAGS, 'pace', ...PLAYER_FLAGS],
  compare: [...PUTT_FLAGS, 'die', 'firm', ...PLAYER_FLAGS],
};

/** Paces worked out by compare, m, beside the person's die and firm: fine enough to refine the best between them. */
const PACES: Readonly<Record<Units, readonly number[]>> = {
  imperial: Array.from({ length: 29 }, (_, index) => inchesToMetres(2 * (index + 1))),
  metric: Array.from({ length: 30 }, (_, index) => 0.05 * (index + 1)),
};

/** What a typed command asks: the request, and what only the printing needs. */
export interface Asked<Name extends Command> {
  readonly request: RequestOf<Name>;
  readonly units: Units;
  readonly playerName: string;
  readonly diePace: number;
  readonly firmPace: number;
  /** Clock position of the ball, hours. */
  readonly clock: number;
}

type Flags = ReadonlyMap<string, string>;

/** Splits "--name value" and "--name=value"; every flag takes a value, so "-3" after one is its value. */
export const splitFlags = (command: Command, words: readonly string[]): Checked<Flags> => {
  const flags = new Map<string, string>();
  const known = FLAGS[command];
  const refuse = (problem: string): Checked<Flags> => ({ ok: false, problem });
  for (let index = 0; index < words.length; index += 1) {
    const word = words[index];
    if (!word.startsWith('--') || word === '--')
      return refuse(
        `got ${showValue(word)}, expected a flag such as --length. Put -- before its name and quote values with spaces.`,
      );
    const equals = word.indexOf('=');
    const name = word.slice(2, equals < 0 ? undefined : equals);
    if (name === 'read-sd')
      return refuse(
        `--read-sd: got it, expected --slope-sd and --speed-sd in its place. ${READ_SD_REPLACED}`,
      );
    if (!known.includes(name))
      return refuse(
        `got the unknown flag ${showValue(`--${name}`)}, expected ${known.map((flag) => `--${flag}`).join(', ')} or --json. Run ${command} --help for examples.`,
      );
    if (flags.has(name)) return refuse(`--${name}: got it twice, expected it once. Remove one.`);
    if (equals < 0) index += 1;
    const value = equals < 0 ? words[index] : word.slice(equals + 1);
    if (value === undefined || value.trim() === '' || value.startsWith('--'))
      return refuse(`--${name}: got no value, expected one after it. Run ${command} --help for examples.`);
    flags.set(name, value);
  }
  return { ok: true, value: flags };
};

/** Stops the reading of flags with a problem; never leaves this file. */
class Refusal extends Error {}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const NUMBER = String.raw`([+\-\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+))`;
const toNumber = (text: string): number => Number(text.replace(',', '.').replace('\u2212', '-'));
const ANGLE = new RegExp(String.raw`^${NUMBER}\s*(?:deg|degrees?|°)?\s*(left|right)?$`, 'i');
const SPEED = new RegExp(String.raw`^${NUMBER}\s*(m/s|ft/s|fps)?$`, 'i');

const refused = (text: string, expected: string, mend: string): Parsed => ({
  ok: false,
  problem: `got ${showValue(text)}, expected ${expected}. ${mend}`,
});

/** "2", "2deg", "2° right": degrees, positive left. */
const parseAngle = (text: string, what: string, { min, max }: Limits, mend: string): Parsed => {
  const found = ANGLE.exec(text.trim());
  const size = found ? toNumber(found[1]) : Number.NaN;
  const value = found?.[2]?.toLowerCase() === 'right' ? -size : size;
  return value >= min && value <= max
    ? { ok: true, value: value === 0 ? 0 : value }
    : refused(text, `${what} from ${min} to ${max} degrees`, mend);
};

/** "2.1", "2.1m/s" or "7ft/s": m/s. */
const parseSpeed = (text: string): Parsed => {
  const found = SPEED.exec(text.trim());
  const size = found ? toNumber(found[1]) : Number.NaN;
  const value = found?.[2] !== undefined && found[2].toLowerCase() !== 'm/s' ? feetToMetres(size) : size;
  const { min, max } = LIMITS.speed;
  return value > min && value <= max
    ? { ok: true, value }
    : refused(
        text,
        `a launch speed above ${min} and up to ${max} m/s`,
        'Type metres or feet a second, such as 2.1m/s or 7ft/s.',
      );
};

/** Reads one command's flags. A parser's problem becomes a Refusal that names the flag. */
class Reader {
  readonly flags: Flags;
  readonly command: Command;

  constructor(command: Command, flags: Flags) {
    this.command = command;
    this.flags = flags;
  }

  refuse(name: string, problem: string): never {
    throw new Refusal(`--${name}: ${lower(problem)}`);
  }

  /** The value of a flag, its fallback, or a Refusal when it has none. */
  take(name: string, parse: (text: string) => Parsed, example: string, fallback?: number): number {
    const text = this.flags.get(name);
    if (text === undefined) {
      if (fallback !== undefined) return fallback;
      return this.refuse(name, `got nothing, expected a value. Add it, such as --${name} ${example}.`);
    }
    const parsed = parse(text);
    return parsed.ok ? parsed.value : this.refuse(name, parsed.problem);
  }

  choice<Word extends string>(name: string, words: readonly Word[], fallback: Word): Word {
    const text = this.flags.get(name);
    if (text === undefined) return fallback;
    const found = words.find((word) => word.toLowerCase() === text.trim().toLowerCase());
    return (
      found ?? this.refuse(name, `got ${showValue(text)}, expected ${words.join(' or ')}. Type one of them.`)
    );
  }
}

/** Feet unless the length was typed in metres; --units overrules. */
const unitsOf = (reader: Reader): Units =>
  reader.choice(
    'units',
    ['imperial', 'metric'],
    /\d\s*(m|cm|met(re|er)s?)$/i.test(reader.flags.get('length')?.trim() ?? '') ? 'metric' : 'imperial',
  );

const readPlayer = (reader: Reader) => {
  const ids = [...PRESETS.map(({ id }) => id), ...EARLIER_IDS];
  const preset = presetOf(reader.choice('player', ids, ids[0])) ?? PRESETS[0];
  const { lineSd, paceSd, paceBias, slopeSd, speedSd, readBias } = preset.player;
  const percent = (name: string, limits: Limits, fallback: number): number =>
    reader.take(name, (text) => parsePercent(text, limits), '8%', fallback);
  const own = PLAYER_FLAGS.slice(1).some((name) => reader.flags.has(name));
  return {
    name: own ? `${preset.name}, changed by flags` : preset.name,
    player: {
      lineSdDeg: reader.take(
        'line-sd',
        (text) => parseAngle(text, 'a start line SD', LIMITS.lineSdDeg, 'Type degrees, such as 1deg.'),
        '1deg',
        radiansToDegrees(lineSd),
      ),
      paceSd: percent('pace-sd', LIMITS.paceSd, paceSd),
      paceBias: percent('pace-bias', LIMITS.paceBias, paceBias),
      slopeSd: percent('slope-sd', LIMITS.slopeSd, slopeSd),
      speedSd: percent('speed-sd', LIMITS.speedSd, speedSd),
      readBias: percent('read-bias', LIMITS.readBias, readBias),
    },
  };
};

const gather = <Name extends Command>(command: Name, flags: Flags): Checked<Asked<Name>> => {
  const reader = new Reader(command, flags);
  const units = unitsOf(reader);
  const length = reader.take('length', (text) => parseLength(text, units, lengthLimits), '12ft');
  const slope = reader.take('slope', (text) => parsePercent(text, LIMITS.slope), '2%');
  const clock = reader.take('ball', parseClock, '3:00', slope === 0 ? 3 : undefined);
  const greenSpeed = reader.take('green-speed', (text) => parseGreenSpeed(text, greenLimits), '10');
  const bearing = clockToBearing(clock, DOWNHILL);
  const pace = (name: string, fallback?: number): number =>
    reader.take(
      name,
      (text) => parsePace(text, units, paceLimits),
      units === 'metric' ? '15cm' : '6in',
      fallback,
    );

  const request: Record<string, unknown> = {
    surface: { kind: 'plane', slope, downhillDeg: radiansToDegrees(DOWNHILL) },
    greenSpeedFt: metresToFeet(greenSpeed),
    ballM: [length * Math.cos(bearing), length * Math.sin(bearing)],
    holeM: [0, 0],
    capture: reader.choice('capture', CAPTURES, 'rim'),
    skid: reader.choice('skid', ['off', 'on'], 'off') === 'on',
  };
  let diePace: number = DIE_PACE;
  let firmPace: number = FIRM_PACE;
  let playerName = '';
  if (command === 'roll') {
    request.startDeg = reader.take(
      'start',
      (text) =>
        parseAngle(
          text,
          'a start angle',
          LIMITS.startDeg,
          'Type degrees from the ball-to-hole line, such as 3deg, "3 right" or -3.',
        ),
      '3deg',
    );
    request.speed = reader.take('speed', parseSpeed, '2.1m/s');
  }
  if (command === 'read' || command === 'odds') request.paceM = pace('pace', DIE_PACE);
  if (command === 'compare') {
    diePace = pace('die', DIE_PACE);
    firmPace = pace('firm', FIRM_PACE);
    request.pacesM = [...new Set([...PACES[units], diePace, firmPace])].sort(
      (first, second) => first - second,
    );
  }
  if (command === 'odds' || command === 'compare') {
    const chosen = readPlayer(reader);
    request.player = chosen.player;
    playerName = chosen.name;
  }
  const checked = checkRequest(command, request);
  return checked.ok
    ? { ok: true, value: { request: checked.value, units, playerName, diePace, firmPace, clock } }
    : checked;
};

/** 3 in to 130 ft: inside the request's own limits in whole units, so that its message is in the person's units. */
const lengthLimits: Limits = { min: 0.0762, max: 39.624 };
const greenLimits: Limits = {
  min: feetToMetres(LIMITS.greenSpeedFt.min),
  max: feetToMetres(LIMITS.greenSpeedFt.max),
};
/** 1 cm to 5 m. */
const paceLimits: Limits = { min: 0.01, max: LIMITS.paceM.max };

/** Words after the command to a checked request, or the problem with the first wrong one. */
export const readFlags = <Name extends Command>(
  command: Name,
  words: readonly string[],
): Checked<Asked<Name>> => {
  const flags = splitFlags(command, words);
  if (!flags.ok) return flags;
  try {
    return gather(command, flags.value);
  } catch (cause) {
    if (cause instanceof Refusal) return { ok: false, problem: cause.message };
    throw cause;
  }
};
