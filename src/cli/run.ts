/**
 * The command line as a function: words and standard input in, text and exit code out. Every wrong input ends in one line
 * on standard error and code 2. Leaves out: the process itself (main.ts).
 */
import { responses } from './answer.ts';
import { readFlags } from './flags.ts';
import { commandHelp, overview, reportHelp } from './help.ts';
import { isReport, REPORTS, reportPage } from './reports.ts';
import { COMMANDS, type Command, checkRequest, isCommand } from './request.ts';
import { oneLine, showValue } from './show.ts';
import { comparePage, oddsPage, readPage, rollPage } from './tables.ts';
import { TooMuchWork } from './workLimit.ts';

export interface Outcome {
  readonly stdout: string;
  readonly stderr: string;
  readonly exitCode: number;
}

/** Longest standard input taken, characters: a million heights with room to spare. */
export const LONGEST_INPUT = 32_000_000;

/** A mark some programs put before a text; JSON.parse would trip over it. */
const BYTE_ORDER_MARK = /^\uFEFF/;

const said = (stdout: string): Outcome => ({ stdout, stderr: '', exitCode: 0 });
const refused = (problem: string): Outcome => ({ stdout: '', stderr: `${oneLine(problem)}\n`, exitCode: 2 });

/** True when standard input must be read for these words. */
export const wantsInput = (argv: readonly string[]): boolean =>
  !argv.includes('--help') && (argv[0] === 'errors' || (argv.includes('--json') && !isReport(argv[0])));

const answerJson = (command: Command, text: string): Outcome => {
  if (text.trim() === '')
    return refused(
      `got nothing on standard input, expected one JSON request. Pipe it in; ${command} --help shows the flags for people.`,
    );
  if (text.length > LONGEST_INPUT)
    return refused(
      `got more than ${LONGEST_INPUT} characters on standard input, expected at most that many. Use a coarser grid.`,
    );
  let found: unknown;
  try {
    found = JSON.parse(text.replace(BYTE_ORDER_MARK, ''));
  } catch {
    return refused(
      `got ${showValue(text)}, expected one JSON request. Check quotes, commas and brackets; NaN and Infinity are not JSON.`,
    );
  }
  const request = checkRequest(command, found);
  if (!request.ok) return refused(request.problem);
  // The map of commands and the gate agree on types by name; TypeScript cannot follow that through the union.
  const respond = responses[command] as (value: unknown) => unknown;
  return said(`${JSON.stringify(respond(request.value))}\n`);
};

const answerFlags = (command: Command, words: readonly string[]): Outcome => {
  const page = <Name extends Command>(
    name: Name,
    show: (asked: Extract<ReturnType<typeof readFlags<Name>>, { ok: true }>['value']) => string,
  ): Outcome => {
    const asked = readFlags(name, words);
    if (!asked.ok) return refused(asked.problem);
    return said(show(asked.value));
  };
  switch (command) {
    case 'roll':
      return page('roll', rollPage);
    case 'read':
      return page('read', readPage);
    case 'odds':
      return page('odds', oddsPage);
    case 'compare':
      return page('compare', comparePage);
  }
};

/** @param argv the words after the program's name */
export const run = (argv: readonly string[], stdinText: string): Outcome => {
  try {
    return answer(argv, stdinText);
  } catch (problem) {
    if (problem instanceof TooMuchWork) return refused(problem.message);
    throw problem;
  }
};

const answer = (argv: readonly string[], stdinText: string): Outcome => {
  const [command, ...words] = argv;
  const names = [...COMMANDS, ...REPORTS];
  const expected = `${names.slice(0, -1).join(', ')} or ${names[names.length - 1]}`;
  if (command === undefined)
    return refused(`got no command, expected ${expected}. Run with --help for examples.`);
  if (command === '--help' || command === 'help') return said(overview());
  if (isReport(command)) {
    if (words.includes('--help')) return said(reportHelp(command));
    const page = reportPage(command, words, stdinText);
    return page.ok ? said(page.value) : refused(page.problem);
  }
  if (!isCommand(command))
    return refused(
      `got the command ${showValue(command)}, expected ${expected}. Run with --help for examples.`,
    );
  if (words.includes('--help')) return said(commandHelp(command));
  if (!words.includes('--json')) return answerFlags(command, words);
  const [extra] = words.filter((word) => word !== '--json');
  if (extra !== undefined || words.length > 1)
    return refused(
      `got ${showValue(extra ?? '--json')} beside --json, expected --json alone. Put everything in the request on standard input.`,
    );
  return answerJson(command, stdinText);
};
