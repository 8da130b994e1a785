/** What --help prints. Examples here are run by the tests, so they cannot go stale. */
import { PRESETS } from '../../sim/index.ts';
import { COMMANDS, type Command } from './request.ts';

const PUTT = `  --length 12ft        ball to hole: 12, 12ft, 12'6", 3.5m, 350cm
  --slope 2%           rise over run, percent
  --ball 3:00          where the ball lies round the hole: 12:00 straight uphill of it, 3:00 pin-high, 6:00 below
  --green-speed 10     Stimpmeter reading, feet
  --capture simple     or freeFall: which balls drop (default simple)
  --units imperial     or metric (default: as the length was typed)`;

const playerFlags =
  (): string => `  --player ${PRESETS[0].id}       whose errors: ${PRESETS.map(({ id }) => id).join(', ')}
  --line-sd 1deg       start line SD          --pace-sd 8%     distance SD, share of the distance
  --read-sd 20%        read SD, of the break  --read-bias -10% mean read error (negative: too little break)
  --pace-bias 0%       mean distance error`;

interface Page {
  readonly what: string;
  readonly flags: () => string;
  readonly examples: readonly string[];
}

export const PAGES: Readonly<Record<Command, Page>> = {
  roll: {
    what: 'Roll one ball and say where it ends.',
    flags: () => `${PUTT}
  --start 3deg         off the ball-to-hole line, positive left; "3 right" or -3 for the right
  --speed 2.1m/s       launch speed, m/s or ft/s`,
    examples: ['roll --length 10ft --slope 2% --ball 3:00 --green-speed 10 --start -6 --speed 1.9m/s'],
  },
  read: {
    what: 'Say where to aim and how hard to hit it for a pace.',
    flags: () => `${PUTT}
  --pace 6in           how far past the covered hole it would stop (default 15 cm)`,
    examples: [
      'read --length 12ft --slope 2% --ball 3:00 --green-speed 10 --pace 18in',
      'read --length 3.5m --slope 3% --ball 10:30 --green-speed 11 --pace 30cm',
    ],
  },
  odds: {
    what: 'Say how often a player holes it at a pace, and what a miss leaves.',
    flags: () => `${PUTT}
  --pace 6in           how far past the covered hole it would stop (default 15 cm)
${playerFlags()}`,
    examples: ['odds --length 8ft --slope 2% --ball 4:30 --green-speed 10 --pace 12in --line-sd 1.2deg'],
  },
  compare: {
    what: 'Compare paces: die it in or firm, and what it is worth.',
    flags: () => `${PUTT}
  --die 15cm           your dying pace past the hole   --firm 75cm   your firm one
${playerFlags()}`,
    examples: [
      'compare --length 12ft --slope 2% --ball 3:00 --green-speed 10',
      'compare --length 3.5m --slope 3% --ball 1:00 --green-speed 11 --die 10cm --firm 60cm --read-bias -15%',
    ],
  },
};

const RUN = 'npm run -s cli --';

export const commandHelp = (command: Command): string => {
  const { what, flags, examples } = PAGES[command];
  return `${command}: ${what}

${flags()}
  --json               one request on standard input, one response on standard output

Examples:
${examples.map((example) => `  ${RUN} ${example}`).join('\n')}
`;
};

export const overview = (): string => `How much break to play, how firm to putt, and what that is worth.

  ${RUN} COMMAND --help

${COMMANDS.map((command) => `  ${command.padEnd(8)} ${PAGES[command].what}`).join('\n')}

Examples:
${COMMANDS.map((command) => `  ${RUN} ${PAGES[command].examples[0]}`).join('\n')}
`;
