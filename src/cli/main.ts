/**
 * The process around run.ts: words and standard input to it, its text and exit code to the shell. Codes: 0 answered, 2 bad
 * input, 1 a fault of the program itself.
 */
import { LONGEST_INPUT, run, wantsInput } from './run.ts';
import { oneLine } from './show.ts';

const readInput = async (): Promise<string> => {
  // A terminal would wait for typing nobody announced: it counts as nothing piped in.
  if (process.stdin.isTTY) return '';
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of process.stdin) {
    chunks.push(Buffer.from(chunk));
    bytes += chunks[chunks.length - 1].length;
    // Every further byte would only be refused; an endless stream would never end. Four bytes a character at most.
    if (bytes > 4 * LONGEST_INPUT) break;
  }
  return Buffer.concat(chunks).toString('utf8');
};

// A reader that stops early, such as head, is no error.
process.stdout.on('error', () => {});
const argv = process.argv.slice(2);
try {
  const { stdout, stderr, exitCode } = run(argv, wantsInput(argv) ? await readInput() : '');
  process.stderr.write(stderr);
  process.stdout.write(stdout);
  process.exitCode = exitCode;
} catch (fault) {
  process.stderr.write(`This is a fault of the program, not of your input: ${oneLine(String(fault))}\n`);
  process.exitCode = 1;
}
