/**
 * Reports: tables of the model beside published records, for people who want to know how far to trust it. Answers for: their
 * flags, their words. Leaves out: every number (sim/benchmarks), single putts (tables.ts).
 */
import {
  BENCHMARK_CAPTURE,
  type BestPace,
  bestPaces,
  type ComparedFigure,
  compareWithRecord,
  type Direction,
  EARLIER_IDS,
  feetToMetres,
  metresToFeet,
  metresToInches,
  misfitOf,
  PLAIN_PACE,
  type Player,
  PRESETS,
  PUBLISHED_PACES,
  PUBLISHED_PLAYERS,
  type PublishedFigure,
  playerOfHandicap,
  playThirds,
  presetOf,
  RECORD_PRESETS,
  radiansToDegrees,
} from '../../sim/index.ts';
import { errorsPage } from './errorsReport.ts';
import { columns, wrap } from './layout.ts';
import type { Checked } from './request.ts';
import { showValue } from './show.ts';

/** In the order the help lists them. */
export const REPORTS = ['benchmarks', 'best-paces', 'directions', 'errors'] as const;
export type Report = (typeof REPORTS)[number];
export const isReport = (text: string): text is Report => (REPORTS as readonly string[]).includes(text);

export const REPORT_FLAGS: Readonly<Record<Report, readonly string[]>> = {
  benchmarks: ['player'],
  'best-paces': ['player', 'handicap'],
  directions: ['player', 'handicap'],
  errors: [],
};

/** Whose errors, and what to call them. */
interface Someone {
  readonly name: string;
  readonly player: Player;
  readonly note: string | undefined;
}

const refuse = (problem: string): { readonly ok: false; readonly problem: string } => ({
  ok: false,
  problem,
});

const flagsOf = (report: Report, words: readonly string[]): Checked<ReadonlyMap<string, string>> => {
  const known = REPORT_FLAGS[report];
  const flags = new Map<string, string>();
  for (let index = 0; index < words.length; index += 1) {
    const word = words[index];
    const equals = word.indexOf('=');
    const name = word.startsWith('--') ? word.slice(2, equals < 0 ? undefined : equals) : undefined;
    if (name === 'json')
      return refuse(`--json: got it with ${report}, expected it elsewhere. A report is for people only.`);
    if (name === undefined || !known.includes(name))
      return refuse(
        `got ${showValue(word)}, expected ${known.map((flag) => `--${flag}`).join(' or ') || 'nothing after the name'}. Run ${report} --help for examples.`,
      );
    if (flags.has(name)) return refuse(`--${name}: got it twice, expected it once. Remove one.`);
    if (equals < 0) index += 1;
    const value = equals < 0 ? words[index] : word.slice(equals + 1);
    if (value === undefined || value.trim() === '' || value.startsWith('--'))
      return refuse(`--${name}: got no value, expected one after it. Run ${report} --help for examples.`);
    flags.set(name, value.trim());
  }
  return { ok: true, value: flags };
};

const HANDICAP = /^(\+|-|\u2212)?(\d{1,3}(?:[.,]\d+)?)$/;
/** "6", or "+5" as players and "-5" as accounts write what is better than scratch: strokes, better negative. */
export const parseHandicap = (text: string): number | undefined => {
  const found = HANDICAP.exec(text);
  if (!found) return undefined;
  const size = Number(found[2].replace(',', '.'));
  return found[1] === undefined || size === 0 ? size : -size;
};

const someoneOf = (flags: ReadonlyMap<string, string>): Checked<Someone> => {
  const id = flags.get('player');
  const handicap = flags.get('handicap');
  if (id !== undefined && handicap !== undefined)
    return refuse('--handicap: got it beside --player, expected one of them. Remove the other.');
  if (handicap !== undefined) {
    const strokes = parseHandicap(handicap);
    if (strokes === undefined)
      return refuse(
        `--handicap: got ${showValue(handicap)}, expected strokes such as 6, or +5 for better than scratch. Type a number.`,
      );
    const { player, clamped, source } = playerOfHandicap(strokes);
    return {
      ok: true,
      value: { name: `Handicap ${handicap}`, player, note: `${source}${clamped ? ` ${clamped}` : ''}` },
    };
  }
  const preset = presetOf(id ?? PRESETS[0].id);
  if (preset === undefined)
    return refuse(
      `--player: got ${showValue(id)}, expected ${PRESETS.map((one) => one.id).join(', ')}. Type one of them.`,
    );
  return { ok: true, value: { name: preset.name, player: preset.player, note: undefined } };
};

const errorsOf = ({ lineSd, paceSd, slopeSd, speedSd }: Player): string =>
  `start line ${radiansToDegrees(lineSd).toFixed(2)} deg, pace ${(100 * paceSd).toFixed(1)}%, slope misread by ${(100 * slopeSd).toFixed(2)}%, green speed by ${(100 * speedSd).toFixed(0)}%`;

const paragraphs = (...parts: readonly (string | undefined)[]): string =>
  `${parts.filter((part) => part !== undefined).join('\n\n')}\n`;

const WHAT: Readonly<Record<PublishedFigure['what'], string>> = {
  holed: 'holed',
  threePutt: 'three putts',
  meanPutts: 'mean putts',
  short: 'left short',
  leaveFeet: 'leave, ft',
  upLessDown: 'uphill less downhill, points',
  downOverUp: 'sidehill, with a fall over with a climb',
};
const MARKS = { read: 'read', secondHand: 'second-hand', memory: 'memory' } as const;

/** A share as points, a mean of putts and a leave with as many decimals as they are printed with. */
const valueWords = (what: PublishedFigure['what'], value: number): string =>
  what === 'meanPutts' || what === 'downOverUp'
    ? value.toFixed(2)
    : what === 'leaveFeet'
      ? value.toFixed(1)
      : `${(100 * value).toFixed(1)}%`;

const differenceWords = (what: PublishedFigure['what'], difference: number): string => {
  const text =
    what === 'meanPutts'
      ? difference.toFixed(3)
      : what === 'leaveFeet' || what === 'downOverUp'
        ? difference.toFixed(2)
        : (100 * difference).toFixed(1);
  return Number(text) > 0 ? `+${text}` : text.replace(/^-(0\.0+)$/, '$1');
};

const figureLine = ({ figure, ours, fitted }: ComparedFigure): string[] => [
  `${+figure.feet.toFixed(1)} ft`,
  figure.on === undefined
    ? WHAT[figure.what]
    : `${figure.what === 'leaveFeet' ? `${figure.on.direction}, leave, ft` : WHAT[figure.what]}, on ${(100 * figure.on.slope).toFixed(0)}%`,
  valueWords(figure.what, figure.value),
  valueWords(figure.what, ours),
  differenceWords(figure.what, ours - figure.value),
  `${figure.source}; ${MARKS[figure.mark]}${fitted ? '' : ', not fitted'}`,
];

const benchmarksPage = (flags: ReadonlyMap<string, string>): Checked<string> => {
  const ids = PUBLISHED_PLAYERS.map((record) => RECORD_PRESETS[record]);
  const id = flags.get('player') ?? ids[0];
  const record = PUBLISHED_PLAYERS.find((one) => RECORD_PRESETS[one] === id);
  const preset = presetOf(id);
  if (record === undefined || preset === undefined)
    return refuse(
      `--player: got ${showValue(id)}, expected ${ids.join(' or ')}, for whom there are records. Type one of them.`,
    );
  const compared = compareWithRecord(record, preset.player);
  const holed = compared.filter(({ figure }) => figure.what === 'holed');
  const farthest = Math.max(...holed.map(({ figure, ours }) => Math.abs(ours - figure.value)));
  return {
    ok: true,
    value: paragraphs(
      wrap(
        `${preset.name} beside published records: holed within ${(100 * farthest).toFixed(1)} points in all ${holed.length} rows.`,
      ),
      wrap(`${errorsOf(preset.player)}; capture rule: ${BENCHMARK_CAPTURE}. ${preset.source}`),
      columns([['', '', 'record', 'ours', 'differs', 'source'], ...compared.map(figureLine)]),
      wrap(
        `Ours: means over planes of 0.5 to 3%, all directions, green speeds of ${record === 'tour' ? '9.5 to 11.5' : '8.5 to 10.5'} ft (our mix), each putt at 85% of the pace of fewest putts; leave: mean of the medians. Differs: points, putts, feet or a ratio. Mean square of the fitted differences, each over what counts as one: ${misfitOf(compared).toFixed(2)}.`,
      ),
    ),
  };
};

const DIRECTIONS: readonly Direction[] = ['uphill', 'sidehill', 'downhill'];

const bestPacesPage = (flags: ReadonlyMap<string, string>): Checked<string> => {
  const someone = someoneOf(flags);
  if (!someone.ok) return someone;
  const { name, player, note } = someone.value;
  const found = bestPaces({ player });
  const slopes = [...new Set(found.map(({ slope }) => slope))];
  const ways: { slope: number; direction: Direction }[] = slopes.flatMap((slope) =>
    (slope === 0 ? (['sidehill'] as const) : DIRECTIONS).map((direction) => ({ slope, direction })),
  );
  const cell = (one: BestPace | undefined): string =>
    one === undefined
      ? '-'
      : `${metresToInches(one.pace).toFixed(0)}/${metresToInches(one.hoadley).toFixed(0)}`;
  const speeds = [...new Set(found.map(({ greenSpeed }) => greenSpeed))];
  const lengths = [...new Set(found.map(({ length }) => length))];
  const tables = speeds.map((speed) => {
    const head = ways.map(({ slope, direction }) =>
      slope === 0 ? 'level' : `${(100 * slope).toFixed(0)}%${direction.charAt(0)}`,
    );
    const body = lengths.map((length) => [
      `${metresToFeet(length).toFixed(0)} ft`,
      ...ways.map(({ slope, direction }) =>
        cell(
          found.find(
            (one) =>
              one.greenSpeed === speed &&
              one.length === length &&
              one.slope === slope &&
              one.direction === direction,
          ),
        ),
      ),
      '',
    ]);
    return `Green speed ${metresToFeet(speed).toFixed(0)} ft\n${columns([['', ...head, ''], ...body])}`;
  });
  const costly = found.reduce((worst, one) => (one.plainCosts > worst.plainCosts ? one : worst));
  const [softest, firmest] = PUBLISHED_PACES.commonPracticeInches;
  return {
    ok: true,
    value: paragraphs(
      wrap(
        `Best pace, inches past the covered hole: ours / two feet times the chance of holing (Hoadley 1994).`,
      ),
      wrap(`${name}: ${errorsOf(player)}; capture rule: ${BENCHMARK_CAPTURE}.${note ? ` ${note}` : ''}`),
      tables.join('\n\n'),
      wrap(
        `u, s, d: ball straight below the hole, pin-high, straight above. Elsewhere: ${metresToInches(PLAIN_PACE).toFixed(0)} in (Pelz, second-hand), ${softest} to ${firmest} in (common practice, no source). Playing ${metresToInches(PLAIN_PACE).toFixed(0)} in everywhere costs at most ${costly.plainCosts.toFixed(3)} putts here: ${metresToFeet(costly.length).toFixed(0)} ft ${costly.direction} on ${(100 * costly.slope).toFixed(0)}% at ${metresToFeet(costly.greenSpeed).toFixed(0)} ft.`,
      ),
    ),
  };
};

/** The slope misread, in those of the player's own. */
const MISREADS = [0, 0.5, 1, 1.5];
const ON = { length: feetToMetres(8), slope: 0.03, greenSpeed: feetToMetres(10.5) };

const directionsPage = (flags: ReadonlyMap<string, string>): Checked<string> => {
  const someone = someoneOf(flags);
  if (!someone.ok) return someone;
  const { name, player, note } = someone.value;
  const percent = (share: number): string => `${(100 * share).toFixed(1)}%`;
  const feet = (metres: number): string => metresToFeet(metres).toFixed(1);
  const rows = MISREADS.map((times) => {
    const slopeSd = times * player.slopeSd;
    const thirds = playThirds({ ...ON, player: { ...player, slopeSd } });
    const name = `${(100 * slopeSd).toFixed(2)}%`;
    if (thirds === undefined) return [name, ...Array.from({ length: 8 }, () => '-')];
    const { uphill, sidehill, downhill, sidehillUp, sidehillDown } = thirds;
    return [
      name,
      ...[uphill, sidehill, downhill].map(({ holed }) => percent(holed)),
      differenceWords('upLessDown', uphill.holed - downhill.holed),
      (sidehillDown.holed / sidehillUp.holed).toFixed(2),
      feet(uphill.leave),
      feet(downhill.leave),
      times === 1 ? '<- own' : '',
    ];
  });
  return {
    ok: true,
    value: paragraphs(
      wrap('Uphill or downhill: which is holed more turns on how far the player misreads the slope.'),
      wrap(
        `8 ft on 3%, green speed 10.5 ft; ${name}: ${errorsOf(player)}; capture rule: ${BENCHMARK_CAPTURE}.${note ? ` ${note}` : ''}`,
      ),
      columns([
        ['misread', 'up', 'side', 'down', 'up less down', 'fall/climb', 'left up, ft', 'down, ft', ''],
        ...rows,
      ]),
      wrap(
        'Thirds of the clock: 4 to 8 uphill, 10 to 2 downhill, the rest sidehill; fall/climb: sidehill putts holed from 1:30 over those from 4:30; left: median of the misses. Each putt at 85% of its pace of fewest putts. Published: the tour holes uphill putts from 8 ft 5 percent more often than downhill ones over all slopes, and sidehill-downhill ones on steep slopes almost 20 percent less often than sidehill-uphill ones (Broadie 2019, a column, read); uphill putts are significantly easier (1,290 attempts, doi 10.4324/9780203715000-12, abstract read); the physics alone favours downhill (Penner, second-hand); no difference (Fearing et al. 2011, second-hand). `benchmarks --player tour` sets the figures side by side.',
      ),
    ),
  };
};

type PageOf = (flags: ReadonlyMap<string, string>, stdinText: string) => Checked<string>;
const PAGES_OF: Readonly<Record<Report, PageOf>> = {
  benchmarks: benchmarksPage,
  'best-paces': bestPacesPage,
  directions: directionsPage,
  errors: (_flags, stdinText) => errorsPage(stdinText),
};

/** The words after the report's name, and standard input where it reads that, to its text, or the problem with them. */
export const reportPage = (report: Report, words: readonly string[], stdinText: string): Checked<string> => {
  const flags = flagsOf(report, words);
  return flags.ok ? PAGES_OF[report](flags.value, stdinText) : flags;
};

const PLAYERS = `  --player ID          whose errors: ${PRESETS.map(({ id }) => id).join(', ')}
                       or ${EARLIER_IDS.join(', ')}
  --handicap 9         or a player between the fitted ones; +2: above scratch`;

/** What each report is, its flags and an example: for help.ts. */
export const REPORT_HELP: Readonly<
  Record<Report, { readonly what: string; readonly flags: string; readonly examples: readonly string[] }>
> = {
  benchmarks: {
    what: 'Set the model beside published putting records, row by row.',
    flags: `  --player ID          ${PUBLISHED_PLAYERS.map((record) => RECORD_PRESETS[record]).join(', ')}`,
    examples: ['benchmarks --player tour'],
  },
  'best-paces': {
    what: 'List best paces by length, slope, direction and green speed.',
    flags: PLAYERS,
    examples: ['best-paces --player scratch', 'best-paces --handicap 9'],
  },
  directions: {
    what: 'Show whether uphill or downhill is holed more, by misread slope.',
    flags: PLAYERS,
    examples: ['directions --player tour'],
  },
  errors: {
    what: 'Find a player’s errors from a backup of their records.',
    flags: '  Standard input: a backup file, made on the screen “Your data”.',
    examples: ['errors < backup.json'],
  },
};
