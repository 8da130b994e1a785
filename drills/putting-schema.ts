/**
 * The shape of a putting drill's file, checked strictly: an unknown field is a mistake, not a hint. Units are in the field names.
 * Answers for: shape, limits, and what would contradict itself. Leaves out: whether a player can be scored on it (tests ask).
 * How to add a drill: one JSON file in putting/, one line in putting-drills.ts.
 */
import * as z from 'zod';
import { BALL_RADIUS, DRILL_GROUNDS, type PuttingDrill, TRAINED } from '../sim/index.ts';

/** No compiled checks: the page's content policy forbids making code from text, and asking for it logs an error. */
z.config({ jitless: true });

/** Numbers that steps may ask for; src/text fills them in, in the person's units. */
export const PLACEHOLDERS = [
  'distances',
  'balls',
  'strokes',
  'sets',
  'slope',
  'pace',
  'gateWidth',
  'gateDistance',
  'zones',
  'run',
  'rungs',
  'back',
] as const;
export type Placeholder = (typeof PLACEHOLDERS)[number];

const whole = (least: number, most: number) => z.number().int().min(least).max(most);
const length = (least: number, most: number) => z.number().min(least).max(most);
const words = (least: number, most: number) => z.string().min(least).max(most);

const station = z.strictObject({
  distanceM: length(0.3, 20),
  clock: z.number().min(0).lt(12),
  balls: whole(1, 20),
  slope: z
    .tuple([z.number().min(0).max(0.05), z.number().min(0).max(0.05)])
    .refine(([least, most]) => least <= most, 'expected the smaller slope first: swap them'),
  paceM: length(0, 1.5).optional(),
});

/** A ball must fit through with room: half a ball's width of it altogether at most makes a gate nobody passes. */
const gate = z.strictObject({
  widthM: length(2 * BALL_RADIUS + 0.005, 0.3),
  fromBallM: length(0.15, 3),
});

const points = whole(0, 10);
const zone = z.discriminatedUnion('shape', [
  z.strictObject({
    shape: z.literal('box'),
    shortM: length(-1, 3),
    pastM: length(-1, 3),
    widthM: length(0.1, 6).optional(),
    points,
  }),
  z.strictObject({ shape: z.literal('circle'), radiusM: length(0.05, 3), points }),
]);
type ZoneData = z.infer<typeof zone>;

const holds = (outer: ZoneData, inner: ZoneData): boolean => {
  if (outer.shape === 'circle') return inner.shape === 'circle' && inner.radiusM < outer.radiusM;
  return (
    inner.shape === 'box' &&
    inner.shortM <= outer.shortM &&
    inner.pastM <= outer.pastM &&
    (inner.widthM ?? Infinity) <= (outer.widthM ?? Infinity)
  );
};

const stroke = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('holed') }),
  z.strictObject({ kind: z.literal('gate') }),
  z.strictObject({
    kind: z.literal('zones'),
    holed: points,
    zones: z
      .array(zone)
      .min(1)
      .max(3)
      .refine(
        (zones) => zones.every((one, i) => i === 0 || holds(one, zones[i - 1])),
        'expected zones of one shape from the inside out, each within the next: reorder them',
      )
      .refine(
        (zones) => zones.every((one) => one.shape === 'circle' || one.shortM + one.pastM > 0),
        'expected a box that ends past where it begins: enlarge pastM',
      ),
  }),
  z.strictObject({ kind: z.literal('holingOut'), points: z.tuple([points, points, points, points]) }),
]);

const tally = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sum') }),
  z.strictObject({ kind: z.literal('best'), sets: whole(2, 5) }),
  z.strictObject({ kind: z.literal('run'), length: whole(2, 20), strokes: whole(2, 60) }),
  z.strictObject({ kind: z.literal('ladder'), back: whole(0, 3), strokes: whole(2, 60) }),
]);

const used = (steps: readonly string[]): string[] =>
  steps.flatMap((step) => [...step.matchAll(/\{([^}]*)\}/g)].map(([, name]) => name));

export const puttingDrillSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z][a-z0-9-]{2,40}$/, 'expected small letters, digits and hyphens'),
    version: whole(1, 99),
    name: words(3, 60),
    purpose: words(10, 200),
    trains: z.enum(TRAINED),
    ground: z.enum(DRILL_GROUNDS),
    needs: z.array(words(3, 60)).min(1).max(6),
    target: z.enum(['hole', 'mark']),
    reading: z.enum(['known', 'fresh', 'perStation']),
    paceM: length(0, 1.5),
    stations: z.array(station).min(1).max(12),
    gates: z.array(gate).max(3),
    order: z.enum(['byStation', 'inTurn', 'random']),
    scoring: z.strictObject({ stroke, tally, better: z.enum(['higher', 'lower']) }),
    minutes: whole(3, 40),
    source: words(3, 200),
    steps: z.array(words(10, 200)).min(3).max(6),
  })
  .superRefine((drill, context) => {
    const { stroke: one, tally: all, better } = drill.scoring;
    const refuse = (path: string, message: string): void =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (drill.ground !== 'grass' && drill.stations.some(({ slope }) => slope[0] > 0))
      refuse('stations', 'expected a slope from 0 for carpet, which is level: begin the range at 0');
    if (drill.ground !== 'grass' && drill.target === 'hole')
      refuse('target', 'expected a mark on carpet: there is no hole');
    if (drill.target === 'mark' && one.kind !== 'gate' && one.kind !== 'zones')
      refuse('scoring', 'expected gate or zones at a mark: nothing drops there');
    if ((one.kind === 'gate') !== drill.gates.length > 0)
      refuse('gates', 'expected gates exactly where passing them is scored');
    if (
      drill.gates.some(({ fromBallM }) => drill.stations.some(({ distanceM }) => fromBallM > 0.7 * distanceM))
    )
      refuse('gates', 'expected gates within seven tenths of the way: a slow ball may stop before them');
    if (drill.trains === 'read' && drill.reading === 'known')
      refuse('reading', 'expected fresh or perStation for a drill that trains reading');
    if (
      drill.reading === 'perStation' &&
      (all.kind === 'run' || all.kind === 'ladder' || one.kind === 'holingOut')
    )
      refuse('reading', 'expected fresh or known: balls that share a read can only be added up');
    if (all.kind === 'run' && drill.order === 'random')
      refuse('order', 'expected a fixed order for a run: its chances depend on it');
    if (all.kind === 'run' && all.length > all.strokes)
      refuse('scoring', 'expected as many strokes as the run is long: add strokes');
    if (
      all.kind === 'ladder' &&
      (drill.stations.length < 2 || drill.stations.some(({ balls }) => balls !== 1))
    )
      refuse('stations', 'expected at least two stations of one ball: each is a rung');
    if (one.kind === 'holingOut') {
      const rising = one.points.every((point, i) => i === 0 || point >= one.points[i - 1]);
      const falling = one.points.every((point, i) => i === 0 || point <= one.points[i - 1]);
      if (better === 'higher' ? !falling : !rising)
        refuse('scoring', 'expected fewer putts to score better: turn the points round');
    } else if (better === 'lower')
      refuse('scoring', 'expected higher: only counted putts are better when fewer');
    const unknown = used(drill.steps).find((name) => !PLACEHOLDERS.some((known) => known === name));
    if (unknown !== undefined)
      refuse('steps', `expected one of ${PLACEHOLDERS.join(', ')}: got {${unknown}}`);
  }) satisfies z.ZodType<PuttingDrill>;
