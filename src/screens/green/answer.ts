/** What the page says of the map it has, kept in step with distance, ball and units. */
import { computed } from '@preact/signals';
import { bearingToClock, mapValueAt } from '../../../sim/index.ts';
import { units } from '../../state/settings.ts';
import { ball, fallAtHole, hole, length, problem, surface } from '../../state/situation.ts';
import { formatSlope } from '../../text/format.ts';
import { familySidesOf } from './family.ts';
import { behind, familyTables, otherSpeeds, shown } from './mapWork.ts';
import { distance } from './question.ts';
import { otherSpeedsOf, sidesOf } from './view.ts';
import { type AskedPlace, describeGreen } from './words.ts';

/** The figures on the page are of an earlier question. */
export const stale = computed(() => behind.value || problem.value !== undefined);

/** undefined: nothing is known yet, or no place at this distance can be putted from. */
export const sides = computed(() => {
  const now = shown.value;
  if (now === undefined) return undefined;
  const { surface: ground, hole: at } = now.question.putt;
  return sidesOf(ground, at, now.map, distance.value);
});

/** What a foot of green speed does to the side; undefined: not known yet. */
export const speeds = computed(() => {
  const now = shown.value;
  const other = otherSpeeds.value;
  const asked = sides.value;
  if (now === undefined || asked === undefined || other?.question !== now.question) return undefined;
  const { surface: ground, hole: at } = now.question.putt;
  return otherSpeedsOf({ surface: ground, hole: at, sides: asked, table: now.table, ...other.tables });
});

/** The side asked of everybody the person may be, as far as they have been asked; undefined: nobody but the one player is meant, or asked yet. */
export const familySides = computed(() => {
  const now = shown.value;
  const family = familyTables.value;
  const asked = sides.value;
  if (now === undefined || asked === undefined || family?.question !== now.question) return undefined;
  const { surface: ground, hole: at } = now.question.putt;
  return familySidesOf({
    surface: ground,
    hole: at,
    sides: asked,
    table: now.table,
    members: family.members,
  });
});

/** Direction a ball at the hole runs off: of the sides where they are known, so that there is one clock on the page. */
export const downhill = computed(() =>
  stale.value ? fallAtHole.value.downhill : (sides.value?.downhill ?? fallAtHole.value.downhill),
);

/** The place where the ball lies. */
export const asked = computed<AskedPlace>(() => {
  const { x, y } = ball.value;
  const now = shown.value;
  return {
    length: length.value,
    clock: bearingToClock(Math.atan2(y - hole.value.y, x - hole.value.x), downhill.value),
    value: now && !stale.value ? mapValueAt(now.map, x, y) : undefined,
  };
});

/** The map in words: read out in its place, and shown where it cannot be drawn. */
export const greenWords = computed(() =>
  describeGreen({
    ground:
      surface.value.kind === 'plane'
        ? `a plane of ${formatSlope(fallAtHole.value.slope)}`
        : `a made-up green, ${formatSlope(fallAtHole.value.slope)} at the hole,`,
    sides: stale.value ? undefined : sides.value,
    place: asked.value,
    units: units.value,
  }),
);
