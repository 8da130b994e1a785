/**
 * `npm test`: installs what is missing, then types, lint and dead code, then one run of all tests. The last line of the
 * output is always `N passed, N failed, N skipped`, also when a step before the tests fails. `--full` (`npm run test:full`):
 * long tests at their full size (size.ts).
 * Plain JavaScript with nothing but Node in it, because it runs before the packages are there.
 */
import { spawn } from 'node:child_process';

/** What ran before the tests and how long it took, for the end of the output. */
const took = [];

const NO_CLOSING_LINE = (failed) => `\n0 passed, ${failed} failed, 0 skipped`;

/** Runs a command with the output shown; resolves to whether it succeeded and what its last lines were. */
const show = (command, words) =>
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

/** The same for a step before the tests. */
const step = async (name, command, words) => {
  const began = performance.now();
  const { ok } = await show(command, words);
  took.push(`${name} ${((performance.now() - began) / 1000).toFixed(1)} s`);
  return ok;
};

const stop = (failures) => {
  console.error(
    `\nThe tests were not run. Failed before them: ${failures.join('; ')}. Most of lint and format is mended by npm run format.`,
  );
  console.log(`How long it took: ${took.join(', ')}.`);
  console.log(NO_CLOSING_LINE(failures.length));
  process.exit(1);
};

if (!(await step('npm install', 'npm', ['install', '--no-progress']))) stop(['npm install']);

const steps = [
  ['types', ['tsc', '-p', 'tsconfig.json']],
  ['types of the engine alone', ['tsc', '-p', 'sim/tsconfig.json']],
  ['lint and format', ['biome', 'check']],
  ['dead code', ['knip']],
];
const failures = [];
// All of them, so that one run shows everything there is to mend.
for (const [name, [command, ...words]] of steps) if (!(await step(name, command, words))) failures.push(name);
if (failures.length > 0) stop(failures);

if (process.argv.includes('--full')) process.env.BORROW_TEST_SIZE = 'full';
process.env.BORROW_STEPS_BEFORE = took.join(', ');
const { ok, tail } = await show('vitest', ['run']);
if (!/\d+ passed, \d+ failed, \d+ skipped\s*$/.test(tail)) console.log(NO_CLOSING_LINE(1));
process.exitCode = ok ? 0 : 1;
