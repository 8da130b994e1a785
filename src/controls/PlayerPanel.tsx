/** The player's errors: presets, fits to a record, and sliders, each with a word on what it is. */
import { useEffect, useState } from 'preact/hooks';
import { degreesToRadians, type Player, PRESETS } from '../../sim/index.ts';
import { type KeptFit, keptFitOf } from '../state/fittedPlayer.ts';
import { PLAYER_RANGES } from '../state/playerRanges.ts';
import { followed, recordsLast } from '../state/records.ts';
import {
  chooseFit,
  choosePreset,
  fitInUse,
  narrowedBy,
  player,
  presetInUse,
  setErrors,
  takenOver,
  units,
} from '../state/settings.ts';
import { recordsOf } from '../store/records.ts';
import { fitHint, fitName, grownWords } from '../text/errors.ts';
import { takenOverWords } from '../text/olderErrors.ts';
import {
  ERROR_HINTS,
  ERROR_NAMES,
  errorWords,
  PLAYER_ERRORS,
  shownError,
  typicalWords,
} from '../text/player.ts';
import { Narrowed } from './Narrowed.tsx';
import { Slider } from './Slider.tsx';

/** Of the sliders, in the unit shown: degrees and per cent. */
const STEPS: Readonly<Record<keyof Player, number>> = {
  lineSd: 0.05,
  paceSd: 0.5,
  slopeSd: 0.05,
  speedSd: 0.5,
  readBias: 1,
  paceBias: 1,
};
const fromShown = (name: keyof Player, value: number): number =>
  name === 'lineSd' ? degreesToRadians(value) : value / 100;

/** Values of the choices that are no presets: ids of presets carry no colon. */
const NARROWED = 'preset:narrowed';
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

/** How errors in the form of before were taken over; once, until it is put away. */
const TakenOverWord = () => {
  const found = takenOver.value;
  if (found === undefined) return null;
  return (
    <div class="taken-over" role="status">
      <p>{takenOverWords(found)}</p>
      <button
        type="button"
        onClick={() => {
          takenOver.value = undefined;
        }}
      >
        Understood
      </button>
    </div>
  );
};

const ErrorSlider = ({ name }: { name: keyof Player }) => {
  const { min, max } = PLAYER_RANGES[name];
  const value = player.value[name];
  const typical = typicalWords(name);
  return (
    <Slider
      id={`player-${name}`}
      label={ERROR_NAMES[name]}
      hint={`${ERROR_HINTS[name](units.value)}${typical ? ` ${typical}` : ''}`}
      min={shownError(name, min)}
      max={shownError(name, max)}
      step={STEPS[name]}
      value={shownError(name, value)}
      shown={errorWords(name, value)}
      onValue={(next) => setErrors({ [name]: Math.min(Math.max(fromShown(name, next), min), max) })}
    />
  );
};

export const PlayerPanel = () => {
  const fit = fitInUse.value;
  const preset = presetInUse.value;
  const narrowed = narrowedBy.value.length > 0;
  return (
    <section class="card" aria-labelledby="player-title">
      <h2 id="player-title">Your errors</h2>
      <TakenOverWord />
      <div class="field">
        <label for="preset">Start from</label>
        <select
          id="preset"
          value={fit ? choiceOf(fit) : narrowed ? NARROWED : (preset?.id ?? '')}
          aria-describedby="preset-hint"
          onChange={(event) => {
            const { value } = event.currentTarget;
            const source = (['own', 'demo'] as const).find((one) => choiceOf({ source: one }) === value);
            if (source) chooseFit(source);
            else if (value !== NARROWED) choosePreset(value);
          }}
        >
          {!preset && !fit && <option value="">my own numbers</option>}
          {preset && narrowed && <option value={NARROWED}>{preset.name}, narrowed</option>}
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
          {preset && !PRESETS.includes(preset) && <option value={preset.id}>{preset.name}</option>}
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
        <Narrowed />
      </div>
      {PLAYER_ERRORS.map((name) => (
        <ErrorSlider key={name} name={name} />
      ))}
    </section>
  );
};
