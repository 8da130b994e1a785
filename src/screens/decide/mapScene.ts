/**
 * The deciding map: what this screen tells the scene and what a drag in it does.
 * Answers for: the model of the scene from the signals, the roll. Leaves out: drawing (scene/), the view (view.ts).
 */
import { computed, signal } from '@preact/signals';
import type { Point, Read, Roll } from '../../../sim/index.ts';
import type { SceneLine } from '../../scene/model.ts';
import { createScene } from '../../scene/scene.ts';
import { player, units } from '../../state/settings.ts';
import { ball, clock, dragTo, fallAtHole, firmPace, hole, length, surface } from '../../state/situation.ts';
import { themeInForce } from '../../state/theme.ts';
import { formatClock, formatLength, formatSlope } from '../../text/format.ts';
import { describeMap } from './describe.ts';
import { clouds, lines } from './lines.ts';
import { fitView, type Room } from './view.ts';

export interface DecideMap {
  /** Draws the putt as the signals have it now; run inside an effect, so whatever it reads it follows. */
  show(): void;
  /** Rolls the ball; tempo 1 is real speed, 0.5 half. Settles when the ball is down or at rest, or the putt changes. */
  roll(roll: Roll, tempo: number): Promise<'ended' | 'cancelled'>;
  destroy(): void;
}

/** The map in words: read out in its place, and shown where it cannot be drawn. */
export const mapWords = computed(() =>
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

/** Where the start line passes the hole. @param offset m, positive left as seen from the ball */
const aimSpotOf = (offset: number, from: Point, to: Point): Point => {
  const along = Math.atan2(to.y - from.y, to.x - from.x);
  return { x: to.x - Math.sin(along) * offset, y: to.y + Math.cos(along) * offset };
};

const sceneLine = (style: 'die' | 'firm', read: Read): SceneLine | undefined => {
  if (read.status !== 'ok') return undefined;
  const { path, apex, rest, aimOffset } = read;
  const putt = lines.value?.putt;
  return {
    path,
    apex,
    rest,
    style,
    label: style === 'die' ? 'aim to die it in' : 'aim firm',
    ...(aimOffset !== undefined && putt ? { aimSpot: aimSpotOf(aimOffset, putt.ball, putt.hole) } : {}),
  };
};

/** Nobody looks twice for an aim farther off than this, m; the view does not grow to show it. */
const FARTHEST_AIM = 3;

/** @throws when the browser cannot draw at all */
export const openMap = async (host: HTMLElement): Promise<DecideMap> => {
  const held = signal(false);
  const room = signal<Room>({ width: 0, height: 0 });
  const watch = new ResizeObserver(() => {
    room.value = { width: host.clientWidth, height: host.clientHeight };
  });
  watch.observe(host);
  const scene = await createScene(host, {
    name: 'Map of the putt',
    onDrag(handle, place) {
      held.value = true;
      if (handle !== 'aim') dragTo(handle, place);
    },
    onDragEnd() {
      held.value = false;
    },
  });
  let view: ReturnType<typeof fitView> | undefined;

  return {
    show() {
      const both = lines.value;
      const drawn = both ? [sceneLine('die', both.die), sceneLine('firm', both.firm)] : [];
      const shown = drawn.filter((line): line is SceneLine => line !== undefined);
      const aims = shown.flatMap(({ aimSpot }) => (aimSpot ? [aimSpot] : []));
      // The view holds still under the finger; it settles round the putt afterwards.
      if (view === undefined || !held.value)
        view = fitView({
          ball: ball.value,
          hole: hole.value,
          spots: [
            ...shown.flatMap(({ rest, apex }) => [...(rest ? [rest] : []), ...(apex ? [apex] : [])]),
            ...aims.filter(
              ({ x, y }) => Math.hypot(x - hole.value.x, y - hole.value.y) <= FARTHEST_AIM + length.value,
            ),
          ],
          past: firmPace.value + 2.6 * player.value.paceSd * length.value,
          room: room.value,
          previous: view,
        });
      const found = clouds.value;
      scene.update({
        surface: surface.value,
        viewport: view.viewport,
        ball: ball.value,
        hole: hole.value,
        lines: shown,
        clouds: found
          ? [
              { style: 'firm', ...found.firm },
              { style: 'die', ...found.die },
            ]
          : [],
        showContours: true,
        showHeights: true,
        theme: themeInForce.value,
        units: units.value,
        draggable: ['hole', 'ball'],
        description: mapWords.value,
        handleText: {
          ball: `${formatLength(length.value, units.value)} from the hole, at ${formatClock(clock.value)}`,
          hole: `ground of ${formatSlope(fallAtHole.value.slope)}`,
        },
      });
    },
    roll: ({ path }, rate) => new Promise((resolve) => scene.animate(path, { rate, onDone: resolve })),
    destroy() {
      watch.disconnect();
      scene.destroy();
    },
  };
};
