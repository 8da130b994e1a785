/** The player's errors: presets, fits to a record, and sliders, each with a word on what it is. */
import { useEffect, useState } from 'preact/hooks';
import { degreesToRadians, type Player, PRESETS, radiansToDegrees } from '../../sim/index.ts';
import { recordsOf } from '../store/records.ts';
import { fitHint, fitName, grownWords } from '../text/errors.ts';
import type { Units } from '../text/format.ts';
import { fitInUse, type KeptFit, keptFitOf, keptFits, playerOfFit, samePlayer } from './fittedPlayer.ts';
import { followed, recordsLast } from './records.ts';
import { Slider } from './Slider.tsx';
import { PLAYER_RANGES, player, units } from './settings.ts';

interface ErrorWords {
  readonly key: keyof Player;
  readonly label: string;
  readonly hint: string | ((units: Units) => string);
  readonly step: number;
  readonly toShown: (value: number) => number;
  readonly fromShown: (value: number) => number;
  readonly unit: string;
  readonly digits: number;
  /** Biases carry their sign. */
  readonly signed?: readonly [below: string, above: string];
}

const asPercent = {
  toShown: (value: number) => value * 100,
  fromShown: (value: number) => value / 100,
  unit: '%',
  digits: 0,
};

const ERRORS: readonly ErrorWords[] = [
  {
    key: 'lineSd',
    label: 'Start line, spread',
    hint: (inUse) =>
      `Two putts in three start within this of where you aimed; 1° is ${inUse === 'imperial' ? '2.5 in at 12 ft' : '7 cm at 4 m'}.`,
    step: 0.05,
    toShown: radiansToDegrees,
    fromShown: degreesToRadians,
    unit: '°',
    digits: 2,
  },
  {
    key: 'paceSd',
    label: 'Pace, spread',
    hint: 'Two putts in three roll within this share of the distance you meant.',
    step: 0.5,
    ...asPercent,
    digits: 1,
  },
  {
    key: 'readSd',
    label: 'Read, spread',
    hint: 'How far your break is off from putt to putt, as a share of the break.',
    step: 1,
    ...asPercent,
  },
  {
    key: 'readBias',
    label: 'Read, habit',
    hint: 'Below zero you play too little break, above zero too much.',
    step: 1,
    ...asPercent,
    signed: ['too little', 'too much'],
  },
  {
    key: 'paceBias',
    label: 'Pace, habit',
    hint: 'Below zero you tend to leave it short of what you meant, above zero to run past.',
    step: 1,
    ...asPercent,
    signed: ['short', 'long'],
  },
];

const shownOf = (words: ErrorWords, value: number): string => {
  const number = words.toShown(value);
  const text = `${Math.abs(number).toFixed(words.digits).replace(/\.0+$/, '')}${words.unit}`;
  if (!words.signed || Math.abs(number) < 0.5) return text;
  return `${text} ${words.signed[number < 0 ? 0 : 1]}`;
};

/** Values of the choices that are no presets: ids of presets carry no colon. */
const choiceOf = ({ source }: Pick<KeptFit, 'source'>): string => `fit:${source}`;

/** What has been recorded since the fit, in a sentence. Only the person's own record grows. */
const GrownSince = ({ fit }: { fit: KeptFit }) => {
  const [sizes] = useState(() => followed((database) => recordsOf(database).sizes()));
  useEffect(() => sizes.stop, [sizes]);
  const now = sizes.answer.value;
  // Records in memory are not those of the fit.
  const words =
    recordsLast.value &&
    now &&
    grownWords({ putts: now.putts - fit.sizes.putts, sets: now.sets - fit.sizes.sets });
  return words ? <> {words}</> : null;
};

export const PlayerPanel = () => {
  const now = player.value;
  const fit = fitInUse.value;
  const preset = fit ? undefined : PRESETS.find((one) => samePlayer(one.player, now));
  return (
    <section class="card" aria-labelledby="player-title">
      <h2 id="player-title">Your errors</h2>
      <div class="field">
        <label for="preset">Start from</label>
        <select
          id="preset"
          value={fit ? choiceOf(fit) : (preset?.id ?? '')}
          aria-describedby="preset-hint"
          onChange={(event) => {
            const { value } = event.currentTarget;
            const kept = keptFits.value.find((one) => choiceOf(one) === value);
            const chosen = kept ? playerOfFit(kept) : PRESETS.find(({ id }) => id === value)?.player;
            if (chosen) player.value = chosen;
          }}
        >
          {!preset && !fit && <option value="">my own numbers</option>}
          {(['own', 'demo'] as const).map((source) => {
            const kept = keptFitOf(source);
            return (
              kept && (
                <option key={source} value={choiceOf(kept)}>
                  {fitName(kept)}
                </option>
              )
            );
          })}
          {PRESETS.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
        <p id="preset-hint" class="hint">
          {fit ? fitHint(fit) : preset ? preset.source : 'Set below. They stay on this device.'}
          {fit?.source === 'own' && <GrownSince fit={fit} />}
        </p>
      </div>
      {ERRORS.map((words) => {
        const range = PLAYER_RANGES[words.key];
        return (
          <Slider
            key={words.key}
            id={`player-${words.key}`}
            label={words.label}
            hint={typeof words.hint === 'string' ? words.hint : words.hint(units.value)}
            min={words.toShown(range.min)}
            max={words.toShown(range.max)}
            step={words.step}
            value={words.toShown(now[words.key])}
            shown={shownOf(words, now[words.key])}
            onValue={(value) => {
              const next = Math.min(Math.max(words.fromShown(value), range.min), range.max);
              player.value = { ...player.peek(), [words.key]: next };
            }}
          />
        );
      })}
    </section>
  );
};
