/**
 * The one gate for everything the command line is asked: JSON requests pass it as they are, flags are turned into the same
 * requests first. Answers for: field names, limits, and a problem in one sentence (got, expected, how to mend it).
 * Leaves out: whether a line exists (the engine says so) and printing. Field names are a promise to other programs: add,
 * never rename.
 */
import * as z from 'zod';
import { CAPTURES } from '../../sim/index.ts';
import { showValue } from './show.ts';

/** Names of the commands, in the order the help lists them. */
export const COMMANDS = ['roll', 'read', 'odds', 'compare'] as const;
export type Command = (typeof COMMANDS)[number];
export const isCommand = (text: string): text is Command => (COMMANDS as readonly string[]).includes(text);

/**
 * Limits of what may be asked, in the units of the request. Wider than golf needs, narrow enough to keep the model honest;
 * never wider than what the engine takes (tests: "answers at the limits").
 */
export const LIMITS = {
  /** Rise over run. Above 15% small-slope equations are off by more than 1%, and no green is that steep. */
  slope: { min: 0, max: 0.15 },
  /** Stimpmeter reading, feet: from rough-mown lawn to faster than any tournament green. */
  greenSpeedFt: { min: 3, max: 20 },
  /** Ball to hole, metres: from beside the hole (its radius and a ball's are 0.0753) to the far end of a very large green. */
  distanceM: { min: 0.076, max: 40 },
  /** Past the covered hole, metres. */
  paceM: { min: 0, max: 5 },
  /** Launch speed, m/s. */
  speed: { min: 0, max: 10 },
  startDeg: { min: -180, max: 180 },
  lineSdDeg: { min: 0, max: 10 },
  paceSd: { min: 0, max: 0.5 },
  paceBias: { min: -0.5, max: 0.5 },
  slopeSd: { min: 0, max: 0.05 },
  speedSd: { min: 0, max: 0.5 },
  readBias: { min: -1, max: 1.5 },
  /** Any direction and its repeats round the circle. */
  downhillDeg: { min: -360, max: 360 },
  coordinateM: { min: -1000, max: 1000 },
  spacingM: { min: 0.01, max: 10 },
  gridSide: { min: 4, max: 2000 },
  gridNodes: 1_000_000,
  heightM: { min: -100, max: 100 },
  /** Rise over run between neighbouring nodes: a wall is no green. */
  gridSlope: 0.5,
  paces: 500,
} as const;

type Issue = { readonly input?: unknown; readonly code?: string; readonly keys?: readonly string[] };

const sentence = (got: string, expected: string, mend: string): string =>
  `got ${got}, expected ${expected}. ${mend}`;

/** For JSON and flags alike: what became of the read as a share of the break. */
export const READ_SD_REPLACED =
  'A read is no longer off by a share of the break: the slope is seen wrong by slopeSd, rise over run, and the green speed by the share speedSd. For greens of about 1.6% take slopeSd = 0.016 x readSd, and speedSd 0.04 if you know nothing of it.';

/** zod's `error` option for a leaf: the same sentence whatever was wrong with it. */
const complain = (expected: string, mend: string) => ({
  error: (issue: Issue): string => sentence(showValue(issue.input), expected, mend),
});

/** A finite number within limits, both ends included, or the low end left out. */
const number = (
  { min, max }: { readonly min: number; readonly max: number },
  what: string,
  mend: string,
  lowEnd: 'included' | 'above' = 'included',
) => {
  const expected = `${what} ${lowEnd === 'above' ? `above ${min} and up to` : `from ${min} to`} ${max}`;
  const options = complain(expected, mend);
  const base = z.number(options).max(max, options);
  return lowEnd === 'above' ? base.gt(min, options) : base.min(min, options);
};

const whole = (limits: { readonly min: number; readonly max: number }, what: string, mend: string) =>
  number(limits, what, mend).refine(Number.isInteger, complain(`${what}, a whole number`, mend));

/** An object with these fields and no others. */
const fields = <Shape extends z.ZodRawShape>(shape: Shape, what: string) =>
  z.strictObject(shape, {
    error: (issue: Issue): string =>
      issue.code === 'unrecognized_keys' && issue.keys?.includes('readSd')
        ? sentence('the field "readSd"', 'slopeSd and speedSd in its place', READ_SD_REPLACED)
        : issue.code === 'unrecognized_keys'
          ? sentence(
              `the unknown field ${showValue(issue.keys?.[0])}`,
              `only ${Object.keys(shape).join(', ')}`,
              'Remove it or correct its name.',
            )
          : sentence(showValue(issue.input), what, `Give its fields: ${Object.keys(shape).join(', ')}.`),
  });

const coordinate = number(LIMITS.coordinateM, 'a coordinate in metres', 'Give metres, such as 3.048.');
const point = (what: string) =>
  z.tuple(
    [coordinate, coordinate],
    complain(`${what} as [x, y] in metres`, 'Give two numbers, such as [0, 3.048].'),
  );

const plane = fields(
  {
    kind: z.literal('plane'),
    slope: number(
      LIMITS.slope,
      'a slope as rise over run',
      'Write 2% as 0.02; turn downhillDeg to change its direction.',
    ),
    downhillDeg: number(
      LIMITS.downhillDeg,
      'a direction in degrees from +x',
      'Give degrees counter-clockwise, such as 180.',
    ),
  },
  'a plane',
);

const height = number(LIMITS.heightM, 'a height in metres', 'Give metres above any fixed level.');
const side = (what: string) => whole(LIMITS.gridSide, `the number of ${what}`, 'Count the grid nodes.');
const grid = fields(
  {
    kind: z.literal('grid'),
    originM: point('the lower left node'),
    spacingM: number(LIMITS.spacingM, 'the node spacing in metres', 'Give metres, such as 0.1.'),
    columns: side('columns'),
    rows: side('rows'),
    heightsM: z.array(height, complain('a list of heights in metres', 'List them row by row, x fastest.')),
  },
  'a grid',
).superRefine((surface, context) => {
  const { columns, rows, spacingM, heightsM } = surface;
  const object = (path: string, got: string, expected: string, mend: string): void =>
    void context.addIssue({ code: 'custom', path: [path], message: sentence(got, expected, mend) });
  if (columns * rows > LIMITS.gridNodes)
    return object(
      'columns',
      `${columns} x ${rows} nodes`,
      `at most ${LIMITS.gridNodes}`,
      'Use a wider spacing.',
    );
  if (heightsM.length !== columns * rows)
    return object(
      'heightsM',
      `${heightsM.length} heights`,
      `columns x rows = ${columns * rows}`,
      'List one height for each node, row by row, x fastest.',
    );
  const steepest = LIMITS.gridSlope * spacingM;
  for (let index = 0; index < heightsM.length; index += 1) {
    const right = index % columns === columns - 1 ? 0 : Math.abs(heightsM[index + 1] - heightsM[index]);
    const above =
      index + columns >= heightsM.length ? 0 : Math.abs(heightsM[index + columns] - heightsM[index]);
    if (Math.max(right, above) > steepest)
      return object(
        'heightsM',
        `a step of ${+Math.max(right, above).toPrecision(3)} m beside node ${index}`,
        `at most ${+steepest.toPrecision(3)} m (a slope of ${LIMITS.gridSlope})`,
        'Check the heights, their order and the spacing.',
      );
  }
});

const surface = z.discriminatedUnion('kind', [plane, grid], {
  error: (issue: Issue): string => {
    const kind =
      typeof issue.input === 'object' && issue.input !== null
        ? (issue.input as { kind?: unknown }).kind
        : undefined;
    return sentence(
      kind === undefined ? showValue(issue.input) : `the kind ${showValue(kind)}`,
      'a surface of kind "plane" or "grid"',
      'Give {"kind":"plane","slope":0.02,"downhillDeg":180}.',
    );
  },
});

const player = fields(
  {
    lineSdDeg: number(
      LIMITS.lineSdDeg,
      'the start line SD in degrees',
      'Most players lie between 0.5 and 2.',
    ),
    paceSd: number(LIMITS.paceSd, 'the distance SD as a share', 'Write 8% as 0.08.'),
    paceBias: number(
      LIMITS.paceBias,
      'the mean error of the distance as a share',
      'Write 5% too far as 0.05.',
    ),
    slopeSd: number(LIMITS.slopeSd, 'the SD of the slope as seen, rise over run', 'Write 0.4% as 0.004.'),
    speedSd: number(LIMITS.speedSd, 'the SD of the green speed as seen, a share of it', 'Write 4% as 0.04.'),
    readBias: number(
      LIMITS.readBias,
      'the share by which all slope is seen too large',
      'Write 10% too small as -0.1.',
      'above',
    ),
  },
  'a player',
);

const putt = {
  surface,
  greenSpeedFt: number(LIMITS.greenSpeedFt, 'a Stimpmeter reading in feet', 'Most greens read 7 to 13.'),
  ballM: point('where the ball lies'),
  holeM: point('the hole centre'),
  capture: z
    .enum(CAPTURES, complain('"rim", "simple" or "freeFall"', 'Leave it out for "rim".'))
    .default('rim'),
  skid: z.boolean(complain('true or false', 'Leave it out for false.')).optional(),
};
const paceM = number(
  LIMITS.paceM,
  'metres past the covered hole',
  'Give metres, such as 0.15 for dying it in.',
  'above',
);

type PuttFields = z.infer<z.ZodObject<typeof putt>>;

/** Checks that need more than one field: the length of the putt, and both ends on the grid. */
const together = (request: PuttFields, context: z.RefinementCtx): void => {
  const add = (path: string, message: string): void =>
    void context.addIssue({ code: 'custom', path: [path], message });
  const [ballX, ballY] = request.ballM;
  const [holeX, holeY] = request.holeM;
  const distance = Math.hypot(holeX - ballX, holeY - ballY);
  const { min, max } = LIMITS.distanceM;
  if (distance < min || distance > max)
    add(
      'ballM',
      sentence(
        `a putt of ${+distance.toPrecision(4)} m`,
        `${min} to ${max} m from ballM to holeM`,
        'Move the ball or the hole.',
      ),
    );
  if (request.surface.kind !== 'grid') return;
  const { originM, spacingM, columns, rows } = request.surface;
  const [left, low] = originM;
  const right = left + spacingM * (columns - 1);
  const high = low + spacingM * (rows - 1);
  for (const [name, [x, y]] of [
    ['ballM', request.ballM],
    ['holeM', request.holeM],
  ] as const)
    if (x < left || x > right || y < low || y > high)
      add(
        name,
        sentence(
          showValue([x, y]),
          `a point on the grid, x ${left} to ${+right.toPrecision(6)} and y ${low} to ${+high.toPrecision(6)}`,
          'Move it onto the grid or extend the grid.',
        ),
      );
};

/** The request of each command. */
export const SCHEMAS = {
  roll: fields(
    {
      ...putt,
      startDeg: number(
        LIMITS.startDeg,
        'a start angle in degrees',
        'Positive is left of the ball-to-hole line.',
      ),
      speed: number(LIMITS.speed, 'a launch speed in m/s', 'A 10 ft putt takes about 2.', 'above'),
    },
    'a request',
  ).superRefine(together),
  read: fields({ ...putt, paceM }, 'a request').superRefine(together),
  odds: fields({ ...putt, paceM, player }, 'a request').superRefine(together),
  compare: fields(
    {
      ...putt,
      pacesM: z
        .array(paceM, complain('a list of paces in metres', 'Give a list, such as [0.15, 0.75].'))
        .min(1, complain('at least one pace', 'Give a list, such as [0.15, 0.75].'))
        .max(LIMITS.paces, complain(`at most ${LIMITS.paces} paces`, 'Ask in several requests.')),
      player,
    },
    'a request',
  ).superRefine(together),
} as const;

export type RequestOf<Name extends Command> = z.infer<(typeof SCHEMAS)[Name]>;
export type PuttRequest = Omit<RequestOf<'read'>, 'paceM'>;
export type PlayerRequest = RequestOf<'odds'>['player'];

export type Checked<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: string };

/** "surface.heightsM[12]" for ['surface', 'heightsM', 12]. */
const placeOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, part) =>
      typeof part === 'number' ? `${text}[${part}]` : text === '' ? String(part) : `${text}.${String(part)}`,
    '',
  );

/** Passes a request through the gate; the problem names the first wrong field and how many more there are. */
export const checkRequest = <Name extends Command>(
  command: Name,
  value: unknown,
): Checked<RequestOf<Name>> => {
  // zod passes over this key without a word; it must be refused like any other unknown field.
  const hidden = hiddenKey(value);
  if (hidden !== undefined)
    return {
      ok: false,
      problem: `${hidden}: ${sentence('the unknown field "__proto__"', 'only the fields of the request', 'Remove it.')}`,
    };
  const result = SCHEMAS[command].safeParse(value);
  if (result.success) return { ok: true, value: result.data as RequestOf<Name> };
  // A player in the older form lacks the newer fields too: what replaced its own is the more helpful of the two.
  const { issues } = result.error;
  const first =
    issues.find((issue) => issue.code === 'unrecognized_keys' && issue.keys.includes('readSd')) ?? issues[0];
  const more = result.error.issues.length - 1;
  const also = more === 0 ? '' : ` (${more} more ${more === 1 ? 'problem' : 'problems'} after this one.)`;
  return { ok: false, problem: `${placeOf(first.path) || 'request'}: ${first.message}${also}` };
};

/** Where an own key "__proto__" stands in the request or one level down (no deeper object is allowed at all). */
const hiddenKey = (value: unknown): string | undefined => {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  if (Object.hasOwn(value, '__proto__')) return 'request';
  for (const name of ['surface', 'player']) {
    const inner: unknown = Object.hasOwn(value, name) ? (value as Record<string, unknown>)[name] : undefined;
    if (typeof inner === 'object' && inner !== null && Object.hasOwn(inner, '__proto__')) return name;
  }
  return undefined;
};
