/**
 * The worker: a switch that calls sim, nothing more. The one calculation of its own is which conditions "a foot faster"
 * and "half a percent steeper" are.
 */
import { expose } from 'comlink';
import {
  comparePaces,
  feetToMetres,
  fieldSurface,
  holedShare,
  type Putt,
  planeSurface,
  prepareNextPutts,
  type Surface,
  sampleMisses,
  sampleSurface,
} from '../../sim/index.ts';
import type { CaseName, EngineWorker, SensitivityCase } from './messages.ts';

/** Doubt about a green speed, m (1 ft), and about a slope (0.5%): the margins JOB.md asks to be shown. */
const SPEED_STEP = feetToMetres(1);
const SLOPE_STEP = 0.005;

/** The same ground, steeper by `step` along its own fall line (a field: along the fall line halfway to the hole). */
const steeper = (putt: Putt, step: number): Surface => {
  const { surface, ball, hole } = putt;
  if (surface.kind === 'plane') {
    const slope = surface.slope + step;
    return slope >= 0
      ? planeSurface({ slope, downhill: surface.downhill })
      : planeSurface({ slope: -slope, downhill: surface.downhill + Math.PI });
  }
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  sampleSurface(surface, (ball.x + hole.x) / 2, (ball.y + hole.y) / 2, ground);
  const size = Math.hypot(ground.gradientX, ground.gradientY);
  // On level ground there is no fall line; any direction will do as "steeper".
  const tiltX = size > 0 ? (step * ground.gradientX) / size : step;
  const tiltY = size > 0 ? (step * ground.gradientY) / size : 0;
  const heights = surface.heights.slice();
  for (let row = 0; row < surface.rows; row += 1)
    for (let column = 0; column < surface.columns; column += 1)
      heights[row * surface.columns + column] += surface.spacing * (column * tiltX + row * tiltY);
  return fieldSurface({
    origin: surface.origin,
    spacing: surface.spacing,
    columns: surface.columns,
    rows: surface.rows,
    heights,
  });
};

const worker: EngineWorker = {
  compare: (putt, paces, player, nextPutts) => comparePaces(putt, paces, player, nextPutts),
  prepareNextPutts: (putt, player) => prepareNextPutts(putt, player),
  sampleMisses: (putt, pace, player, count, seed) => sampleMisses(putt, pace, player, count, seed),
  holedShare: (putt, pace, player, aimOffset) => holedShare(putt, pace, player, aimOffset),
  async sensitivity(putt, diePace, firmPace, player, progress) {
    const changes: readonly (readonly [CaseName, Putt])[] = [
      ['slower', { ...putt, greenSpeed: putt.greenSpeed - SPEED_STEP }],
      ['faster', { ...putt, greenSpeed: putt.greenSpeed + SPEED_STEP }],
      ['gentler', { ...putt, surface: steeper(putt, -SLOPE_STEP) }],
      ['steeper', { ...putt, surface: steeper(putt, SLOPE_STEP) }],
    ];
    const cases: SensitivityCase[] = [];
    for (const [name, changed] of changes) {
      const table = prepareNextPutts(changed, player);
      const { rows } = comparePaces(changed, [diePace, firmPace], player, table);
      const [die, firm] = rows;
      cases.push({
        name,
        difference: die?.odds && firm?.odds ? firm.odds.expectedPutts - die.odds.expectedPutts : undefined,
        dieAim: die?.read.status === 'ok' ? die.read.aimOffset : undefined,
        firmAim: firm?.read.status === 'ok' ? firm.read.aimOffset : undefined,
      });
      progress(cases.length / changes.length);
    }
    return cases;
  },
};

expose(worker);
