/**
 * The putt as a paper map one aims on. Answers for: opening the scene and keeping it in step, where a drag or a key puts
 * the aim, rolling the ball once the aim is committed, words where no map can be drawn. Leaves out: drawing (scene/), what
 * may be seen when (mapModel.ts).
 */
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { readDrill } from '../../../drills/index.ts';
import type { Scene, Viewport } from '../../scene/model.ts';
import { mapSize } from '../../scene/picture.ts';
import { createScene } from '../../scene/scene.ts';
import { themeInForce } from '../../state/theme.ts';
import type { Units } from '../../text/format.ts';
import { aimSteps, roundAim, WIDEST_AIM } from './aimText.ts';
import type { Asked } from './asked.ts';
import { MapKey } from './MapKey.tsx';
import { mapModel, mapWords, spotsOf } from './mapModel.ts';
import type { Revealed } from './reveal.ts';
import { aimAt, fitView, type Room } from './view.ts';

/** Rolls are shown faster than real, so that ten putts are not ten waits. */
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

const clamp = (aim: number): number => Math.max(-WIDEST_AIM, Math.min(WIDEST_AIM, aim));

/** Width and height of an element, followed. */
const useRoom = () => {
  const host = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState<Room>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = host.current;
    if (element === null) return;
    const measure = (): void => {
      const { width, height } = mapSize({ width: element.clientWidth, height: element.clientHeight });
      setRoom((now) => (now.width === width && now.height === height ? now : { width, height }));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  return { host, room };
};

/** Below the map once the answer is there: what is drawn, and rolls to look at. */
const Tools = ({ revealed, onRoll }: { revealed: Revealed; onRoll: (path: Float64Array) => void }) => {
  const Roll = ({ path, words }: { path: () => Float64Array; words: string }) => (
    <button type="button" onClick={() => onRoll(path())}>
      {words}
    </button>
  );
  if (revealed.kind === 'paces')
    return (
      <>
        <MapKey kind="die">die</MapKey>
        <MapKey kind="firm">firm, both thin beyond the hole</MapKey>
        <Roll path={() => revealed.die.path} words="Roll it to die" />
        <Roll path={() => revealed.firm.path} words="Roll it firm" />
      </>
    );
  if (revealed.kind === 'slope')
    return (
      <>
        <MapKey kind="true">the line, thin beyond the hole</MapKey>
        <Roll path={() => revealed.line.path} words="Roll it" />
      </>
    );
  return (
    <>
      <MapKey kind="yours">your roll</MapKey>
      <MapKey kind="true">true line, thin beyond the hole</MapKey>
      <Roll path={() => revealed.roll.path} words="Roll yours again" />
      <Roll path={() => revealed.truePath()} words="Roll the true one" />
    </>
  );
};

export const ReadMap = (props: ReadMapProps) => {
  const { asked, aim, revealed, units } = props;
  const { question } = asked;
  const { host, room } = useRoom();
  const [scene, setScene] = useState<Scene | undefined>(undefined);
  const [lost, setLost] = useState<string | undefined>(undefined);
  const [held, setHeld] = useState(false);
  const view = useRef<{ viewport: Viewport; question: unknown; room: Room } | undefined>(undefined);
  // What the scene's own handlers act on: they are made once, the question changes.
  const latest = useRef(props);
  latest.current = props;

  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    let here = true;
    let opened: Scene | undefined;
    createScene(element, {
      name: 'Map of the putt: ball at the bottom, hole above it',
      // Anywhere: a finger beside the aim does not hide it.
      pickRadius: Number.POSITIVE_INFINITY,
      onDrag(_handle, place) {
        if (latest.current.asked.set.kind !== 'aim') return;
        setHeld(true);
        const { ball, hole } = latest.current.asked.question;
        latest.current.onAim(clamp(roundAim(aimAt(ball, hole, place), latest.current.units)));
      },
      onDragEnd: () => setHeld(false),
    }).then(
      (made) => {
        opened = made;
        if (here) setScene(made);
        else made.destroy();
      },
      (cause: unknown) => setLost(cause instanceof Error ? cause.message : String(cause)),
    );
    return () => {
      here = false;
      opened?.destroy();
    };
  }, [host]);

  const theme = themeInForce.value;
  const slopeGiven = readDrill(asked.set.drillId)?.shown.slope === true;
  useLayoutEffect(() => {
    if (scene === undefined) return;
    const before = view.current;
    // The map holds still under the finger; it makes room for a far aim afterwards.
    const kept = held && before?.question === question && before.room === room ? before.viewport : undefined;
    const { ball, hole, pace } = question;
    const viewport = kept ?? fitView({ ball, hole, pace, spots: spotsOf(asked, aim, revealed), room });
    view.current = { viewport, question, room };
    scene.update(mapModel({ asked, aim, revealed, viewport, theme, units, slopeGiven }));
  });

  const stopRoll = useRef<(() => void) | undefined>(undefined);
  const roll = (path: Float64Array): void => {
    stopRoll.current?.();
    stopRoll.current = scene?.animate(path, { rate: TEMPO });
  };
  // Once, when the answer comes; not when the units change.
  useEffect(() => {
    if (scene !== undefined && revealed?.kind === 'aim') roll(revealed.roll.path);
  }, [scene, revealed]);

  const onKeyDown = (event: KeyboardEvent): void => {
    if (!(event.target instanceof HTMLElement) || event.target.dataset.handle !== 'aim') return;
    const { page } = aimSteps(units);
    const moves: Record<string, number> = { PageUp: aim + page, PageDown: aim - page, Home: 0 };
    const moved = moves[event.key];
    if (event.key !== 'Enter' && moved === undefined) return;
    event.preventDefault();
    if (moved === undefined) props.onCommit();
    else props.onAim(clamp(moved));
  };

  return (
    <figure class="read-map">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: hears the keys of the aim, a button the scene puts inside */}
      <div class="read-host" ref={host} data-testid="map" onKeyDown={onKeyDown} />
      {lost !== undefined && (
        <>
          <p class="problem">
            The map could not be drawn here ({lost}). Read the ground from the words below and answer beside
            them; all the numbers work.
          </p>
          <p>{mapWords({ asked, aim, revealed, units, slopeGiven })}</p>
        </>
      )}
      {revealed !== undefined ? (
        <div class="read-tools">
          <Tools revealed={revealed} onRoll={roll} />
        </div>
      ) : (
        lost === undefined &&
        asked.set.kind === 'aim' && <p class="hint read-how">Drag anywhere on the map to move your aim.</p>
      )}
    </figure>
  );
};
