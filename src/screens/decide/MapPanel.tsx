/**
 * The map and the buttons that roll the ball on it. The scene is loaded lazily (it brings the drawing library); if it
 * cannot be, the page says so and every number still works. Leaves out: drawing (scene/).
 */
import { computed, effect, signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { rollBall } from '../../../sim/index.ts';
import { Choice } from '../../app/Choice.tsx';
import { units } from '../../app/settings.ts';
import { describeMap } from '../../text/describe.ts';
import { lines } from './answer.ts';
import { type DecideMap, openMap } from './mapScene.ts';
import { clock, fallAtHole, hole, length, problem, putt, surface } from './situation.ts';

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

type Tempo = '1' | '0.5' | '0.25';
const tempo = signal<Tempo>('1');
const rolling = signal<'die' | 'firm' | undefined>(undefined);
const told = signal('');
const map = signal<DecideMap | undefined>(undefined);
const lost = signal<string | undefined>(undefined);

const roll = (which: 'die' | 'firm'): void => {
  const line = lines.peek()?.[which];
  if (line?.status !== 'ok') return;
  const result = rollBall(putt.peek(), line.start, line.speed);
  rolling.value = which;
  told.value = '';
  const done = (): void => {
    rolling.value = undefined;
    told.value = `${which === 'die' ? 'Dying' : 'Firm'} putt: ${result.status === 'holed' ? 'holed' : 'missed'} after ${result.time.toFixed(1)} s.`;
  };
  const current = map.peek();
  if (current === undefined) done();
  else current.roll(which, result, Number(tempo.peek())).then(done, done);
};

const TEMPOS: readonly { value: Tempo; label: string }[] = [
  { value: '1', label: 'real' },
  { value: '0.5', label: 'half' },
  { value: '0.25', label: 'quarter' },
];

const RollButton = ({ which }: { which: 'die' | 'firm' }) => (
  <button
    type="button"
    class={which}
    disabled={
      problem.value !== undefined || lines.value?.[which].status !== 'ok' || rolling.value !== undefined
    }
    onClick={() => roll(which)}
  >
    {which === 'die' ? 'Roll it to die' : 'Roll it firm'}
  </button>
);

export const MapPanel = () => {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    let here = true;
    let stop: (() => void) | undefined;
    openMap(element).then(
      (opened) => {
        if (!here) {
          opened.destroy();
          return;
        }
        map.value = opened;
        stop = effect(() => opened.show());
      },
      (cause: unknown) => {
        lost.value = `The map could not be drawn here (${cause instanceof Error ? cause.message : String(cause)}). Type the putt below; all the numbers work.`;
      },
    );
    return () => {
      here = false;
      stop?.();
      map.peek()?.destroy();
      map.value = undefined;
      rolling.value = undefined;
    };
  }, []);
  return (
    <figure class="map">
      <div class="map-host" ref={host} data-testid="map" />
      {lost.value !== undefined && <p class="problem">{lost.value}</p>}
      <figcaption class="unseen" data-testid="map-words">
        {words.value}
      </figcaption>
      <div class="map-tools">
        <RollButton which="die" />
        <RollButton which="firm" />
        <Choice
          legend="Speed of the roll"
          name="tempo"
          value={tempo.value}
          options={TEMPOS}
          onChange={(value) => {
            tempo.value = value;
          }}
        />
        <span class="quiet" role="status">
          {told.value}
        </span>
      </div>
    </figure>
  );
};
