/** Three-putts, leaves and leans in words. Data in, words out. */
import { FEWEST_TO_CONCLUDE, type Lean, type LeanKind, type MeantKind } from '../../../sim/index.ts';
import { formatLeave, formatPercent, formatSpan, type Units } from '../../text/format.ts';
import { bandWords, benchmarkWords, capital, formatCount, plural, rangeWords } from '../../text/phrases.ts';
import type { MissesView } from './misses.ts';
import type { ThreePuttView } from './threePutts.ts';

export const threePuttHeadline = ({ all, expectedAll }: ThreePuttView, name: string): string => {
  if (all.value === undefined) return 'No hole putted out passes these filters.';
  const beside =
    expectedAll === undefined
      ? ''
      : `; ${benchmarkWords(name)}, from the same places ${formatPercent(expectedAll)}`;
  return `You three-putt ${formatPercent(all.value)} of greens (${rangeWords(all.low, all.high)}, ${formatCount(all.hits)} of ${formatCount(all.tries)})${beside}.`;
};

/** "From what distance am I more likely to three-putt than one-putt?" */
export const turningWords = (view: ThreePuttView, name: string, units: Units): string => {
  const bands = view.oneOrThree;
  const lastOne = bands.findLast(({ verdict }) => verdict === 'one')?.band;
  const firstThree = bands.find(({ verdict }) => verdict === 'three')?.band;
  const turns =
    view.benchmarkTurns === undefined
      ? ''
      : ` For ${benchmarkWords(name)}, that distance is ${formatLeave(view.benchmarkTurns, units)}.`;
  const upTo =
    lastOne === undefined || lastOne.to === Number.POSITIVE_INFINITY
      ? 'from everywhere'
      : bandWords({ from: 0, to: lastOne.to }, units).replace('under', 'up to');
  const where = 'From what distance are three putts likelier than one?';
  if (firstThree !== undefined && lastOne !== undefined)
    return `${where} One putt is clearly likelier for you ${upTo}, three ${bandWords(firstThree, units)}; in between your record cannot tell.${turns}`;
  if (firstThree !== undefined)
    return `${where} For you clearly ${bandWords(firstThree, units)}; nearer your record cannot tell.${turns}`;
  if (lastOne !== undefined)
    return `${where} One putt is clearly likelier for you ${upTo}; from farther your record cannot tell yet.${turns}`;
  return `${where} Your record cannot tell yet.${turns}`;
};

export const threePuttTitle = ({ rows }: ThreePuttView, name: string, units: Units): string =>
  `Three-putts by the distance of the first putt: ${rows
    .filter(({ threePutts }) => threePutts.tries > 0)
    .map(
      ({ band, threePutts }) =>
        `${bandWords(band, units)} ${formatPercent(threePutts.value ?? 0)} (${rangeWords(threePutts.low, threePutts.high)})`,
    )
    .join('; ')}. Bars are 95% intervals; upright strokes: ${benchmarkWords(name)}.`;

/** First way named, as counted. */
const WAYS: Readonly<Record<LeanKind, readonly [string, string]>> = {
  highLow: ['high', 'low'],
  leftRight: ['left', 'right'],
  shortPast: ['short', 'past'],
};

export const leanName = (kind: LeanKind): string => `${WAYS[kind][0]}, of ${WAYS[kind].join(' or ')}`;

/** One lean: the share, its count, and whether it is more than chance. */
export const leanWords = (kind: LeanKind, { share, verdict, way, correctedChance }: Lean): string => {
  const [first, second] = WAYS[kind];
  if (share.tries === 0) return `${capital(first)} or ${second}: nothing written down.`;
  // The way the verdict is about, or else the one most went.
  const turned = way === undefined ? 2 * share.hits < share.tries : way === 'second';
  const said = turned ? second : first;
  const hits = turned ? share.tries - share.hits : share.hits;
  const counted = `${formatCount(hits)} of ${plural(share.tries, 'miss', 'misses')} ${said}`;
  if (verdict === 'tooFew')
    return `${capital(counted)}: fewer than ${FEWEST_TO_CONCLUDE}, so nothing to conclude.`;
  const [low, high] = turned ? [1 - share.high, 1 - share.low] : [share.low, share.high];
  const interval = `${formatPercent(hits / share.tries)}, ${rangeWords(low, high)}`;
  return verdict === 'leans'
    ? `${capital(counted)} (${interval}): a lean. An even coin does that ${formatPercent(correctedChance)} of the time, all looks counted.`
    : `${capital(counted)} (${interval}): no more of a lean than chance makes.`;
};

export const missesHeadline = ({ all, leans }: MissesView, units: Units): string => {
  if (all.misses === 0 && leans.shortPast.share.tries === 0) return 'No misses pass these filters.';
  const leave =
    all.leave === undefined
      ? 'Where your misses finish is not written down'
      : `Half of your misses finish within ${formatLeave(all.leave.median, units)} of the hole, the middle half ${formatSpan(all.leave.lower, all.leave.upper, units)} (${plural(all.leave.count, 'miss', 'misses')})`;
  const found = (['highLow', 'leftRight', 'shortPast'] as const).flatMap((kind) => {
    const { way } = leans[kind];
    return way === undefined ? [] : [WAYS[kind][way === 'first' ? 0 : 1]];
  });
  return `${leave}; ${found.length === 0 ? 'they lean no way that chance would not make' : `they lean ${found.join(' and ')}`}.`;
};

/** What a lean means and does not. */
export const LEAN_MEANING =
  'A side alone does not tell read, aim, start and pace apart: a low miss may be too little break read, a start line pulled or pushed, or a putt hit too softly for its line. That is what "started as meant?" and "pace as meant?" are for. On line, or without a side written down, counts for neither.';

export const SHORT_MEANING =
  'Short or past is no fair coin: who plays every putt to finish past the hole misses past. Of misses from 10 ft, tour players leave 12% short and golfers averaging 90 leave 21% (Broadie 2014 and 2020). Leaning past is what a sensible pace does; it is leaning short that costs, less so from afar.';

export const MEANT_WORDS: Readonly<Record<MeantKind, string>> = {
  strokeAsMeant: 'both as meant: read or aim',
  startOff: 'start not as meant',
  paceOff: 'pace not as meant',
  notTold: 'not written down',
};
