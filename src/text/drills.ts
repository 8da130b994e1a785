/**
 * Words of the putting drills: steps with their numbers filled in, how a score is counted, and the drawing in words.
 * Answers for: every number a drill's step may ask for, in the person's units. Leaves out: expected scores; how numbers are
 * written (format.ts).
 */
import { metresToInches, type PuttingDrill, scoreRange, strokesOf, type Zone } from '../../sim/index.ts';
import { formatClock, formatLength, formatShort, formatSlope, type Units } from './format.ts';

/** "4 ft", "4 and 6 ft", "4, 6 and 8 ft": the unit once, where it is the same. */
export function joined(texts: readonly string[]): string {
  const unit = texts[0]?.match(/ \S+$/)?.[0] ?? '';
  const all = [...new Set(texts)];
  const bare = all.every((text) => unit !== '' && text.endsWith(unit))
    ? all.map((text, i) => (i === all.length - 1 ? text : text.slice(0, -unit.length)))
    : all;
  return bare.length < 2 ? (bare[0] ?? '') : `${bare.slice(0, -1).join(', ')} and ${bare.at(-1)}`;
}

/** A gate is set to a tenth of an inch or to the millimetre: "2.2 in", "57 mm". */
export const formatGateWidth = (metres: number, units: Units): string =>
  units === 'imperial' ? `${metresToInches(metres).toFixed(1)} in` : `${Math.round(metres * 1000)} mm`;

/** Ball to gate: feet and inches are measured with the putter, so short ones are in inches. */
export const formatGateDistance = (metres: number, units: Units): string =>
  metres < 1 ? formatShort(metres, units) : formatLength(metres, units);

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** One limit of a box along the line: "18 in past", "6 in short". */
export const limitWords = (past: number, units: Units): string =>
  Math.abs(past) < 1e-9
    ? 'level with it'
    : `${formatShort(Math.abs(past), units)} ${past > 0 ? 'past' : 'short'}`;

/** "within 18 in", "from 12 in short to 24 in past, 4 ft wide". */
export function zoneWords(zone: Zone, units: Units): string {
  if (zone.shape === 'circle') return `within ${formatShort(zone.radiusM, units)}`;
  const width = zone.widthM === undefined ? '' : `, ${formatShort(zone.widthM, units)} wide`;
  return `from ${limitWords(-zone.shortM, units)} to ${limitWords(zone.pastM, units)}${width}`;
}

/** "3 points holed, 2 points within 18 in, 1 point within 35 in". */
function zonesWords({ scoring: { stroke }, target }: PuttingDrill, units: Units): string {
  if (stroke.kind !== 'zones') return '';
  return [
    ...(target === 'hole' && stroke.holed > 0 ? [`${plural(stroke.holed, 'point')} holed`] : []),
    ...stroke.zones.map((zone) => `${plural(zone.points, 'point')} ${zoneWords(zone, units)}`),
  ].join(', ');
}

/** Slopes up to here count as level in words and drawings, rise over run. */
const LEVEL = 0.01;
export const isLevel = ({ stations }: PuttingDrill): boolean =>
  stations.every(({ slope }) => slope[1] <= LEVEL);

const slopeWords = ({ stations }: PuttingDrill): string => {
  const low = Math.min(...stations.map(({ slope }) => slope[0]));
  const high = Math.max(...stations.map(({ slope }) => slope[1]));
  return high <= 0.005 ? 'next to nothing' : `${formatSlope(low).replace('%', '')} to ${formatSlope(high)}`;
};

/** The number a placeholder stands for; undefined: the drill has none such. */
function filled(name: string, drill: PuttingDrill, units: Units): string | undefined {
  const { stations, gates, scoring } = drill;
  const { tally } = scoring;
  switch (name) {
    case 'distances':
      return joined(stations.map(({ distanceM }) => formatLength(distanceM, units)));
    case 'balls':
      return joined(stations.map(({ balls }) => String(balls)));
    case 'strokes':
      return String(strokesOf(drill));
    case 'sets':
      return tally.kind === 'best' ? String(tally.sets) : undefined;
    case 'slope':
      return slopeWords(drill);
    case 'pace':
      return joined(stations.map(({ paceM }) => formatShort(paceM ?? drill.paceM, units)));
    case 'gateWidth':
      return gates.length > 0 ? joined(gates.map(({ widthM }) => formatGateWidth(widthM, units))) : undefined;
    case 'gateDistance':
      return gates.length > 0
        ? joined(gates.map(({ fromBallM }) => formatGateDistance(fromBallM, units)))
        : undefined;
    case 'zones':
      return zonesWords(drill, units) || undefined;
    case 'run':
      return tally.kind === 'run' ? String(tally.length) : undefined;
    case 'rungs':
      return tally.kind === 'ladder' ? String(stations.length) : undefined;
    case 'back':
      return tally.kind === 'ladder' ? (tally.back === 1 ? 'one' : String(tally.back)) : undefined;
    default:
      return undefined;
  }
}

/**
 * What to do, step by step, with all numbers.
 * @throws RangeError for a placeholder that this drill has no number for
 */
export const drillSteps = (drill: PuttingDrill, units: Units): string[] =>
  drill.steps.map((step) =>
    step.replace(/\{([^}]*)\}/g, (_, name: string) => {
      const text = filled(name, drill, units);
      if (text === undefined)
        throw new RangeError(
          `Got {${name}} in a step of "${drill.id}"; expected a number that this drill has. Reword the step.`,
        );
      return text;
    }),
  );

/** What the score is: "putts holed, of 12". */
export function scoreWords(drill: PuttingDrill): string {
  const { stroke, tally } = drill.scoring;
  const counted =
    stroke.kind === 'holed' ? 'balls holed' : stroke.kind === 'gate' ? 'balls through the gate' : 'points';
  if (tally.kind === 'run') return `longest run of ${counted}, up to ${tally.length}`;
  if (tally.kind === 'ladder')
    return `places behind you, of ${drill.stations.length}, in ${strokesOf(drill)} putts`;
  if (stroke.kind === 'holingOut' && drill.scoring.better === 'lower')
    return `putts for ${plural(strokesOf(drill), 'hole')}`;
  const of = `${counted}, of ${scoreRange(drill).most}`;
  return tally.kind === 'best' ? `best of ${tally.sets} counts of ${of}` : of;
}

/** In which order the places are played; undefined with one place. */
export function orderWords({ stations, order, scoring }: PuttingDrill): string | undefined {
  if (stations.length < 2) return undefined;
  if (scoring.tally.kind === 'ladder') return 'from 1 outwards';
  if (order === 'inTurn') return 'one ball from each in turn';
  return order === 'random' ? 'in random order' : 'all balls from 1, then 2, and so on';
}

export const drawingTitle = ({ name }: PuttingDrill): string => `Set-up of "${name}", seen from above`;

/** The drawing for whoever cannot see it. */
export function describeDrill(drill: PuttingDrill, units: Units): string {
  const { stations, gates, target, scoring } = drill;
  const places = stations.map(({ distanceM, clock, balls, paceM }) => {
    const where = target === 'hole' ? ` at ${formatClock(clock)}` : '';
    const pace = paceM === undefined ? '' : `, to stop ${formatShort(paceM, units)} past`;
    return `${plural(balls, 'ball')} from ${formatLength(distanceM, units)}${where}${pace}`;
  });
  const order = orderWords(drill);
  const sentences = [
    target === 'hole'
      ? `Round one hole, ${isLevel(drill) ? 'on level ground' : `on a slope of ${slopeWords(drill)}; 12:00 is straight uphill of the hole`}: ${places.join('; ')}.`
      : `On level ground, towards ${stations.length > 1 ? 'marks' : 'a mark'}: ${places.join('; ')}.`,
    ...(order === undefined ? [] : [`Order: ${order}.`]),
    ...gates.map(
      ({ widthM, fromBallM }) =>
        `A gate ${formatGateWidth(widthM, units)} wide, ${formatGateDistance(fromBallM, units)} from the ball, square across its line.`,
    ),
    ...(scoring.stroke.kind === 'zones' ? [`Zones: ${zonesWords(drill, units)}.`] : []),
  ];
  return sentences.join(' ');
}
