/**
 * The set-up of a putting drill as a plan, drawn from its data alone: hole or mark, places of balls with distances and order, the
 * fall line by hachures, gates and zones. Answers for: ink and words. Leaves out: places (drillPlan.ts), details
 * (DrillDetails.tsx), expected scores. A pure component: no state, no engine.
 */
import type { JSX } from 'preact';
import type { PuttingDrill } from '../../../sim/index.ts';
import { describeDrill, drawingTitle, isLevel, orderWords } from '../../text/drills.ts';
import type { Units } from '../../text/format.ts';
import { diamond, gateDetail, LETTERS, zoneDetail } from './DrillDetails.tsx';
import { BALL, type DrillPlan, drillPlan, type PlanLabel, WIDTH, ZONE_HALF } from './drillPlan.ts';

export interface DrillDrawingProps {
  readonly drill: PuttingDrill;
  readonly units: Units;
}

/** Letters stand clear of hachures and lines. */
const HALO = {
  stroke: 'var(--card)',
  'stroke-width': 5,
  'paint-order': 'stroke',
  'stroke-linejoin': 'round',
} as const;
const QUIET = { ...LETTERS, fill: 'var(--soft)' } as const;

/** Short strokes down the slope, in staggered rows; gaps keep the paper quiet. */
function hachures(height: number): JSX.Element {
  const strokes: string[] = [];
  for (let row = 0; 12 + row * 24 < height - 12; row++)
    for (let x = row % 2 === 0 ? 14 : 28; x < WIDTH; x += 28) strokes.push(`M${x} ${12 + row * 24}v9`);
  return (
    <path data-part="fall-line" d={strokes.join('')} stroke="var(--edge)" stroke-width={1.25} fill="none" />
  );
}

/** Which way is down, in words and with an arrow, below all places. */
const downhill = (height: number): JSX.Element => (
  <g>
    <path
      d={`M${WIDTH / 2 - 40} ${height - 21}v16m-4-5l4 5l4-5`}
      stroke="var(--soft)"
      stroke-width={1.5}
      fill="none"
    />
    <text x={WIDTH / 2 - 30} y={height - 8} {...QUIET} {...HALO}>
      downhill
    </text>
  </g>
);

const lines = (label: PlanLabel): JSX.Element => (
  <text x={label.x} y={label.y} text-anchor={label.anchor} {...LETTERS} {...HALO}>
    {label.lines.map((text, i) => (
      <tspan key={text} x={label.x} dy={i === 0 ? 0 : 14} fill={i === 0 ? 'var(--ink)' : 'var(--soft)'}>
        {text}
      </tspan>
    ))}
  </text>
);

/** A ball with its number inside. */
function ball(x: number, y: number, name: string): JSX.Element {
  const half = BALL + (name.length > 2 ? 7 : 0);
  return (
    <g data-part="ball">
      <rect
        x={x - half}
        y={y - BALL}
        width={2 * half}
        height={2 * BALL}
        rx={BALL}
        fill="var(--card)"
        stroke="var(--ink)"
        stroke-width={1.5}
      />
      <text x={x} y={y + 4} text-anchor="middle" {...LETTERS} font-size={11.5}>
        {name}
      </text>
    </g>
  );
}

const way = (from: { x: number; y: number }, to: { x: number; y: number }): string =>
  `M${from.x} ${from.y}L${to.x} ${to.y}`;

function planMarks(drill: PuttingDrill, plan: DrillPlan): JSX.Element {
  const { places, centre, gates, scale, target } = plan;
  const { stroke } = drill.scoring;
  const zones = stroke.kind === 'zones' && scale !== undefined ? stroke.zones : [];
  const oneWay = target === 'mark';
  return (
    <g>
      <path
        d={places.map((place) => way(place, centre)).join('')}
        stroke="var(--soft)"
        stroke-width={1}
        stroke-dasharray="1.5 4"
        stroke-linecap="round"
        fill="none"
      />
      {zones.map((zone, i) => {
        const dash = i === 0 ? undefined : '4 3';
        const ink = { stroke: 'var(--ink)', 'stroke-width': 1, fill: 'none', 'stroke-dasharray': dash };
        if (zone.shape === 'circle')
          return (
            <circle
              key={i}
              data-part="zone"
              cx={centre.x}
              cy={centre.y}
              r={zone.radiusM * (scale ?? 0)}
              {...ink}
            />
          );
        // A box turns with the ball: in the plan only where all come the same way.
        if (!oneWay) return null;
        return places.map(({ x, y, name }) => (
          <path
            key={`${name}${i}`}
            data-part="zone"
            d={`M${x - ZONE_HALF} ${y - zone.pastM * (scale ?? 0)}h${2 * ZONE_HALF}M${x - ZONE_HALF} ${y + zone.shortM * (scale ?? 0)}h${2 * ZONE_HALF}`}
            {...ink}
          />
        ));
      })}
      {gates.map(({ x, y, acrossX, acrossY }) => (
        <path
          key={`${x} ${y}`}
          data-part="gate"
          d={`M${x - 12 * acrossX} ${y - 12 * acrossY}L${x - 5 * acrossX} ${y - 5 * acrossY}M${x + 5 * acrossX} ${y + 5 * acrossY}L${x + 12 * acrossX} ${y + 12 * acrossY}`}
          stroke="var(--ink)"
          stroke-width={3}
          fill="none"
        />
      ))}
      {target === 'hole' ? (
        <circle data-part="hole" cx={centre.x} cy={centre.y} r={5} fill="var(--ink)" />
      ) : (
        ball(centre.x, centre.y, '')
      )}
      {plan.ballLabel !== undefined && lines(plan.ballLabel)}
      {places.map((place) => (
        <g key={place.name} data-part="place">
          {target === 'hole' ? (
            ball(place.x, place.y, place.name)
          ) : (
            <g>
              <path data-part="mark" d={diamond(place.x, place.y)} fill="var(--ink)" />
              {place.name !== '' && (
                <text x={place.x - ZONE_HALF - 6} y={place.y + 4.5} text-anchor="end" {...LETTERS} {...HALO}>
                  {place.name}
                </text>
              )}
            </g>
          )}
          {lines(place.label)}
        </g>
      ))}
    </g>
  );
}

export function DrillDrawing({ drill, units }: DrillDrawingProps): JSX.Element {
  const plan = drillPlan(drill, units);
  const { stroke } = drill.scoring;
  const level = isLevel(drill);
  const order = orderWords(drill);
  const captions = [
    ...(order === undefined ? [] : [order]),
    ...(plan.scale === undefined ? ['distances not to scale'] : []),
  ];
  const top = plan.height + captions.length * 16 + (captions.length > 0 ? 10 : 0);
  const gates = drill.gates.length > 0 ? gateDetail(drill, units, top + 14) : undefined;
  const zones =
    stroke.kind === 'zones' ? zoneDetail(stroke, drill.target, { units, top: top + 8 }) : undefined;
  const height = Math.ceil(top + (gates ? gates.height + 14 : 0) + (zones ? zones.height + 8 : 0) + 4);
  const id = `drawing-${drill.id}`;
  return (
    <svg
      class="drill-drawing"
      viewBox={`0 0 ${WIDTH} ${height}`}
      width={WIDTH}
      height={height}
      role="img"
      aria-labelledby={`${id}-title ${id}-words`}
    >
      <title id={`${id}-title`}>{drawingTitle(drill)}</title>
      <desc id={`${id}-words`}>{describeDrill(drill, units)}</desc>
      {!level && hachures(plan.height)}
      {!level && downhill(plan.height)}
      {planMarks(drill, plan)}
      {captions.map((text, i) => (
        <text key={text} x={WIDTH / 2} y={plan.height + 12 + i * 16} text-anchor="middle" {...QUIET}>
          {text}
        </text>
      ))}
      {(gates ?? zones) !== undefined && (
        <path d={`M0 ${top + 0.5}H${WIDTH}`} stroke="var(--edge)" stroke-width={1} />
      )}
      {gates?.marks}
      {zones?.marks}
    </svg>
  );
}
