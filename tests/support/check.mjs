/**
 * `npm test`: installs what is missing, then types, lint and dead code, then one run of all tests. The last line of the
 * output is always `N passed, N failed, N skipped`, also when a step before the tests fails. `--full` (`npm run test:full`):
 * long tests at their full size (size.ts).
 * Plain JavaScript with nothing but Node in it, because it runs before the packages are there.
 */
import { spawn } from 'node:child_process';

const NO_CLOSING_LINE = (failed) => `\n0 passed, ${failed} failed, 0 skipped`;

/** Runs a command with the output shown; resolves to whether it succeeded and what its last lines were. */
const run = (command, words) =>
  new Promise((resolve) => {
    console.log(`\n> ${command} ${words.join(' ')}`);
    const child = spawn(command, words, {
      stdio: ['ignore', 'pipe', 'inherit'],
      // npm's command is a script on Windows, which needs a shell to run.
      shell: process.platform === 'win32',
    });
    let tail = '';
    child.stdout.on('data', (chunk) => {
      process.stdout.write(chunk);
      tail = (tail + chunk).slice(-200);
    });
    child.on('error', (problem) => {
      console.error(`${command} did not start: ${problem.message}`);
      resolve({ ok: false, tail });
    });
    child.on('close', (code) => resolve({ ok: code === 0, tail }));
  });

const stop = (failures) => {
  console.error(`\nThe tests were not run. Failed before them: ${failures.join('; ')}.`);
  console.log(NO_CLOSING_LINE(failures.length));
  process.exit(1);
};

if (!(await run('npm', ['install', '--no-progress'])).ok) stop(['npm install']);

const steps = [
  ['types', ['tsc', '-p', 'tsconfig.json']],
  ['types of the engine without a browser or Node', ['tsc', '-p', 'sim/tsconfig.json']],
  ['lint and format (npm run format mends most)', ['biome', 'check']],
  ['dead code', ['knip']],
];
const failures = [];
// All of them, so that one run shows everything there is to mend.
for (const [name, [command, ...words]] of steps) if (!(await run(command, words)).ok) failures.push(name);
if (failures.length > 0) stop(failures);

if (process.argv.includes('--full')) process.env.BORROW_TEST_SIZE = 'full';
const { ok, tail } = await run('vitest', ['run']);
if (!/\d+ passed, \d+ failed, \d+ skipped\s*$/.test(tail)) console.log(NO_CLOSING_LINE(1));
process.exitCode = ok ? 0 : 1;
