/** What --help prints. Examples here, JSON included, are run by the tests, so they cannot go stale. */
import { PRESETS } from '../../sim/index.ts';
import { PAGE_WIDTH, wrap } from './layout.ts';
import { REPORT_HELP, REPORTS, type Report } from './reports.ts';
import { COMMANDS, type Command } from './request.ts';

const PUTT = `  --length 12ft        ball to hole: 12, 12ft, 12'6", 3.5m, 350cm
  --slope 2%           rise over run, percent
  --ball 3:00          where the ball lies, the hole being the centre of the
                       clock and 12:00 straight uphill of it: 3:00 is pin-high
                       on the right as you look uphill (the putt breaks left),
                       6:00 below the hole; not needed on the level
  --green-speed 10     Stimpmeter reading, feet
  --capture rim        which balls drop. rim: a rigid ball on the rim, with
                       lip-outs (default); simple: a published rule of thumb;
                       freeFall: only what falls in without touching
  --skid off           or on: the ball slides off the putter before it rolls, so
                       it leaves about a third faster (default off)
  --units imperial     or metric (default: as the length was typed)`;

const PACE = `  --pace 6in           how far past the covered hole it would stop
                       (default 15cm)`;

const playerFlags = (): string => `  --player ID          whose errors (default ${PRESETS[0].id}):
${PRESETS.map(({ id, source }) => wrap(`${id}: ${source}`, PAGE_WIDTH - 23).replace(/^/gm, ' '.repeat(23))).join('\n')}
  --line-sd 0.8deg     start line, SD
  --pace-sd 6%         pace of the stroke, SD as a share of the distance
  --pace-bias 0%       habit of pace: mean error of the distance
  --slope-sd 0.4%      slope misread, SD: two times in three 2% is seen as
                       1.6 to 2.4%
  --speed-sd 4%        green speed misread, SD as a share of it
  --read-bias -10%     habit of reading: all slope seen too large by this;
                       negative: too small, so too little break is played`;

/** The request of the example: ball at the origin, hole 10 ft away along +y, downhill to the left of the line. */
const JSON_PUTT = {
  surface: { kind: 'plane', slope: 0.02, downhillDeg: 180 },
  greenSpeedFt: 10,
  ballM: [0, 0],
  holeM: [0, 3.048],
  capture: 'rim',
  skid: false,
};
const JSON_PLAYER = { lineSdDeg: 0.8, paceSd: 0.06, paceBias: 0, slopeSd: 0.004, speedSd: 0.04, readBias: 0 };

const GRID =
  'A surface may also be {"kind":"grid","originM":[x,y],"spacingM":0.1,"columns":81,"rows":81,"heightsM":[...]}, heights row by row, x fastest.';
const CONVENTIONS =
  'Metres, m/s, seconds, degrees counter-clockwise, shares 0 to 1. downhillDeg counts from +x; startDeg and aimOffsetM from the ball-to-hole line, positive left as seen from the ball.';
const NO_LINE = 'Where no line exists: {"status":"noLine","reason":"..."}.';
const READ_FIELDS =
  '"status":"ok","startDeg","speed","aimOffsetM" (null: the start is 90 degrees off or more),"curveHeightM","apexM","arrivalSpeed","timeS"';
const ODDS_FIELDS =
  '"status":"ok","holed","short","high","low","lippedOut","threePutt","expectedPutts","leaveMedianM"';

interface Page {
  readonly what: string;
  readonly flags: () => string;
  readonly examples: readonly string[];
  /** A request that --json takes, and what its answer holds. */
  readonly request: object;
  readonly response: string;
}

export const PAGES: Readonly<Record<Command, Page>> = {
  roll: {
    what: 'Roll one ball and say where it ends.',
    flags: () => `${PUTT}
  --start 3deg         off the ball-to-hole line, positive left; "3 right" or -3
                       for the right
  --speed 2.1m/s       launch speed, m/s or ft/s`,
    examples: ['roll --length 10ft --slope 2% --ball 3:00 --green-speed 10 --start -6 --speed 1.9m/s'],
    request: { ...JSON_PUTT, startDeg: -6, speed: 1.9 },
    response:
      '{"status":"holed"|"atRest"|"neverStops"|"leftSurface","restM" (null: never stops),"timeS","pathM":[[x,y],...],"lippedOut"}',
  },
  read: {
    what: 'Say where to aim and how hard to hit it for a pace.',
    flags: () => `${PUTT}
${PACE}`,
    examples: [
      'read --length 12ft --slope 2% --ball 3:00 --green-speed 10 --pace 18in',
      'read --length 3.5m --slope 3% --ball 10:30 --green-speed 11 --pace 30cm',
    ],
    request: { ...JSON_PUTT, paceM: 0.15 },
    response: `{${READ_FIELDS}}. ${NO_LINE}`,
  },
  odds: {
    what: 'Say how often a player holes it at a pace, and what a miss leaves.',
    flags: () => `${PUTT}
${PACE}
${playerFlags()}`,
    examples: ['odds --length 8ft --slope 2% --ball 4:30 --green-speed 10 --pace 12in --line-sd 1.2deg'],
    request: { ...JSON_PUTT, paceM: 0.15, player: JSON_PLAYER },
    response: `{${ODDS_FIELDS}}; holed + short + high + low = 1 (high, low: missed past the hole on that side). ${NO_LINE}`,
  },
  compare: {
    what: 'Compare paces: die it in or firm, and what it is worth.',
    flags: () => `${PUTT}
  --die 15cm           your dying pace past the hole
  --firm 75cm          your firm one
${playerFlags()}`,
    examples: [
      'compare --length 12ft --slope 2% --ball 3:00 --green-speed 10',
      'compare --length 3.5m --slope 3% --ball 1:00 --green-speed 11 --die 10cm --firm 60cm --read-bias -15%',
    ],
    request: { ...JSON_PUTT, pacesM: [0.15, 0.75], player: JSON_PLAYER },
    response: `{"paces":[{"paceM", then the fields of read and of odds at that pace},...],"best":{"fewestPutts","mostHoled"} (metres past, null where no pace has a line)}. A pace without a line: {"paceM","status":"noLine","reason":"..."}.`,
  },
};

const RUN = 'npm run -s cli --';
const indent = (text: string): string => text.replace(/^/gm, '  ');
const paragraph = (text: string): string => indent(wrap(text, PAGE_WIDTH - 2));

export const commandHelp = (command: Command): string => {
  const { what, flags, examples, request, response } = PAGES[command];
  return `${command}: ${what}

${flags()}

Examples:
${examples.map((example) => indent(`${RUN} ${example}`)).join('\n')}

For programs, --json alone: one request on standard input, one response on
standard output. Bad input: one line on standard error and exit code 2.
Request:
  ${JSON.stringify(request)}
${paragraph(GRID)}
Response:
${paragraph(response)}
${paragraph(CONVENTIONS)}
`;
};

export const reportHelp = (report: Report): string => {
  const { what, flags, examples } = REPORT_HELP[report];
  return `${report}: ${what}

${flags}

Examples:
${examples.map((example) => indent(`${RUN} ${example}`)).join('\n')}

Takes up to half a minute. For people only: no --json.
`;
};

export const overview = (): string => `How much break to play, how firm to putt, and what that is worth.

  ${RUN} COMMAND --help

${COMMANDS.map((command) => `  ${command.padEnd(11)} ${PAGES[command].what}`).join('\n')}

Reports:
${REPORTS.map((report) => `  ${report.padEnd(11)} ${REPORT_HELP[report].what}`).join('\n')}

Examples:
${COMMANDS.map((command) => `  ${RUN} ${PAGES[command].examples[0]}`).join('\n')}
`;
