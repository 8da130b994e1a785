/**
 * Random requests (RUNS), most of them wrong in some way: each ends in an answer or in one line on standard error with
 * exit code 2 and nothing on standard output. An engine that throws fails the test. Seed fixed.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { COMMANDS, type Command } from '../../../src/cli/request.ts';
import { run } from '../../../src/cli/run.ts';
import { sized } from '../../support/size.ts';

const strange = fc.oneof(
  fc.constantFrom<unknown>(
    // Left out of the request when it is written.
    undefined,
    null,
    true,
    '',
    'NaN',
    'Infinity',
    '10',
    [],
    {},
    -1,
    0,
    40,
    1e308,
    -1e308,
    5e-324,
    1e-9,
    '__proto__',
  ),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer(),
  fc.jsonValue({ maxDepth: 3 }),
);
/** Mostly sensible, so that what is wrong is one thing at a time and reaches the later checks and the engine. */
const mostly = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<unknown> =>
  fc.oneof({ weight: 20, arbitrary: value as fc.Arbitrary<unknown> }, { weight: 1, arbitrary: strange });
const within = (min: number, max: number): fc.Arbitrary<unknown> =>
  mostly(fc.integer({ min: 0, max: 1000 }).map((step) => min + ((max - min) * step) / 1000));
const point = mostly(fc.tuple(within(-6, 6), within(-6, 6)));

const plane = fc.record({
  kind: mostly(fc.constant('plane')),
  slope: within(0, 0.16),
  downhillDeg: within(-360, 360),
});
const grid = fc
  .record({
    columns: fc.integer({ min: 4, max: 8 }),
    rows: fc.integer({ min: 4, max: 8 }),
    off: fc.constantFrom(0, 0, 0, 0, 0, 0, 1, -1),
  })
  .chain(({ columns, rows, off }) =>
    fc.record({
      kind: fc.constant('grid'),
      originM: mostly(fc.constant([-5, -5])),
      spacingM: within(0.5, 3),
      columns: mostly(fc.constant(columns)),
      rows: mostly(fc.constant(rows)),
      heightsM: mostly(
        fc.array(fc.double({ min: 0, max: 0.3, noNaN: true }), {
          minLength: columns * rows + off,
          maxLength: columns * rows + off,
        }),
      ),
    }),
  );
const player = fc.record({
  lineSdDeg: within(0, 4),
  paceSd: within(0, 0.3),
  slopeSd: within(0, 0.03),
  speedSd: within(0, 0.3),
  readBias: within(-0.9, 1),
  paceBias: within(-0.3, 0.3),
});

const own: Record<Command, Record<string, fc.Arbitrary<unknown>>> = {
  roll: { startDeg: within(-180, 180), speed: within(0.1, 5) },
  read: { paceM: within(0.01, 2) },
  odds: { paceM: within(0.01, 2), player: mostly(player) },
  compare: { pacesM: mostly(fc.array(within(0.01, 2), { maxLength: 3 })), player: mostly(player) },
};

const spoil = (text: string, cut: number, how: number): string =>
  how === 0
    ? text.slice(0, Math.floor(cut * text.length))
    : how === 1
      ? text.replace(/-?\d+(\.\d+)?/, '1e999')
      : text;

/** Planes for all commands, grids for rolls and reads; these two far more often: each answer with odds takes over a second. */
const anyCommand = fc.oneof(
  { weight: sized(25, 5), arbitrary: fc.constantFrom<Command>('roll', 'read') },
  { weight: 1, arbitrary: fc.constantFrom<Command>('odds', 'compare') },
);
const question = anyCommand.chain((command) =>
  fc
    .tuple(
      fc.record({
        surface: mostly(command === 'roll' || command === 'read' ? fc.oneof(plane, grid) : plane),
        greenSpeedFt: within(3, 20),
        ballM: point,
        holeM: point,
        ...own[command],
      }),
      fc.oneof(
        { weight: 5, arbitrary: fc.constant(undefined) },
        {
          weight: 1,
          arbitrary: fc.constantFrom('capture', 'wind', '__proto__', 'constructor', 'toString'),
        },
      ),
      fc.constantFrom<unknown>('simple', 'freeFall', 3),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.integer({ min: 0, max: 14 }),
    )
    .map(([request, extra, value, cut, how]) => {
      const text = JSON.stringify(request);
      const longer = extra === undefined ? text : `{"${extra}":${JSON.stringify(value)},${text.slice(1)}`;
      return { command, text: spoil(longer, cut, how) };
    }),
);

/** Requests asked. */
const RUNS = sized(200, 600);

it('answers or refuses in one line each of hundreds of random requests, most of them wrong', () => {
  let answered = 0;
  let refused = 0;
  fc.assert(
    fc.property(question, ({ command, text }) => {
      const outcome = run([command, '--json'], text);
      if (outcome.exitCode === 0) {
        answered += 1;
        expect(outcome.stderr).toBe('');
        const { status } = JSON.parse(outcome.stdout) as { status?: unknown };
        if (command !== 'compare')
          expect(['ok', 'noLine', 'holed', 'atRest', 'neverStops', 'leftSurface']).toContain(status);
        // JSON has no NaN: it would have been written as null, which only these may be.
        expect(
          outcome.stdout.replaceAll(/"(restM|aimOffsetM|fewestPutts|mostHoled)":null/g, ''),
        ).not.toContain('null');
      } else {
        refused += 1;
        expect(outcome.exitCode).toBe(2);
        expect(outcome.stdout).toBe('');
        expect(outcome.stderr).toMatch(/^[^\n\r]*got [^\n\r]+, expected [^\n\r]+\n$/);
        expect(outcome.stderr.length).toBeLessThan(500);
      }
    }),
    { seed: 2026, numRuns: RUNS },
  );
  // Neither kind may be so rare that the test checks nothing.
  expect(answered).toBeGreaterThan(0.15 * RUNS);
  expect(refused).toBeGreaterThan(0.5 * RUNS);
}, 300_000);

it('refuses in one line whatever words are typed', () => {
  const word = fc.oneof(
    fc.constantFrom(
      ...COMMANDS,
      '--length',
      '--slope',
      '--ball',
      '--green-speed',
      '--pace',
      '--',
      '-',
      '=',
      '--=',
      '--json',
      '12ft',
      '2%',
    ),
    fc.string({ unit: 'binary', maxLength: 12 }),
  );
  fc.assert(
    fc.property(
      fc.array(word, { maxLength: 8 }),
      fc.string({ unit: 'binary', maxLength: 30 }),
      (argv, text) => {
        const outcome = run(argv, text);
        if (outcome.exitCode === 0) expect(outcome.stderr).toBe('');
        else {
          expect(outcome.exitCode).toBe(2);
          expect(outcome.stdout).toBe('');
          // biome-ignore lint/suspicious/noControlCharactersInRegex: a control character would break the one line
          expect(outcome.stderr).toMatch(/^[^\u0000-\u001f\u007f-\u009f\u2028\u2029]+\n$/);
        }
      },
    ),
    { seed: 2027, numRuns: sized(200, 500) },
  );
});
