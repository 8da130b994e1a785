/** The process around run.ts: words and standard input to it, its text and exit code to the shell. */
import { run, wantsInput } from './run.ts';

const readInput = async (): Promise<string> => {
  // A terminal would wait for typing nobody announced: it counts as nothing piped in.
  if (process.stdin.isTTY) return '';
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks).toString('utf8');
};

const argv = process.argv.slice(2);
const { stdout, stderr, exitCode } = run(argv, wantsInput(argv) ? await readInput() : '');
// A reader that stops early, such as head, is no error.
process.stdout.on('error', () => {});
process.stderr.write(stderr);
process.stdout.write(stdout);
process.exitCode = exitCode;
