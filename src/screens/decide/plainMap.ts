/**
 * The putt as plain SVG: contours of a plane, both lines, aims, apexes, rests, the clouds of misses, ball and hole that
 * move by pointer and by arrow keys. Answers for a map where the drawing library is missing or its context lost; leaves
 * out relief of a made-up green beyond hachures.
 */
import type { Point, Read } from '../../../sim/index.ts';
import { sampleSurface } from '../../../sim/index.ts';
import { clouds, lines } from './answer.ts';
import type { DecideMap } from './mapScene.ts';
import { ball, dragTo, hole, surface } from './situation.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** Arrow key steps, m: a hand's breadth, or a fingertip with Shift held. */
const KEY_STEP = 0.1;
const FINE_STEP = 0.01;
/** Hachure grid over the view, and a stroke's length per share of slope, both as shares of the view. */
const HACHURES = 14;
const HACHURE_LENGTH = 0.9;

interface Frame {
  readonly centre: Point;
  /** Half the shown side, m. */
  readonly half: number;
}

const make = <Name extends keyof SVGElementTagNameMap>(
  name: Name,
  attributes: Readonly<Record<string, string | number>>,
  parent?: Element,
): SVGElementTagNameMap[Name] => {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  parent?.append(element);
  return element;
};

/** SVG's y runs down the page, ours up. */
const pathOf = (triples: Float64Array): string => {
  let text = '';
  for (let index = 0; index + 1 < triples.length; index += 3)
    text += `${index === 0 ? 'M' : 'L'}${triples[index].toFixed(4)} ${(-triples[index + 1]).toFixed(4)}`;
  return text;
};

const frameOf = (): Frame => {
  const centre = { x: (ball.value.x + hole.value.x) / 2, y: (ball.value.y + hole.value.y) / 2 };
  return {
    centre,
    half: Math.max(0.68 * Math.hypot(ball.value.x - hole.value.x, ball.value.y - hole.value.y), 0.9),
  };
};

const drawGround = (layer: SVGGElement, { centre, half }: Frame): void => {
  const land = surface.value;
  const ground = { height: 0, gradientX: 0, gradientY: 0 };
  const step = (2 * half) / HACHURES;
  for (let row = 0; row < HACHURES; row += 1)
    for (let column = 0; column < HACHURES; column += 1) {
      const x = centre.x - half + (column + 0.5 + (row % 2) * 0.3) * step;
      const y = centre.y - half + (row + 0.5) * step;
      if (!sampleSurface(land, x, y, ground)) continue;
      const long = Math.min(
        HACHURE_LENGTH * step,
        14 * step * Math.hypot(ground.gradientX, ground.gradientY),
      );
      const size = Math.hypot(ground.gradientX, ground.gradientY) || 1;
      const dx = (-ground.gradientX / size) * long;
      const dy = (-ground.gradientY / size) * long;
      make(
        'line',
        {
          x1: x - dx / 2,
          y1: -(y - dy / 2),
          x2: x + dx / 2,
          y2: -(y + dy / 2),
          stroke: 'var(--soft)',
          'stroke-opacity': 0.5,
          'stroke-width': half * 0.004,
        },
        layer,
      );
    }
};

const drawLine = (layer: SVGGElement, which: 'die' | 'firm', read: Read, half: number): void => {
  if (read.status !== 'ok') return;
  const colour = `var(--${which})`;
  const dashes: Record<string, string> =
    which === 'die' ? { 'stroke-dasharray': `${half * 0.035} ${half * 0.02}` } : {};
  make(
    'path',
    { d: pathOf(read.path), fill: 'none', stroke: colour, 'stroke-width': half * 0.012, ...dashes },
    layer,
  );
  make('circle', { cx: read.apex.x, cy: -read.apex.y, r: half * 0.012, fill: colour }, layer);
  make(
    'circle',
    {
      cx: read.rest.x,
      cy: -read.rest.y,
      r: half * 0.016,
      fill: 'none',
      stroke: colour,
      'stroke-width': half * 0.006,
    },
    layer,
  );
  if (read.aimOffset === undefined) return;
  const along = Math.atan2(hole.value.y - ball.value.y, hole.value.x - ball.value.x);
  const aim = {
    x: hole.value.x - Math.sin(along) * read.aimOffset,
    y: hole.value.y + Math.cos(along) * read.aimOffset,
  };
  make(
    'line',
    {
      x1: ball.value.x,
      y1: -ball.value.y,
      x2: aim.x,
      y2: -aim.y,
      stroke: colour,
      'stroke-width': half * 0.004,
      'stroke-dasharray': `${half * 0.008} ${half * 0.012}`,
    },
    layer,
  );
  make(
    'circle',
    {
      cx: aim.x,
      cy: -aim.y,
      r: half * 0.022,
      fill: 'var(--card)',
      stroke: colour,
      'stroke-width': half * 0.009,
    },
    layer,
  );
};

const drawCloud = (layer: SVGGElement, which: 'die' | 'firm', half: number): void => {
  const cloud = clouds.value[which];
  if (cloud === undefined) return;
  const size = half * 0.011;
  for (let index = 0; index < cloud.holed.length; index += 1) {
    if (cloud.holed[index]) continue;
    const x = cloud.rests[2 * index];
    const y = -cloud.rests[2 * index + 1];
    const style = {
      fill: 'none',
      stroke: `var(--${which})`,
      'stroke-width': half * 0.004,
      'stroke-opacity': 0.7,
    };
    if (which === 'firm') make('circle', { cx: x, cy: y, r: size, ...style }, layer);
    else make('path', { d: `M${x - size} ${y}h${2 * size}M${x} ${y - size}v${2 * size}`, ...style }, layer);
  }
};

export const openPlainMap = (host: HTMLElement): DecideMap => {
  const svg = make('svg', {
    width: '100%',
    height: '100%',
    preserveAspectRatio: 'xMidYMid slice',
    'aria-label': 'Map of the putt',
    role: 'group',
  });
  svg.style.touchAction = 'none';
  const ground = make('g', { 'aria-hidden': 'true' }, svg);
  const marks = make('g', { 'aria-hidden': 'true' }, svg);
  const runner = make('circle', { fill: 'var(--card)', stroke: 'var(--ink)', visibility: 'hidden' }, svg);
  const handle = (name: 'ball' | 'hole') => {
    const group = make(
      'g',
      {
        tabindex: 0,
        role: 'button',
        'aria-label': `${name === 'ball' ? 'Ball' : 'Hole'}: drag it, or move it with the arrow keys, finely with Shift`,
        'data-handle': name,
      },
      svg,
    );
    return {
      group,
      touch: make('circle', { fill: 'transparent' }, group),
      dot: make('circle', { fill: name === 'ball' ? '#fff' : '#26241f', stroke: 'var(--ink)' }, group),
    };
  };
  const handles = { hole: handle('hole'), ball: handle('ball') };
  host.replaceChildren(svg);

  let held: 'ball' | 'hole' | undefined;
  let frame = frameOf();
  let animation = 0;

  const toGround = (event: PointerEvent): Point => {
    const matrix = svg.getScreenCTM();
    if (matrix === null) return ball.peek();
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return { x: point.x, y: -point.y };
  };
  for (const name of ['ball', 'hole'] as const) {
    const { group } = handles[name];
    group.style.cursor = 'grab';
    group.addEventListener('pointerdown', (event) => {
      held = name;
      group.setPointerCapture(event.pointerId);
    });
    group.addEventListener('pointermove', (event) => {
      if (held === name) dragTo(name, toGround(event));
    });
    const release = (): void => {
      held = undefined;
      // The view holds still under the finger; it settles round the putt afterwards.
      if (name === 'ball') ball.value = { ...ball.peek() };
      else hole.value = { ...hole.peek() };
    };
    group.addEventListener('pointerup', release);
    group.addEventListener('pointercancel', release);
    group.addEventListener('keydown', (event) => {
      const steps: Record<string, readonly [number, number]> = {
        ArrowLeft: [-1, 0],
        ArrowRight: [1, 0],
        ArrowUp: [0, 1],
        ArrowDown: [0, -1],
      };
      const step = steps[event.key];
      if (step === undefined) return;
      event.preventDefault();
      const size = event.shiftKey ? FINE_STEP : KEY_STEP;
      const now = name === 'ball' ? ball.peek() : hole.peek();
      dragTo(name, { x: now.x + step[0] * size, y: now.y + step[1] * size });
    });
  }

  return {
    show() {
      const next = frameOf();
      if (held === undefined) frame = next;
      const { centre, half } = frame;
      svg.setAttribute('viewBox', `${centre.x - half} ${-centre.y - half} ${2 * half} ${2 * half}`);
      ground.replaceChildren();
      marks.replaceChildren();
      drawGround(ground, { centre, half: half * 1.3 });
      drawCloud(marks, 'die', half);
      drawCloud(marks, 'firm', half);
      const both = lines.value;
      if (both) {
        drawLine(marks, 'firm', both.firm, half);
        drawLine(marks, 'die', both.die, half);
      }
      for (const name of ['ball', 'hole'] as const) {
        const place = name === 'ball' ? ball.value : hole.value;
        const { touch, dot } = handles[name];
        for (const circle of [touch, dot]) {
          circle.setAttribute('cx', String(place.x));
          circle.setAttribute('cy', String(-place.y));
        }
        touch.setAttribute('r', String(half * 0.13));
        dot.setAttribute('r', String(Math.max(half * 0.02, name === 'hole' ? 0.054 : 0.0213)));
        dot.setAttribute('stroke-width', String(half * 0.006));
      }
      runner.setAttribute('r', String(Math.max(half * 0.018, 0.0213)));
      runner.setAttribute('stroke-width', String(half * 0.006));
    },
    roll(_which, { path }, tempo) {
      cancelAnimationFrame(animation);
      return new Promise((resolve) => {
        const start = performance.now();
        let index = 0;
        const step = (now: number): void => {
          const time = ((now - start) / 1000) * tempo;
          while (index + 3 < path.length && path[index + 5] <= time) index += 3;
          runner.setAttribute('visibility', 'visible');
          runner.setAttribute('cx', String(path[index]));
          runner.setAttribute('cy', String(-path[index + 1]));
          if (index + 3 >= path.length) {
            setTimeout(() => runner.setAttribute('visibility', 'hidden'), 900);
            resolve();
          } else animation = requestAnimationFrame(step);
        };
        animation = requestAnimationFrame(step);
      });
    },
    destroy() {
      cancelAnimationFrame(animation);
      svg.remove();
    },
  };
};
