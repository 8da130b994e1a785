/** The week's plan in words: the answer, why each thing is there, what to expect, what moved. Data in, words out. */
import { type ErrorCost, type Moved, type MovedTopic, timeShares, WANTED_HITS } from '../../../sim/index.ts';
import { drillOf, nameOf } from '../../state/plans/names.ts';
import { testedIn } from '../../state/plans/plan.ts';
import { daysBetween } from '../../store/day.ts';
import type { Expected, Plan, PlanItem, PlanSession } from '../../store/planSchema.ts';
import { honest, STEP_WORDS, strokesWords } from '../../text/costs.ts';
import { formatGreenSpeed, formatPercent, formatSlope, formatWeekday } from '../../text/format.ts';
import { capital, formatPoints, formatSigned, plural, signedRange } from '../../text/phrases.ts';

/** "a, b and c" */
const listed = (texts: readonly string[]): string =>
  texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;

const costWords = ({ step, saved }: ErrorCost): string =>
  `${strokesWords(saved)} for ${STEP_WORDS[step].step}`;

/** "two weeks" where it is whole weeks. */
export const intervalWords = (days: number): string =>
  days === 7 ? 'a week' : days === 14 ? 'two weeks' : plural(days, 'day');

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];
const countWords = (count: number): string => COUNTS[count] ?? String(count);

const dearestWords = (costs: readonly ErrorCost[]): string => {
  const inOrder = [...costs].sort((one, other) => other.saved.value - one.saved.value);
  const [{ together }] = timeShares(costs);
  const dear = inOrder.filter(({ error }) => together.includes(error));
  if (inOrder.every(({ saved }) => honest(saved).low <= 0))
    return 'No step clearly saves you strokes, so that time is shared evenly';
  if (dear.length === 1)
    return `${capital(STEP_WORDS[dear[0].step].cause)} costs most, ${costWords(dear[0])}`;
  const causes = capital(listed(dear.map(({ step }) => STEP_WORDS[step].cause)));
  // Ranges of likely players: not alike, but not known which.
  if (dear.some(({ saved }) => saved.high > saved.low))
    return `${causes} cannot be told apart in what they cost, ${costWords(dear[0])}`;
  return `${causes} cost about alike, ${costWords(dear[0])}`;
};

/** The sets and the drills for the dearest errors, by name. */
const contentWords = ({ sessions, costs }: Plan): string => {
  const items = sessions.flatMap((session) => session.items);
  const sets = items.filter(({ kind, trains }) => kind === 'reading' && trains === 'read').length;
  const [{ together }] = timeShares(costs);
  const drills = items.filter(
    ({ kind, trains }) => kind === 'drill' && together.some((error) => error === trains),
  );
  const shown = drills.length > 0 ? drills : items.filter(({ kind }) => kind === 'drill');
  const names = [...new Set(shown.map(nameOf))].slice(0, 2).map((name) => `“${name}”`);
  const parts = [
    ...(sets > 0 ? [`${countWords(sets)} ${sets === 1 ? 'set' : 'sets'} of reading`] : []),
    ...names,
  ];
  return parts.length === 0 ? 'nothing fits into these sessions' : `${listed(parts)} this week`;
};

/** The answer in one sentence. */
export const weekHeadline = (plan: Plan): string => {
  const tested = testedIn(plan);
  const test =
    plan.test && tested
      ? `; test on ${formatWeekday(tested.session.day)}, again in ${intervalWords(daysBetween(tested.session.day, plan.test.againOn))}`
      : '';
  return `${dearestWords(plan.costs)}: ${contentWords(plan)}${test}.`;
};

/** What the plan rests on. */
export const basisWords = ({ source, holes, own, grass, carpet }: Plan): string => {
  const whose = source === 'demo' ? 'the invented player’s' : 'your own';
  const mix =
    own === 0
      ? 'No hole is recorded yet: first putts are a stated mix for a single-digit golfer (common practice, no source).'
      : own < 1
        ? `First putts: ${whose} from ${plural(holes, 'hole')}, filled up with a stated mix (common practice, no source).`
        : `First putts: ${whose}, from ${plural(holes, 'hole')}.`;
  return `${mix} Expected scores: with your errors as set, on grass at ${formatGreenSpeed(grass.greenSpeed)} with slopes up to ${formatSlope(grass.slope)}, on carpet at ${formatGreenSpeed(carpet.greenSpeed)}.`;
};

const SHARE_WORDS = { line: 'start line', pace: 'pace', read: 'reading' } as const;

/** How the time is shared, and by what rule. */
export const shareWords = ({ costs }: Plan): string => {
  const shares = timeShares(costs);
  const list = listed(shares.map(({ error, share }) => `${SHARE_WORDS[error]} ${formatPercent(share, 0)}`));
  const alike = shares.find(({ together }) => together.length > 1)?.together;
  const rule =
    alike === undefined
      ? 'by the strokes a step saves'
      : `by the strokes a step saves; ${listed(alike.map((error) => SHARE_WORDS[error]))} cannot be told apart and share evenly`;
  return `Time wanted: ${list}, ${rule}.`;
};

const TRAINS = {
  line: 'your start line',
  pace: 'your pace',
  read: 'your reading',
  mixed: 'all three',
  choice: 'choosing a pace',
};

/** Why it is there. */
export const whyWords = ({ trains, why }: Pick<PlanItem, 'trains' | 'why'>): string => {
  const what = TRAINS[trains];
  switch (why) {
    case 'dearest':
      return `Trains ${what}, which costs you most.`;
    case 'together':
      return `Trains ${what}, which costs you about as much as the dearest.`;
    case 'next':
      return `Trains ${what}, which costs you less, so it gets less time.`;
    case 'all':
      return 'Line, pace and read in one, as in a round; a third of its time counts for each.';
    case 'choice':
      return 'The best pace on each putt would save strokes against your usual one: learn where it differs.';
  }
};

/** Of a score: whole, or with one decimal for a mean. */
const mean = (value: number): string => value.toFixed(1);

const SET_SIZE = 10;

/** What a reading set's score is, by id. */
const SET_WORDS: Readonly<Record<string, string>> = {
  adaptive: `about ${Math.round(WANTED_HITS * SET_SIZE)} of ${SET_SIZE}: questions get harder until you hit so many`,
  'what-slope': 'no score to reach: it tells the sign and spread of your slopes',
  'die-or-firm': 'no score to reach: it tells the putts your choices cost',
};

/** Of the read drills. */
const READ_DRILL_WORDS =
  'no score to reach: it tells whether you see too little break or too much, and by how much';

/** "5.2 (3 to 7); 7 or more passes" */
export const expectedWords = (item: PlanItem): string => {
  if (item.kind === 'reading') return SET_WORDS[item.activity] ?? READ_DRILL_WORDS;
  const { expected } = item;
  if (expected === undefined) return 'being worked out…';
  if ('cannot' in expected) return expected.cannot;
  const lower = drillOf(item)?.scoring.better === 'lower';
  return `${mean(expected.mean)} (${expected.low} to ${expected.high}); ${expected.mark} or ${lower ? 'fewer' : 'more'} passes`;
};

/** What the test is, what to expect, when again, and what one repetition can tell. */
export const testWords = (plan: Plan): string | undefined => {
  const tested = testedIn(plan);
  if (plan.test === undefined || tested === undefined) return undefined;
  const { session, item } = tested;
  const days = intervalWords(daysBetween(session.day, plan.test.againOn));
  return `“${nameOf(item)}” first thing on ${formatWeekday(session.day)}, before practice tells, and again on ${formatWeekday(plan.test.againOn)}, ${days} later (common practice, no source: sooner, a drill learnt by heart passes for better putting).`;
};

export const testTells = (expected: Expected | undefined): string => {
  if (expected === undefined || 'cannot' in expected) return '';
  const { mean: middle, low, high, mark, chance, repetitions } = expected;
  const often =
    repetitions === undefined
      ? 'No number of repetitions anyone would do tells a step of improvement from none.'
      : repetitions === 1
        ? 'One repetition tells a step of improvement in about two tries of three.'
        : `It takes the total of some ${repetitions} repetitions on each side to tell a step of improvement: one retest alone says little.`;
  return `Expected: ${mean(middle)}, eight scores of ten from ${low} to ${high}. You pass at ${mark} about ${formatPercent(chance, 0)} of the time as you are. ${often}`;
};

export const GROUND_WORDS = { grass: 'grass', carpet: 'carpet, at home' } as const;

/** Minutes used and left. */
export const minutesWords = ({ items, minutes }: PlanSession): string => {
  const used = items.reduce((sum, item) => sum + item.minutes, 0);
  return used === minutes ? `${used} min` : `${used} of ${minutes} min`;
};

export const sessionTitle = ({ day, minutes, ground }: PlanSession): string =>
  `${formatWeekday(day)}: ${minutes} min, ${GROUND_WORDS[ground]}`;

const TOPICS: Readonly<Record<MovedTopic, { readonly name: string; readonly records: string }>> = {
  rounds: { name: 'Strokes gained per 18 holes', records: 'round' },
  putts: { name: 'Putts holed above the benchmark', records: 'putt' },
  reading: { name: 'Typical error of your reads at home', records: 'read' },
  test: { name: 'The test', records: 'score' },
};

const writerOf = ({ unit }: Moved): ((value: number) => string) =>
  unit === 'strokes'
    ? (value) => `${formatSigned(value)} strokes`
    : unit === 'share'
      ? (value) => `${formatPoints(value)} percentage points`
      : (value) => `${formatSigned(value, 1)} points`;

/** One topic: what moved, with its interval, and what it cannot say. */
export const movedWords = (moved: Moved): string => {
  const { topic, verdict, change, before, after } = moved;
  const { name, records } = TOPICS[topic];
  const counts = `${plural(before, records)} before, ${after} since`;
  if (change === undefined) return `${name}: nothing to compare yet (${counts}).`;
  const write = writerOf(moved);
  const size = `${write(change.value)} (${signedRange(change.low, change.high, write)}; ${counts})`;
  const least =
    change.smallestChange === undefined
      ? ''
      : Number.isFinite(change.smallestChange)
        ? ` Such a record would most likely show a change of ${write(change.smallestChange).replace('+', '')}, no smaller one.`
        : ' So few could not show any change.';
  if (verdict === 'cannotTell') return `${name}: cannot tell yet. The change is ${size}.${least}`;
  return `${name}: ${verdict}, ${size}.`;
};

/** The answer on what moved, in one sentence. */
export const movedHeadline = (moved: readonly Moved[]): string => {
  const known = moved.filter(({ change }) => change !== undefined);
  const sure = known.filter(({ verdict }) => verdict !== 'cannotTell');
  if (known.length === 0)
    return 'What moved? Nothing can be said before the next rounds, reads or the test’s repetition are in.';
  const names = (list: readonly Moved[]): string =>
    listed(list.map(({ topic }) => TOPICS[topic].name.toLowerCase()));
  if (sure.length === 0)
    return `What moved? It cannot be told yet: ${names(known)} changed by no more than chance makes.`;
  return `What moved: ${listed(sure.map(({ topic, verdict }) => `${TOPICS[topic].name.toLowerCase()} (${verdict})`))}; of the rest nothing can be said yet.`;
};

/** Of scores of the tested drill after the test and before its repetition. */
export const betweenWords = (count: number): string =>
  `${plural(count, 'score')} of the tested drill between the test and its repetition ${count === 1 ? 'counts' : 'count'} for neither: practised so soon, a drill is known by heart.`;

export const MOVED_MEANING =
  'A change is called better or worse only where its interval says so with all four looked at. Other greens, other lengths within a band and other weather are part of any change; that the week’s practice made it, no record of one player can show.';

/** Lines of a session in a calendar. */
export const calendarLines = (session: PlanSession, plan: Plan): string[] => [
  ...session.items.map((item) => {
    const test = plan.test?.item === item.id ? 'Test: ' : '';
    const score =
      item.expected === undefined && item.kind === 'drill' ? '' : `. Expected: ${expectedWords(item)}`;
    return `${item.minutes} min ${test}${nameOf(item)}${score}`;
  }),
  'For practice. During a round under the Rules of Golf ask for no line, speed or slope (Rule 4.3a).',
];

export const calendarTitle = ({ minutes, ground }: PlanSession): string =>
  `Putting practice, ${minutes} min, ${GROUND_WORDS[ground]}`;

export const againTitle = (item: PlanItem): string => `Putting test again: ${nameOf(item)}`;
export const againLines = (item: PlanItem): string[] =>
  [
    item.score === undefined ? '' : `First score: ${item.score}`,
    item.expected === undefined ? '' : `Expected: ${expectedWords(item)}`,
    'Same ground and green speed as the first time; write the score into The week.',
  ].filter((line) => line !== '');
