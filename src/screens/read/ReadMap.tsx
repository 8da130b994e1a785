/**
 * The putt as a paper map one aims on: ground, ball, hole, the aim that is dragged or moved by keys; after the commitment
 * the person's roll and the true line. Plain SVG: works everywhere and follows the theme by css.
 */
import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { HOLE_RADIUS, type Line, type Point, type Roll } from '../../../sim/index.ts';
import { formatAim, formatShort, holeWords, type Units } from '../../text/format.ts';
import { aimSteps, WIDEST_AIM } from './aimText.ts';
import { contourStep, drawGround } from './ground.ts';
import type { Asked, Revealed } from './session.ts';
import { aimThrough, makeView, type View } from './view.ts';
import { groundSentence } from './words.ts';

/** Shape of the map, height by width, and its limits in pixels. */
const SHAPE = 0.92;
const LEAST_HEIGHT = 300;
const LEAST_ROOM_BELOW = 150;
/** The ball is drawn at least this wide, pixels: a true one would be a speck on a long putt. */
const LEAST_DOT = 5;
/** Roll shown faster than real, so that ten putts are not ten waits. */
const TEMPO = 1.6;

export interface ReadMapProps {
  readonly asked: Asked;
  /** m, positive left */
  readonly aim: number;
  readonly revealed: Revealed | undefined;
  readonly units: Units;
  readonly onAim: (aim: number) => void;
  readonly onCommit: () => void;
}

const useSize = () => {
  const host = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const measure = (): void => {
      const width = Math.floor(element.clientWidth);
      const room = Math.max(LEAST_HEIGHT, window.innerHeight - LEAST_ROOM_BELOW);
      setSize({ width, height: Math.floor(Math.min(Math.max(LEAST_HEIGHT, width * SHAPE), room)) });
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  return { host, size };
};

const pathText = (view: View, path: Float64Array): string => {
  let text = '';
  for (let index = 0; index + 1 < path.length; index += 3) {
    const { x, y } = view.toPixels({ x: path[index], y: path[index + 1] });
    text += `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`;
  }
  return text;
};

/** The ball on its way; stands at the end when the person asked for less motion. */
const Runner = ({ view, roll }: { view: View; roll: Roll }) => {
  const place = useSignal<Point | undefined>(undefined);
  useEffect(() => {
    const { path } = roll;
    const end = path.length - 3;
    const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    let index = 0;
    let frame = 0;
    const start = performance.now();
    const step = (now: number): void => {
      const time = still ? Number.POSITIVE_INFINITY : ((now - start) / 1000) * TEMPO;
      while (index < end && path[index + 5] <= time) index += 3;
      place.value = view.toPixels({ x: path[index], y: path[index + 1] });
      if (index < end) frame = requestAnimationFrame(step);
    };
    step(start);
    return () => cancelAnimationFrame(frame);
  }, [view, roll, place]);
  const now = place.value;
  if (now === undefined) return null;
  return <circle class="read-ball" cx={now.x} cy={now.y} r={Math.max(LEAST_DOT, 0.0213 * view.scale)} />;
};

const Lines = ({ view, line, revealed }: { view: View; line: Line; revealed: Revealed }) => {
  const { rest } = line;
  const end = view.toPixels(rest);
  return (
    <g>
      <path class="read-true" d={pathText(view, line.path)} />
      <circle class="read-true-rest" cx={end.x} cy={end.y} r={5} />
      <path class="read-yours" d={pathText(view, revealed.roll.path)} />
    </g>
  );
};

/** A round length for the scale bar that fits a fifth of the map. */
const scaleBar = (view: View, units: Units): { metres: number; words: string } => {
  const foot = 0.3048;
  const choices =
    units === 'imperial'
      ? [1, 2, 5, 10].map((feet) => ({ metres: feet * foot, words: `${feet} ft` }))
      : [0.5, 1, 2, 5].map((metres) => ({ metres, words: `${metres} m` }));
  return choices.findLast(({ metres }) => metres * view.scale < view.width / 4) ?? choices[0];
};

export const ReadMap = ({ asked, aim, revealed, units, onAim, onCommit }: ReadMapProps) => {
  const { question, putt } = asked;
  const { host, size } = useSize();
  const drawing = useRef<SVGSVGElement>(null);
  const held = useRef(false);
  const view = useMemo(
    () =>
      size.width === 0
        ? undefined
        : makeView({ ball: question.ball, hole: question.hole, pace: question.pace, ...size }),
    [question, size],
  );
  const ink = useMemo(() => view && drawGround(putt.surface, view), [putt, view]);
  if (view === undefined || ink === undefined)
    return <div ref={host} class="read-map" data-testid="read-map" />;

  const ball = view.place(0, 0);
  const hole = view.place(0, view.length);
  const spot = view.place(-aim, view.length);
  const trueSpot = view.place(-question.trueAim, view.length);
  const dot = Math.max(LEAST_DOT, 0.0213 * view.scale);
  const follow = (event: PointerEvent): void => {
    const box = drawing.current?.getBoundingClientRect();
    if (box === undefined) return;
    const { across, along } = view.unplace(event.clientX - box.left, event.clientY - box.top);
    onAim(aimThrough(view, across, along));
  };
  const release = (): void => {
    held.current = false;
  };
  const onKey = (event: KeyboardEvent): void => {
    const { step, fine, page } = aimSteps(units);
    const size = event.shiftKey ? fine : step;
    const moves: Record<string, number> = {
      ArrowLeft: aim + size,
      ArrowUp: aim + size,
      ArrowRight: aim - size,
      ArrowDown: aim - size,
      PageUp: aim + page,
      PageDown: aim - page,
      Home: 0,
    };
    if (event.key === 'Enter') {
      event.preventDefault();
      onCommit();
    }
    const moved = moves[event.key];
    if (moved === undefined) return;
    event.preventDefault();
    onAim(Math.max(-WIDEST_AIM, Math.min(WIDEST_AIM, moved)));
  };
  const open = revealed === undefined;
  const bar = scaleBar(view, units);
  const aimWords = `${formatAim(aim, units)}, ${holeWords(aim)}`;
  return (
    <div ref={host} class="read-map" data-testid="read-map">
      <svg
        ref={drawing}
        width={view.width}
        height={view.height}
        class={open ? 'read-open' : undefined}
        onPointerDown={(event) => {
          if (!open) return;
          held.current = true;
          event.currentTarget.setPointerCapture(event.pointerId);
          follow(event);
        }}
        onPointerMove={(event) => {
          if (held.current && open) follow(event);
        }}
        onPointerUp={release}
        onPointerCancel={release}
      >
        <title>Map of the putt, the ball at the bottom and the hole above it</title>
        <desc>{groundSentence(putt.surface, question)}</desc>
        {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing inside takes the focus */}
        <g aria-hidden="true">
          <path class="read-contour" d={ink.contours} />
          <path class="read-contour read-index" d={ink.indexContours} />
          <path class="read-hachure" d={ink.hachures} />
          <line
            class="read-level"
            x1={hole.x - view.width}
            x2={hole.x + view.width}
            y1={hole.y}
            y2={hole.y}
          />
          <circle
            class="read-hole"
            cx={hole.x}
            cy={hole.y}
            r={Math.max(LEAST_DOT, HOLE_RADIUS * view.scale)}
          />
          <line class="read-start" x1={ball.x} y1={ball.y} x2={spot.x} y2={spot.y} />
          {revealed && (
            <>
              <line class="read-start-true" x1={ball.x} y1={ball.y} x2={trueSpot.x} y2={trueSpot.y} />
              <Lines view={view} line={revealed.line} revealed={revealed} />
              <circle class="read-true-aim" cx={trueSpot.x} cy={trueSpot.y} r={8} />
            </>
          )}
          <circle class="read-ball" cx={ball.x} cy={ball.y} r={dot} />
          {revealed && <Runner view={view} roll={revealed.roll} />}
          <path
            class="read-bar"
            d={`M14 ${view.height - 14}h${bar.metres * view.scale}m0 -5v10m${-bar.metres * view.scale} 0v-10`}
          />
          <text class="read-bar-text" x={14} y={view.height - 24}>
            {bar.words}
          </text>
        </g>
        {open ? (
          <g
            class="read-aim"
            // Lower case: in SVG the attribute is spelt as it is written.
            tabindex={0}
            role="slider"
            aria-label="Aim beside the hole centre"
            aria-orientation="horizontal"
            aria-valuemin={-WIDEST_AIM}
            aria-valuemax={WIDEST_AIM}
            aria-valuenow={Number((-aim).toFixed(4))}
            aria-valuetext={aimWords}
            data-testid="aim"
            onKeyDown={onKey}
          >
            <circle class="read-touch" cx={spot.x} cy={spot.y} r={24} />
            <circle class="read-aim-ring" cx={spot.x} cy={spot.y} r={8} />
          </g>
        ) : (
          <circle class="read-aim-ring" cx={spot.x} cy={spot.y} r={8} />
        )}
      </svg>
      <p class="read-legend">
        {revealed && (
          <span>
            <svg class="read-key" width="34" height="10" aria-hidden="true">
              <path class="read-yours" d="M1 5h32" />
            </svg>{' '}
            your roll{' '}
            <svg class="read-key" width="34" height="10" aria-hidden="true">
              <path class="read-true" d="M1 5h32" />
            </svg>{' '}
            true line.{' '}
          </span>
        )}
        Contours every {formatShort(contourStep(view.length), 'metric')}; strokes run downhill from their
        thick end.
      </p>
    </div>
  );
};
