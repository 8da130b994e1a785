/** Drawings of drills: everything of the data is in them, at its place, inside the frame, and said in words. */
import { describe, expect, it } from 'vitest';
import { PUTTING_DRILLS, puttingDrill } from '../../../drills/putting-drills.ts';
import type { PuttingDrill } from '../../../sim/index.ts';
import { DrillDrawing } from '../../../src/controls/drills/DrillDrawing.tsx';
import { drillPlan, WIDTH } from '../../../src/controls/drills/drillPlan.ts';

interface Element {
  readonly type: string;
  readonly props: Readonly<Record<string, unknown>>;
}
const isElement = (node: unknown): node is Element =>
  typeof node === 'object' && node !== null && 'type' in node && 'props' in node;
/** The drawing is made of plain elements, so that its tree can be read without a page. */
function* elements(node: unknown): Generator<Element> {
  if (Array.isArray(node)) for (const child of node) yield* elements(child);
  else if (isElement(node)) {
    yield node;
    yield* elements(node.props.children);
  }
}
const drawn = (drill: PuttingDrill): Element[] => [...elements(DrillDrawing({ drill, units: 'imperial' }))];
const parts = (all: readonly Element[], name: string): Element[] =>
  all.filter(({ props }) => props['data-part'] === name);
const textOf = ({ props }: Element): string =>
  [props.children]
    .flat()
    .filter((one) => typeof one === 'string')
    .join('');
const number = (value: unknown): number => Number(value);
const named = (id: string): PuttingDrill => {
  const drill = puttingDrill(id);
  if (drill === undefined) throw new Error(`no drill ${id}`);
  return drill;
};

describe.each(PUTTING_DRILLS.map((drill) => [drill.id, drill] as const))(
  'the drawing of %s',
  (_id, drill) => {
    const all = drawn(drill);
    const [svg] = all;

    it('is an image with a title and words', () => {
      expect(svg.type).toBe('svg');
      expect(svg.props.role).toBe('img');
      const ids = String(svg.props['aria-labelledby']).split(' ');
      const [title, words] = ids.map((id) => all.find(({ props }) => props.id === id));
      expect(title && textOf(title)).toContain(drill.name);
      for (const { balls } of drill.stations) expect(words && textOf(words)).toContain(`${balls} ball`);
    });

    it('shows one target, every distance and every gate', () => {
      const words = all.map(textOf);
      expect(parts(all, 'hole').length).toBe(drill.target === 'hole' ? 1 : 0);
      expect(parts(all, 'mark').length).toBe(drill.target === 'mark' ? drill.stations.length : 0);
      for (const { distanceM } of drill.stations)
        expect(words).toContain(`${Math.round((distanceM / 0.3048) * 10) / 10} ft`);
      expect(parts(all, 'gate-detail').length).toBe(drill.gates.length);
      expect(parts(all, 'zones').length).toBe(drill.scoring.stroke.kind === 'zones' ? 1 : 0);
    });

    it('has the fall line exactly where the ground slopes', () => {
      const slopes = drill.stations.some(({ slope }) => slope[1] > 0.01);
      expect(parts(all, 'fall-line').length).toBe(slopes ? 1 : 0);
    });

    it('keeps letters inside the frame and finite', () => {
      const height = number(svg.props.height);
      // Wide faces such as DejaVu Sans take at most about 0.6 of their size a letter (memory); the one Chromium has here 0.45 (measured).
      const wide = 0.6 * 12.5;
      for (const { type, props, ...rest } of all.filter(
        (one) => one.type === 'text' || one.type === 'tspan',
      )) {
        const [x, size] = [number(props.x), textOf({ type, props, ...rest }).length * wide];
        expect(Number.isFinite(x)).toBe(true);
        if (type === 'tspan') continue;
        expect(number(props.y)).toBeGreaterThan(8);
        expect(number(props.y)).toBeLessThan(height);
        const [left, right] =
          props['text-anchor'] === 'middle'
            ? [x - size / 2, x + size / 2]
            : props['text-anchor'] === 'end'
              ? [x - size, x]
              : [x, x + size];
        expect(left, textOf({ type, props })).toBeGreaterThan(-1);
        expect(right, textOf({ type, props })).toBeLessThan(WIDTH + 1);
      }
      for (const { props } of all) expect(String(props.d ?? '')).not.toMatch(/NaN|Infinity|undefined/);
    });

    it('puts no place over another', () => {
      const { places } = drillPlan(drill, 'imperial');
      places.forEach((one, i) => {
        // Ball marks are 18 across, their rings 1.5.
        for (const other of places.slice(i + 1))
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(18);
      });
    });
  },
);

describe('a plan', () => {
  it('is to scale, uphill at the top and 3 o’clock at the right', () => {
    const { centre, places, scale } = drillPlan(named('clock-four-sides'), 'metric');
    const [below, right, above, left] = places;
    if (scale === undefined) throw new Error('expected a scale');
    expect(below.y - centre.y).toBeCloseTo(1.52 * scale, 6);
    expect(centre.y - above.y).toBeCloseTo(1.52 * scale, 6);
    expect(right.x - centre.x).toBeCloseTo(1.52 * scale, 6);
    expect(centre.x - left.x).toBeCloseTo(1.52 * scale, 6);
  });

  it('of a gate stands it so far along the way and square across it', () => {
    const drill = named('break-gate');
    const { gates, places, scale } = drillPlan(drill, 'metric');
    gates.forEach((gate, i) => {
      expect(Math.hypot(gate.x - places[i].x, gate.y - places[i].y)).toBeCloseTo(
        drill.gates[0].fromBallM * (scale ?? 0),
        6,
      );
      expect(Math.abs(gate.acrossY)).toBeCloseTo(1, 9);
    });
  });

  it('names places by letters when their order is drawn, by numbers otherwise', () => {
    expect(
      drillPlan(named('nine-holes-one-ball'), 'metric')
        .places.map(({ name }) => name)
        .join(''),
    ).toBe('ABCDEFGHI');
    expect(
      drillPlan(named('clock-four-sides'), 'metric')
        .places.map(({ name }) => name)
        .join(''),
    ).toBe('1234');
  });
});
