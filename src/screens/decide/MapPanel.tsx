/** The map and the buttons that roll the ball on it. */
import { computed } from '@preact/signals';
import { units } from '../../app/settings.ts';
import { describeMap } from '../../text/describe.ts';
import { lines } from './answer.ts';
import { clock, fallAtHole, hole, length, surface } from './situation.ts';

const words = computed(() =>
  describeMap({
    surface: surface.value,
    length: length.value,
    clock: clock.value,
    slope: fallAtHole.value.slope,
    die: lines.value?.die,
    firm: lines.value?.firm,
    hole: hole.value,
    units: units.value,
  }),
);

export const MapPanel = () => (
  <figure class="map">
    <div class="map-host" />
    <figcaption class="unseen">{words.value}</figcaption>
  </figure>
);
