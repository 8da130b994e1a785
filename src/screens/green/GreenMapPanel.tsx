/**
 * The map of the whole green: what this screen tells the scene, what a tap or a drag in it does, and the place asked about in
 * words. Leaves out: drawing (scene/), the work behind it (mapWork.ts).
 */
import { computed, effect, signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { Link } from 'wouter-preact';
import { spokenAtRest } from '../../controls/spoken.ts';
import type { KeySteps, Scene, SceneSide } from '../../scene/model.ts';
import { createScene } from '../../scene/scene.ts';
import { units } from '../../state/settings.ts';
import { ball, dragTo, fallAtHole, ground, hole, surface } from '../../state/situation.ts';
import { themeInForce } from '../../state/theme.ts';
import { formatPutts, formatSlope } from '../../text/format.ts';
import { asked, downhill, greenWords, sides, stale } from './answer.ts';
import { shown } from './mapWork.ts';
import { distance } from './question.ts';
import { valuesOf, viewOf } from './view.ts';
import { placeWords } from './words.ts';

const KEY_STEPS: KeySteps = {
  step: 0.25,
  fine: 0.05,
  words: 'arrow keys move it 25 cm, with Shift 5 cm',
};

const lost = signal<string | undefined>(undefined);

/** Of other ground than the one on the page a map would be nonsense; of the same ground, an old one is better than none. */
const values = computed(() => {
  const now = shown.value;
  if (now === undefined) return undefined;
  const before = now.question.putt.surface;
  const same = before === surface.value || (before.kind === 'plane' && surface.value.kind === 'plane');
  return same ? valuesOf(now.map, before, stale.value) : undefined;
});

const marks = computed((): readonly SceneSide[] => {
  const found = stale.value ? undefined : sides.value;
  if (found === undefined) return [];
  const { best, worst } = found;
  return [
    { kind: 'worst', place: worst.place, label: `worst ${formatPutts(worst.expectedPutts)}` },
    { kind: 'best', place: best.place, label: `best ${formatPutts(best.expectedPutts)}` },
  ];
});

const showIn = (scene: Scene): void => {
  const value = values.value;
  scene.update({
    surface: surface.value,
    viewport: viewOf(surface.value, hole.value, distance.value),
    ball: ball.value,
    hole: hole.value,
    lines: [],
    clouds: [],
    ...(value ? { values: value } : {}),
    ring: { radius: distance.value, twelve: downhill.value + Math.PI },
    sides: marks.value,
    showContours: true,
    showHeights: false,
    theme: themeInForce.value,
    units: units.value,
    // On a plane the map goes with the hole: there is nothing to see by moving it.
    draggable: ground.value === 'green' ? ['hole', 'ball'] : ['ball'],
    keySteps: KEY_STEPS,
    description: greenWords.value,
    handleText: {
      ball: placeWords(asked.value, units.value),
      hole: `ground of ${formatSlope(fallAtHole.value.slope)}`,
    },
  });
};

/** Quiet time before it is read out, ms. */
const SPEAK_PAUSE = 700;
const spoken = spokenAtRest(() => {
  const words = placeWords(asked.value, units.value);
  return asked.value.value === undefined ? undefined : words;
}, SPEAK_PAUSE);

const Legend = () => (
  <ul class="green-legend hint">
    <li>
      <svg class="putts-key" viewBox="0 0 30 10" aria-hidden="true">
        <path d="M1 5h28" stroke-width="2" stroke-dasharray="8 4" />
      </svg>
      every 0.2 expected putts
    </li>
    <li>
      <svg class="putts-key" viewBox="0 0 30 10" aria-hidden="true">
        <path d="M2 5h28" stroke-width="1.6" stroke-dasharray="0.1 4.2" stroke-linecap="round" />
      </svg>
      0.1 between; the stronger the tint, the more putts
    </li>
    <li>
      <svg class="mark-key" viewBox="0 0 20 20" aria-hidden="true">
        <circle cx="10" cy="10" r="8.5" class="best-key" />
        <path d="M5.8 10.2l3 3 5.2-6.2" class="tick-key" />
      </svg>
      best,
      <svg class="mark-key" viewBox="0 0 20 20" aria-hidden="true">
        <path d="M2 2h16v16h-16z" class="worst-key" />
        <path d="M6.2 6.2l7.6 7.6M13.8 6.2l-7.6 7.6" class="tick-key" />
      </svg>
      worst at this distance; 12 is uphill
    </li>
  </ul>
);

const Place = () => {
  const { value } = asked.value;
  return (
    <section class="card place" aria-labelledby="place-title">
      <h2 id="place-title">Where the ball lies</h2>
      <p data-testid="place">
        {value === undefined && stale.value ? 'Working it out…' : placeWords(asked.value, units.value)}
      </p>
      <p class="unseen" role="status">
        {spoken.words.value}
      </p>
      <p class="hint">
        Tap any place, or drag the ball; with the keyboard, step to it and use the arrow keys.{' '}
        <Link href="/">Decide this putt</Link>
      </p>
    </section>
  );
};

export const GreenMapPanel = () => {
  const host = useRef<HTMLDivElement>(null);
  useEffect(spoken.follow, []);
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    let here = true;
    let scene: Scene | undefined;
    let stop: (() => void) | undefined;
    const opening = createScene(element, {
      name: 'Map of expected putts',
      onDrag(handle, place) {
        if (handle !== 'aim') dragTo(handle, place);
      },
      onTap: (place) => dragTo('ball', place),
    });
    opening.then(
      (opened) => {
        if (!here) {
          opened.destroy();
          return;
        }
        scene = opened;
        stop = effect(() => showIn(opened));
      },
      (cause: unknown) => {
        lost.value = `The map could not be drawn here (${cause instanceof Error ? cause.message : String(cause)}). All the numbers work.`;
      },
    );
    return () => {
      here = false;
      stop?.();
      scene?.destroy();
    };
  }, []);
  return (
    <>
      <figure class="map">
        <div class="map-host" ref={host} data-testid="green-map" />
        {lost.value !== undefined && (
          <>
            <p class="problem">{lost.value}</p>
            <p>{greenWords.value}</p>
          </>
        )}
        <Legend />
      </figure>
      <Place />
    </>
  );
};
