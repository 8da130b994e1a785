/**
 * The map and the buttons that roll the ball on it. The scene is opened once the page is there; if it cannot be, the page
 * says so and shows the map in words, and every number still works. Leaves out: drawing (scene/).
 */
import { effect, signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { Choice } from '../../controls/Choice.tsx';
import { units } from '../../state/settings.ts';
import { problem } from '../../state/situation.ts';
import { CLOUD_SIZE, lines } from './lines.ts';
import { type DecideMap, mapWords, openMap } from './mapScene.ts';
import {
  hasLipOut,
  type NextRoll,
  nextLipOut,
  nextRoll,
  type Pace,
  rollWords,
  type Stroke,
} from './rolls.ts';

type Tempo = '1' | '0.5' | '0.25';
const tempo = signal<Tempo>('1');
const stroke = signal<Stroke>('true');
const rolling = signal(false);
const told = signal('');
const map = signal<DecideMap | undefined>(undefined);
const lost = signal<string | undefined>(undefined);

const roll = async (next: NextRoll | undefined): Promise<void> => {
  if (next === undefined) return;
  rolling.value = true;
  told.value = '';
  try {
    const outcome = await map.peek()?.roll(next.roll, Number(tempo.peek()));
    if (outcome !== 'cancelled') told.value = rollWords(next, units.peek());
  } finally {
    rolling.value = false;
  }
};

const TEMPOS: readonly { value: Tempo; label: string }[] = [
  { value: '1', label: 'real speed' },
  { value: '0.5', label: 'half' },
  { value: '0.25', label: 'quarter' },
];

const STROKES: readonly { value: Stroke; label: string }[] = [
  { value: 'true', label: 'perfect' },
  { value: 'struck', label: 'with your errors' },
];

const RollButton = ({ which }: { which: Pace }) => (
  <button
    type="button"
    class={which}
    disabled={problem.value !== undefined || lines.value?.[which].status !== 'ok' || rolling.value}
    onClick={() => void roll(nextRoll(which, stroke.peek()))}
  >
    {which === 'die' ? 'Roll it to die' : 'Roll it firm'}
  </button>
);

const Legend = () => (
  <p class="hint map-legend">
    <svg class="key die-key" viewBox="0 0 10 10" aria-hidden="true">
      <path d="M1.5 5h7M5 1.5v7" />
    </svg>
    die and{' '}
    <svg class="key firm-key" viewBox="0 0 10 10" aria-hidden="true">
      <circle cx="5" cy="5" r="3" />
    </svg>
    firm: where the misses stop, of {CLOUD_SIZE} putts at each pace with the errors set below. A dot in the
    mark: it lipped out.
  </p>
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
      rolling.value = false;
    };
  }, []);
  return (
    <figure class="map">
      <p class="hint map-how">Drag the ball or the hole, or pick one and use the arrow keys.</p>
      <div class="map-host" ref={host} data-testid="map" />
      {lost.value !== undefined && (
        <>
          <p class="problem">{lost.value}</p>
          <p>{mapWords.value}</p>
        </>
      )}
      <Legend />
      <div class="map-tools">
        <RollButton which="die" />
        <RollButton which="firm" />
        <button
          type="button"
          disabled={problem.value !== undefined || rolling.value || !hasLipOut()}
          onClick={() => void roll(nextLipOut())}
        >
          Show a lip-out
        </button>
        <Choice
          legend="The stroke"
          name="stroke"
          value={stroke.value}
          options={STROKES}
          onChange={(value) => {
            stroke.value = value;
          }}
        />
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
