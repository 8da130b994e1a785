/** The real process, started as a person or a program would: `npm run -s cli -- COMMAND`. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));

const start = (words: readonly string[], input: string) =>
  spawnSync('npm', ['run', '-s', 'cli', '--', ...words], { cwd: root, input, encoding: 'utf8' });

const request = {
  surface: { kind: 'plane', slope: 0.02, downhillDeg: 180 },
  greenSpeedFt: 10,
  ballM: [0, 0],
  holeM: [0, 3.048],
  paceM: 0.3,
};

describe('npm run -s cli', () => {
  it('answers one JSON request on standard input with one response', () => {
    const { stdout, stderr, status } = start(['read', '--json'], JSON.stringify(request));
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect((JSON.parse(stdout) as { status: string }).status).toBe('ok');
  });

  it('refuses bad input with one line, exit code 2 and nothing on standard output', () => {
    const { stdout, stderr, status } = start(
      ['read', '--json'],
      JSON.stringify({ ...request, greenSpeedFt: 40 }),
    );
    expect(stdout).toBe('');
    expect(status).toBe(2);
    expect(stderr).toMatch(/^greenSpeedFt: got 40, expected [^\n]+\n$/);
  });

  it('refuses empty standard input the same way', () => {
    const { stdout, stderr, status } = start(['odds', '--json'], '');
    expect(stdout).toBe('');
    expect(status).toBe(2);
    expect(stderr).toMatch(/^got nothing on standard input, expected [^\n]+\n$/);
  });

  it('prints the comparison for people', () => {
    const words = ['compare', '--length', '12ft', '--slope', '2%', '--ball', '3:00', '--green-speed', '10'];
    const { stdout, stderr, status } = start(words, '');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('fewest putts');
  });

  it('passes a response longer than a pipe holds in one piece', () => {
    const side = 121;
    const surface = {
      kind: 'grid',
      originM: [-6, -6],
      spacingM: 0.1,
      columns: side,
      rows: side,
      heightsM: Array.from({ length: side * side }, (_, index) => 0.0123456789 * ((index % side) / 10)),
    };
    const { paceM: _, ...putt } = request;
    const { stdout, status } = start(
      ['roll', '--json'],
      JSON.stringify({ ...putt, surface, startDeg: 20, speed: 2.2 }),
    );
    expect(status).toBe(0);
    expect((JSON.parse(stdout) as { pathM: unknown[] }).pathM.length).toBeGreaterThan(30);
  });
});
