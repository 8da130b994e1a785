/**
 * The real process: once as a person starts it (`npm run -s cli -- COMMAND`), then the program behind that script itself,
 * which starts faster.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { LONGEST_INPUT } from '../../../src/cli/run.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const OPTIONS = { cwd: root, encoding: 'utf8', maxBuffer: 64_000_000 } as const;

const start = (words: readonly string[], input: string) =>
  spawnSync(process.execPath, ['node_modules/tsx/dist/cli.mjs', 'src/cli/main.ts', ...words], {
    ...OPTIONS,
    input,
  });

const request = {
  surface: { kind: 'plane', slope: 0.02, downhillDeg: 180 },
  greenSpeedFt: 10,
  ballM: [0, 0],
  holeM: [0, 3.048],
  paceM: 0.3,
};

describe('npm run -s cli', () => {
  it('answers one JSON request on standard input with one response and nothing else', () => {
    const { stdout, stderr, status } = spawnSync('npm', ['run', '-s', 'cli', '--', 'read', '--json'], {
      ...OPTIONS,
      input: JSON.stringify(request),
      // npm's command is a script on Windows, which needs a shell to run.
      shell: process.platform === 'win32',
    });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect((JSON.parse(stdout) as { status: string }).status).toBe('ok');
  });
});

describe('the program behind it', () => {
  it.each([
    [
      'a green speed of 40',
      ['read', '--json'],
      JSON.stringify({ ...request, greenSpeedFt: 40 }),
      /^greenSpeedFt: got 40, /,
    ],
    ['empty standard input', ['odds', '--json'], '', /^got nothing on standard input, /],
    [
      'more input than it takes',
      ['roll', '--json'],
      ' '.repeat(LONGEST_INPUT) + JSON.stringify(request),
      /^got more than 32000000 characters/,
    ],
    ['an unknown command', ['putt'], '', /^got the command "putt", /],
  ])('refuses %s with one line, exit code 2 and nothing on standard output', (_, words, input, problem) => {
    const { stdout, stderr, status } = start(words, input);
    expect(stdout).toBe('');
    expect(status).toBe(2);
    expect(stderr).toMatch(problem);
    expect(stderr).toMatch(/^[^\n]+, expected [^\n]+\.\n$/);
  });

  it('takes a request with the mark that some programs put before a text', () => {
    const { stdout, status } = start(['read', '--json'], `\uFEFF${JSON.stringify(request)}`);
    expect(status).toBe(0);
    expect((JSON.parse(stdout) as { status: string }).status).toBe('ok');
  });

  it('prints the comparison for people', () => {
    const words = ['compare', '--length', '12ft', '--slope', '2%', '--ball', '3:00', '--green-speed', '10'];
    const { stdout, stderr, status } = start(words, '');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('fewest');
  });

  it('passes a response longer than a pipe holds in one piece', () => {
    const side = 121;
    const surface = {
      kind: 'grid',
      originM: [-2, -2],
      spacingM: 0.5,
      columns: side,
      rows: side,
      heightsM: Array.from({ length: side * side }, (_, index) => 0.02 * (index % side) * 0.5),
    };
    const { paceM: _, ...putt } = request;
    const { stdout, status } = start(
      ['roll', '--json'],
      JSON.stringify({ ...putt, surface, startDeg: -40, speed: 6 }),
    );
    expect(status).toBe(0);
    // A pipe holds 64 KiB on Linux (man 7 pipe), less elsewhere.
    expect(stdout.length).toBeGreaterThan(65_536);
    expect((JSON.parse(stdout) as { status: string }).status).toBe('atRest');
  });
});
