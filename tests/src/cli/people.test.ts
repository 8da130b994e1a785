/** The command line as a person types and reads it. */
import { describe, expect, it, vi } from 'vitest';
import { FLAGS } from '../../../src/cli/flags.ts';
import { PAGES } from '../../../src/cli/help.ts';
import { COMMANDS } from '../../../src/cli/request.ts';
import { run } from '../../../src/cli/run.ts';

vi.mock('../../../src/cli/workLimit.ts', async (original) => {
  const real = await original<typeof import('../../../src/cli/workLimit.ts')>();
  const { tablesOnce } = await import('../../support/tablesOnce.ts');
  return { ...real, tableWithin: tablesOnce(real.tableWithin) };
});

const page = (line: string): string => {
  const outcome = run(line.split(' '), '');
  expect(outcome.stderr).toBe('');
  expect(outcome.exitCode).toBe(0);
  return outcome.stdout;
};

const PUTT = '--length 12ft --slope 2% --ball 3:00 --green-speed 10';

describe('the help', () => {
  it('lists the commands, each with an example', () => {
    for (const command of COMMANDS) expect(page('--help')).toContain(`${command} --length`);
  });
  it.each(COMMANDS)("of %s names its flags, says which side 3 o'clock is, and gives examples", (command) => {
    const text = page(`${command} --help`);
    for (const flag of FLAGS[command]) expect(text).toContain(`--${flag} `);
    expect(text).toMatch(/3:00 is pin-high\s+on the right as you look uphill \(the putt breaks left\)/);
    expect(text).toContain('Examples:');
  });
  it.each(COMMANDS)(
    'of %s shows a request for programs that works, and names every field of its answer',
    (command) => {
      const text = page(`${command} --help`);
      const request = text.split('\n').find((line) => line.trim().startsWith('{"surface"')) ?? '';
      const outcome = run([command, '--json'], request);
      expect(outcome.exitCode).toBe(0);
      const shown = text.slice(text.indexOf('Response:'));
      const inherited = command === 'compare' ? page('read --help') + page('odds --help') : '';
      for (const [, name] of outcome.stdout.matchAll(/"(\w+)":/g))
        expect(shown + inherited).toContain(`"${name}"`);
    },
  );
  const examples = COMMANDS.flatMap((command) => [...PAGES[command].examples]);
  it.each(examples)('has an example that works: %s', (example) => {
    const text = page(example);
    expect(text).not.toMatch(/NaN|undefined|Infinity|null/);
    expect(text.replaceAll('\n', ' ')).toContain('Rule 4.3a');
  });
  const missed = `roll ${PUTT} --start 40 --speed 3`;
  it.each([...examples, missed])('leads to a page that fits 80 columns: %s', (line) => {
    for (const text of page(line).split('\n')) expect(text.length).toBeLessThanOrEqual(80);
  });
});

describe('the answer for people', () => {
  it('begins with a sentence, then a table with units, then the caution', () => {
    const text = page(`compare ${PUTT}`);
    const [answer] = text.split('\n');
    expect(answer).toMatch(/^(Die it in here|Firm it in here|Die or firm)/);
    expect(text).toMatch(/\n +past +aim +holed/);
    // 15 cm and 75 cm past, the defaults, in inches.
    expect(text).toMatch(/\n *6 in .*die/);
    expect(text).toMatch(/\n *30 in .*firm/);
    expect(text).toMatch(/\n.*% .*fewest/);
    expect(text).toMatch(/\n.*% .*most/);
    const [, last] = text.trimEnd().split(/^(?=For practice and review)/m);
    expect(last.replaceAll('\n', ' ')).toContain('Left out: grain, wind, bumps, spin');
  });

  it('ends every cell of the table under the end of its head', () => {
    const lines = page(`compare ${PUTT}`).split('\n');
    const head = lines.findIndex((line) => /^ +past /.test(line));
    const body = lines.slice(head + 1, lines.indexOf('', head));
    expect(body.length).toBeGreaterThan(10);
    const ends = [...lines[head].matchAll(/\S+/g)].map(({ index, 0: word }) => index + word.length);
    for (const line of body)
      for (const end of ends) {
        expect(line[end - 1]).toMatch(/\S/);
        expect(line[end] ?? ' ').toBe(' ');
      }
  });

  it('does not show two rows for paces that read the same', () => {
    const text = page(`compare ${PUTT} --die 6in --firm 30in`);
    expect(text.match(/^ *6 in +\d+ in right/gm)).toHaveLength(1);
    expect(text.match(/^ *30 in +\d+ in right/gm)).toHaveLength(1);
    const same = page(`compare ${PUTT} --die 12in --firm 12in`);
    expect(same).toMatch(/^ *12 in .*die, firm/m);
    expect(same).toMatch(/^Die or firm: no difference/);
  });

  it('is metric when the length is typed in metres, or when asked', () => {
    expect(page('read --length 3.5m --slope 2% --ball 3:00 --green-speed 10')).toMatch(/Aim \d+ cm/);
    expect(page(`read ${PUTT} --units metric`)).toMatch(/Aim \d+ cm/);
    expect(page(`read ${PUTT}`)).toMatch(/Aim [\d.]+ in/);
  });

  // Facing the hole from 3 o'clock (12 straight uphill of it), downhill is to the left: it breaks left, so the aim is right.
  it("aims right of the hole from 3 o'clock, left from 9, straight from 6 and 12", () => {
    const from = (clock: string): string =>
      page(`read --length 12ft --slope 2% --ball ${clock} --green-speed 10`).split('\n')[0];
    expect(from('3:00')).toMatch(/in right of the hole centre/);
    expect(from('9:00')).toMatch(/in left of the hole centre/);
    expect(from('6:00')).toMatch(/^Aim at the hole centre /);
    expect(from('12:00')).toMatch(/^Aim at the hole centre /);
  });

  it("needs more speed from 6 o'clock, below the hole, than from 12", () => {
    const speed = (clock: string): number => {
      const text = page(`read --length 12ft --slope 2% --ball ${clock} --green-speed 10`);
      return Number(/launch speed +([\d.]+) m\/s/.exec(text)?.[1]);
    };
    expect(speed('6:00')).toBeGreaterThan(speed('12:00') + 0.1);
  });

  it('needs no clock position on the level, and reads the same putt however its length is typed', () => {
    const level = (length: string): string =>
      page(`read --length ${length} --slope 0 --green-speed 10 --units imperial`);
    expect(level('12ft')).toContain('on the level');
    expect(level('144in')).toBe(level('12ft'));
    expect(level(`12'0"`)).toBe(level('12'));
  });

  it('takes a flag and its value in one word too', () => {
    expect(page('read --length=12ft --slope=2% --ball=3:00 --green-speed=10')).toBe(page(`read ${PUTT}`));
  });

  it('takes a start to the right by sign or by word', () => {
    const roll = (...start: string[]): string => {
      const { stdout } = run(['roll', ...PUTT.split(' '), '--speed', '2', '--start', ...start], '');
      return stdout;
    };
    expect(roll('-3')).toContain('3.00 deg right');
    expect(roll('3 right')).toBe(roll('-3'));
    expect(roll('3deg')).toContain('3.00 deg left');
  });

  it("changes a preset by the person's own errors and says so", () => {
    const text = page(`odds ${PUTT} --line-sd 3deg --pace-sd 15%`);
    expect(text).toContain('changed by flags');
    const holed = (line: string): number => Number(/holed +([\d.]+)%/.exec(page(line))?.[1]);
    expect(holed(`odds ${PUTT} --line-sd 3deg`)).toBeLessThan(holed(`odds ${PUTT} --line-sd 0.5deg`));
  });

  it('says why there is no line on a slope that holds no ball', () => {
    // 7.8%: MODEL.md section 1, derived.
    const reason = /^No line for 6 in past\. .*15\.0%[^%]*7\.8%/s;
    expect(page('read --length 12ft --slope 15% --ball 3:00 --green-speed 10')).toMatch(reason);
    expect(page('odds --length 12ft --slope 15% --ball 3:00 --green-speed 10')).toMatch(reason);
    expect(page('compare --length 12ft --slope 15% --ball 3:00 --green-speed 10')).toMatch(
      /^Neither pace has a line/,
    );
    expect(page('roll --length 12ft --slope 15% --ball 3:00 --green-speed 10 --start 0 --speed 2')).toMatch(
      /^It never stops/,
    );
  });
});
