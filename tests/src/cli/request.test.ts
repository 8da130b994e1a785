/**
 * Wrong requests to the command line. No engine numbers here: what counts is that each problem is told in one line that
 * says what was got, what was expected and how to mend it, with exit code 2 and nothing on standard output.
 */
import { describe, expect, it } from 'vitest';
import { type Outcome, run } from '../../../src/cli/run.ts';

const plane = { kind: 'plane', slope: 0.02, downhillDeg: 180 };
const base = { surface: plane, greenSpeedFt: 10, ballM: [0, 0], holeM: [0, 3.048] };
const player = { lineSdDeg: 1, paceSd: 0.06, paceBias: 0, slopeSd: 0.004, speedSd: 0.04, readBias: 0 };
const grid = {
  kind: 'grid',
  originM: [-1, -1],
  spacingM: 1,
  columns: 6,
  rows: 6,
  heightsM: Array.from({ length: 36 }, () => 0),
};

const ask = (command: string, request: unknown): Outcome =>
  run([command, '--json'], typeof request === 'string' ? request : JSON.stringify(request));

const expectProblem = (outcome: Outcome): void => {
  expect(outcome.exitCode).toBe(2);
  expect(outcome.stdout).toBe('');
  expect(outcome.stderr).toMatch(/^[^\n\r\u2028\u2029]*got [^\n]+, expected [^\n]+\. [A-Z][^\n]+\n$/);
  expect(outcome.stderr.length).toBeLessThan(500);
};

describe('a wrong JSON request', () => {
  it.each([
    ['nothing at all', ''],
    ['white space', ' \n\t'],
    ['something that is not JSON', '{"surface":'],
    ['NaN, which JSON lacks', JSON.stringify({ ...base, paceM: 0 }).replace('"paceM":0', '"paceM":NaN')],
    [
      'Infinity, which JSON lacks',
      JSON.stringify({ ...base, paceM: 0 }).replace('"paceM":0', '"paceM":-Infinity'),
    ],
    [
      'a number too large for a float',
      JSON.stringify({ ...base, paceM: 0 }).replace('"paceM":0', '"paceM":1e999'),
    ],
    ['a list', [base]],
    ['null', null],
    ['a number', 7],
    ['a text with a line break', '"a\\nb\\u2028c"'],
    ['ten thousand nested lists', `${'['.repeat(10_000)}${']'.repeat(10_000)}`],
    ['ten thousand nested objects in a field', `{"surface":${'{"a":'.repeat(10_000)}1${'}'.repeat(10_000)}}`],
    ['an unknown field', { ...base, paceM: 0.15, wind: 3 }],
    ['an unknown field of the surface', { ...base, paceM: 0.15, surface: { ...plane, grain: 1 } }],
    [
      'an own field named __proto__',
      `{"__proto__":{"slope":1},${JSON.stringify({ ...base, paceM: 0.15 }).slice(1)}`,
    ],
    [
      'a field of the surface named __proto__',
      JSON.stringify({ ...base, paceM: 0.15 }).replace('"kind"', '"__proto__":{},"kind"'),
    ],
    ['a field named constructor', { ...base, paceM: 0.15, constructor: 1 }],
    ['a missing pace', base],
    ['a pace of zero', { ...base, paceM: 0 }],
    ['a pace of six metres', { ...base, paceM: 6 }],
    ['a number as text', { ...base, paceM: '0.15' }],
    ['a green speed of 40 ft', { ...base, paceM: 0.15, greenSpeedFt: 40 }],
    ['a green speed of zero', { ...base, paceM: 0.15, greenSpeedFt: 0 }],
    ['a 0 ft putt', { ...base, paceM: 0.15, holeM: [0, 0] }],
    ['a putt of a hundred metres', { ...base, paceM: 0.15, holeM: [0, 100] }],
    ['coordinates with three numbers', { ...base, paceM: 0.15, ballM: [0, 0, 0] }],
    ['a slope of 30%', { ...base, paceM: 0.15, surface: { ...plane, slope: 0.3 } }],
    ['a negative slope', { ...base, paceM: 0.15, surface: { ...plane, slope: -0.02 } }],
    ['a surface of no known kind', { ...base, paceM: 0.15, surface: { ...plane, kind: 'bowl' } }],
    ['a missing surface', { ...base, paceM: 0.15, surface: undefined }],
    ['an unknown capture rule', { ...base, paceM: 0.15, capture: 'magnet' }],
    [
      'a grid with a height too few',
      { ...base, paceM: 0.15, surface: { ...grid, heightsM: grid.heightsM.slice(1) } },
    ],
    ['a grid of three columns', { ...base, paceM: 0.15, surface: { ...grid, columns: 3 } }],
    ['a grid of half a row', { ...base, paceM: 0.15, surface: { ...grid, rows: 6.5 } }],
    ['a grid too large to hold', { ...base, paceM: 0.15, surface: { ...grid, columns: 2000, rows: 2000 } }],
    [
      'a grid with a wall',
      { ...base, paceM: 0.15, surface: { ...grid, heightsM: [9, ...grid.heightsM.slice(1)] } },
    ],
    [
      'a height that is null',
      { ...base, paceM: 0.15, surface: { ...grid, heightsM: [null, ...grid.heightsM.slice(1)] } },
    ],
    ['a hole off the green', { ...base, paceM: 0.15, surface: grid, holeM: [0, 5] }],
    ['a ball off the green', { ...base, paceM: 0.15, surface: grid, ballM: [-1.5, 0] }],
  ])('is refused in one line: %s', (_, request) => {
    expectProblem(ask('read', request));
  });

  it.each([
    ['a negative line SD', { ...player, lineSdDeg: -1 }],
    ['a read bias of -1, which leaves no break', { ...player, readBias: -1 }],
    ['a distance SD of 800%', { ...player, paceSd: 8 }],
    ['a missing field', { ...player, slopeSd: undefined }],
    ['an unknown field', { ...player, nerve: 1 }],
    ['a slope misread by half', { ...player, slopeSd: 0.5 }],
    ['a preset name', 'tour'],
  ])('is refused for a player with %s', (_, wrong) => {
    expectProblem(ask('odds', { ...base, paceM: 0.15, player: wrong }));
  });

  it('names what took the place of the read as a share of the break, in a request and as a flag', () => {
    const { slopeSd: _slope, speedSd: _speed, ...rest } = player;
    const asked = ask('odds', { ...base, paceM: 0.15, player: { ...rest, readSd: 0.2 } });
    expectProblem(asked);
    const flagged = run(
      ['odds', '--length', '8ft', '--slope', '2%', '--ball', '3:00', '--read-sd', '20%'],
      '',
    );
    expectProblem(flagged);
    expect(asked.stderr).toMatch(/player: got the field "readSd", expected slopeSd and speedSd in its place/);
    expect(flagged.stderr).toMatch(/--read-sd: got it, expected --slope-sd and --speed-sd in its place/);
    // How to turn one into the other: 0.2 of the break on a slope of 1.6% is 0.32% of slope.
    for (const { stderr } of [asked, flagged]) expect(stderr).toContain('slopeSd = 0.016 x readSd');
  });

  it.each([
    ['no paces', []],
    ['a pace for a list', 0.15],
    ['a pace of zero among them', [0.15, 0]],
    ['more paces than a person could read', Array.from({ length: 501 }, () => 0.1)],
  ])('is refused for a comparison of %s', (_, pacesM) => {
    expectProblem(ask('compare', { ...base, pacesM, player }));
  });

  it.each([
    ['no launch speed', { ...base, startDeg: 0 }],
    ['a launch speed of zero', { ...base, startDeg: 0, speed: 0 }],
    ['a launch speed of 11 m/s', { ...base, startDeg: 0, speed: 11 }],
    ['a start angle of a thousand degrees', { ...base, startDeg: 1000, speed: 2 }],
    ["another command's field", { ...base, startDeg: 0, speed: 2, paceM: 0.15 }],
  ])('is refused for a roll with %s', (_, request) => {
    expectProblem(ask('roll', request));
  });

  it('names the field, what it got and the limits', () => {
    expect(ask('read', { ...base, paceM: 0.15, greenSpeedFt: 40 }).stderr).toBe(
      'greenSpeedFt: got 40, expected a Stimpmeter reading in feet from 3 to 20. Most greens read 7 to 13.\n',
    );
  });
  it('names the place in a list and counts the other problems', () => {
    const { stderr } = ask('compare', { ...base, greenSpeedFt: 10, pacesM: [0.15, 'far', -1], player });
    expect(stderr).toContain('pacesM[1]: got "far"');
    expect(stderr).toContain('(1 more problem after this one.)');
  });
});

describe('wrong words on the command line', () => {
  const putt = ['--length', '12ft', '--slope', '2%', '--ball', '3:00', '--green-speed', '10'];
  it.each([
    ['no command', []],
    ['an unknown command', ['putt']],
    ['a command with a prototype name', ['constructor']],
    ['a missing length', ['read', ...putt.slice(2)]],
    ['a missing clock position on a slope', ['read', ...putt.slice(0, 4), ...putt.slice(6)]],
    ['a missing launch speed', ['roll', ...putt, '--start', '0']],
    ['an unknown flag', ['read', ...putt, '--wind', '3']],
    ['a flag of another command', ['read', ...putt, '--die', '6in']],
    ['a flag twice', ['read', ...putt, '--length', '10ft']],
    ['a flag without its value at the end', ['read', ...putt, '--pace']],
    ['a flag without its value before another', ['read', '--length', ...putt.slice(2)]],
    ['a flag with an empty value', ['read', ...putt, '--pace=']],
    ['a stray word', ['read', 'fast', ...putt]],
    ['an unreadable length', ['read', '--length', 'twelve', ...putt.slice(2)]],
    ['a length of zero', ['read', '--length', '0', ...putt.slice(2)]],
    ['an endless length', ['read', '--length', '1e9', ...putt.slice(2)]],
    ['a green speed of 40', ['read', ...putt.slice(0, 6), '--green-speed', '40']],
    ['a clock position past twelve', ['read', ...putt.slice(0, 4), '--ball', '25:00', ...putt.slice(6)]],
    ['a slope of 90%', ['read', '--length', '12ft', '--slope', '90%', ...putt.slice(4)]],
    ['an unknown preset', ['odds', ...putt, '--player', 'champion']],
    ['an unreadable angle', ['odds', ...putt, '--line-sd', 'wide']],
    ['an unreadable speed', ['roll', ...putt, '--start', '0', '--speed', 'fast']],
    ['an unknown capture rule', ['read', ...putt, '--capture', 'magnet']],
    ['flags beside --json', ['read', ...putt, '--json']],
    ['--json twice', ['read', '--json', '--json']],
  ])('are refused in one line: %s', (_, argv) => {
    expectProblem(run(argv, ''));
  });
});
