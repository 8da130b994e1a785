/**
 * What is too small for the plan, enlarged below it: gates with the ball between the posts, zones round the hole or mark.
 * Every detail is to scale in itself. Leaves out: the plan (DrillDrawing.tsx).
 */
import type { JSX } from 'preact';
import {
  BALL_RADIUS,
  HOLE_RADIUS,
  type PuttingDrill,
  type StrokeScore,
  type Zone,
} from '../../../sim/index.ts';
import { formatGateDistance, formatGateWidth, limitWords } from '../../text/drills.ts';
import { formatShort, type Units } from '../../text/format.ts';
import { WIDTH } from './drillPlan.ts';

export interface Detail {
  readonly height: number;
  readonly marks: JSX.Element;
}

export const LETTERS = { 'font-family': 'var(--text)', 'font-size': 12.5, fill: 'var(--ink)' } as const;
const QUIET = { ...LETTERS, fill: 'var(--soft)' } as const;
const LINE = { stroke: 'var(--ink)', 'stroke-width': 1.25, fill: 'none' } as const;

/** Widest gate, between its posts. */
const GATE = 96;
const GATE_HEIGHT = 100;

/** Gates beside each other, all at one scale, each with a ball in its middle. */
export function gateDetail({ gates }: PuttingDrill, units: Units, top: number): Detail {
  const scale = GATE / Math.max(...gates.map(({ widthM }) => widthM), 0.09);
  const marks = gates.map(({ widthM, fromBallM }, i) => {
    const x = (WIDTH * (i + 0.5)) / gates.length;
    const y = top + 52;
    const half = (widthM * scale) / 2;
    return (
      <g key={fromBallM} data-part="gate-detail">
        <line x1={x - half} y1={top + 16} x2={x + half} y2={top + 16} {...LINE} stroke-width={1} />
        <path d={`M${x - half} ${top + 12}v8M${x + half} ${top + 12}v8`} {...LINE} stroke-width={1} />
        <rect x={x - half - 5} y={y - 16} width={5} height={32} fill="var(--ink)" />
        <rect x={x + half} y={y - 16} width={5} height={32} fill="var(--ink)" />
        <circle cx={x} cy={y} r={BALL_RADIUS * scale} {...LINE} fill="var(--paper)" />
        <text x={x} y={top + 8} text-anchor="middle" {...LETTERS}>
          {formatGateWidth(widthM, units)}
        </text>
        <text x={x} y={top + 90} text-anchor="middle" {...QUIET}>
          {`${formatGateDistance(fromBallM, units)} away`}
        </text>
      </g>
    );
  });
  return { height: GATE_HEIGHT, marks: <g data-part="gates">{marks}</g> };
}

type ZoneScore = Extract<StrokeScore, { readonly kind: 'zones' }>;

/** A zone's reach before and past the target, and to either side, m. */
const reachOf = (zone: Zone): { short: number; past: number; side: number | undefined } =>
  zone.shape === 'circle'
    ? { short: zone.radiusM, past: zone.radiusM, side: zone.radiusM }
    : { short: zone.shortM, past: zone.pastM, side: zone.widthM === undefined ? undefined : zone.widthM / 2 };

/** Shorter than in a sentence. */
const limitLabel = (past: number, units: Units): string => limitWords(past, units).replace(' with it', '');

const ZONE_TALL = 118;
const ZONE_WIDE = 150;
/** Left of the middle, so that limits have room at the right. */
const ZONE_X = 92;
/** Half the width at which a zone as wide as the ground is drawn. */
const UNBOUNDED = 80;

/** What the lines are worth: "points: holed 3, solid 2, dashed 1". */
const pointsLine = ({ holed, zones }: ZoneScore, target: 'hole' | 'mark'): string =>
  `points: ${[
    ...(target === 'hole' && holed > 0 ? [`holed ${holed}`] : []),
    ...zones.map(
      ({ points }, i) => `${zones.length < 2 ? 'inside' : i === 0 ? 'solid' : 'dashed'} ${points}`,
    ),
  ].join(', ')}`;

/** Zones about the target as a ball from below comes to them. */
export function zoneDetail(
  scoring: ZoneScore,
  target: 'hole' | 'mark',
  { units, top }: { readonly units: Units; readonly top: number },
): Detail {
  const { zones } = scoring;
  const reaches = zones.map(reachOf);
  const short = Math.max(0.1, ...reaches.map((one) => one.short));
  const past = Math.max(0.1, ...reaches.map((one) => one.past));
  const side = Math.max(0, ...reaches.map((one) => one.side ?? 0));
  const scale = Math.min(ZONE_TALL / (short + past), side > 0 ? ZONE_WIDE / (2 * side) : Infinity);
  const y = top + 16 + past * scale;
  const right = ZONE_X + 84;
  const halfOf = ({ side: half }: { readonly side: number | undefined }): number =>
    half === undefined ? UNBOUNDED : half * scale;
  // Limits of zones may lie close together: each label keeps a line's distance from the one above.
  const limits = reaches.flatMap((one, i) =>
    zones[i].shape === 'circle'
      ? [{ at: y - one.past * scale, edge: ZONE_X, text: `within ${formatShort(one.past, units)}` }]
      : [
          { at: y - one.past * scale, edge: ZONE_X + halfOf(one), text: limitLabel(one.past, units) },
          { at: y + one.short * scale, edge: ZONE_X + halfOf(one), text: limitLabel(-one.short, units) },
        ],
  );
  const labels = limits.toSorted((one, other) => one.at - other.at);
  let lowest = Number.NEGATIVE_INFINITY;
  const spaced = labels.map(({ at, edge, text }) => {
    lowest = Math.max(at, lowest + 14);
    return { at, edge, text, y: lowest };
  });
  const shapes = zones.map((zone, i) => {
    const { short: before, past: beyond, side: half } = reaches[i];
    const dash = i === 0 ? undefined : '5 3';
    if (zone.shape === 'circle')
      return <circle key={i} cx={ZONE_X} cy={y} r={zone.radiusM * scale} {...LINE} stroke-dasharray={dash} />;
    const wide = halfOf(reaches[i]);
    const [up, down] = [y - beyond * scale, y + before * scale];
    const d =
      half === undefined
        ? `M${ZONE_X - wide} ${up}h${2 * wide}M${ZONE_X - wide} ${down}h${2 * wide}`
        : `M${ZONE_X - wide} ${up}h${2 * wide}V${down}h${-2 * wide}Z`;
    return <path key={i} d={d} {...LINE} stroke-dasharray={dash} />;
  });
  const bottom = Math.max(y + short * scale, spaced.at(-1)?.y ?? 0);
  const width = zones.find((zone) => zone.shape === 'box' && zone.widthM !== undefined);
  return {
    height: bottom - top + (width === undefined ? 33 : 49),
    marks: (
      <g data-part="zones">
        <path
          d={`M${ZONE_X} ${y + short * scale + 11}V${y}`}
          stroke="var(--soft)"
          stroke-width={1}
          stroke-dasharray="1.5 4"
          stroke-linecap="round"
          fill="none"
        />
        {shapes}
        {target === 'hole' ? (
          <circle cx={ZONE_X} cy={y} r={Math.max(3, HOLE_RADIUS * scale)} fill="var(--ink)" />
        ) : (
          <path d={diamond(ZONE_X, y)} fill="var(--ink)" />
        )}
        {spaced.map((one) => (
          <g key={one.text}>
            <path
              d={`M${one.edge + 3} ${one.at}H${right}L${right + 8} ${one.y}`}
              stroke="var(--edge)"
              stroke-width={1}
              fill="none"
            />
            <text x={right + 11} y={one.y + 4.5} {...LETTERS}>
              {one.text}
            </text>
          </g>
        ))}
        <text x={WIDTH / 2} y={bottom + 27} text-anchor="middle" {...QUIET}>
          {pointsLine(scoring, target)}
        </text>
        {width?.shape === 'box' && width.widthM !== undefined && (
          <text x={WIDTH / 2} y={bottom + 43} text-anchor="middle" {...QUIET}>
            {`${formatShort(width.widthM, units)} wide`}
          </text>
        )}
      </g>
    ),
  };
}

/** A mark: a tee or a coin that stops nothing. */
export const diamond = (x: number, y: number): string => `M${x} ${y - 5}l5 5l-5 5l-5-5Z`;
