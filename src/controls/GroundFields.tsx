/** Which ground one putts on: tilted plane or made-up green, its slope or seed, the green speed. One for every screen. */
import { metresToFeet } from '../../sim/index.ts';
import {
  anotherGreen,
  fallAtHole,
  greenSpeed,
  ground,
  LIMITS,
  seed,
  setGreen,
  setGround,
  slope,
  tier,
} from '../state/situation.ts';
import { formatSlope } from '../text/format.ts';
import { type Parsed, parseGreenSpeed, parsePercent, parseSeed } from '../text/parse.ts';
import { Choice } from './Choice.tsx';
import { Field } from './Field.tsx';

/** Hands a good value on; returns a problem sentence of the parser or of `take`. */
export const apply = (parsed: Parsed, take: (value: number) => unknown): string | undefined => {
  if (!parsed.ok) return parsed.problem;
  const refused = take(parsed.value);
  return typeof refused === 'string' ? refused : undefined;
};

export const GroundChoice = () => (
  <Choice
    legend="Ground"
    name="ground"
    value={ground.value}
    options={[
      { value: 'plane', label: 'Tilted plane' },
      { value: 'green', label: 'Made-up green' },
    ]}
    onChange={setGround}
  />
);

export const SlopeField = () => (
  <Field
    id="slope"
    label="Slope (%)"
    text={formatSlope(slope.value).replace('%', '')}
    onText={(text) =>
      apply(parsePercent(text, LIMITS.slope), (value) => {
        slope.value = value;
      })
    }
  />
);

export const SpeedField = () => (
  <Field
    id="green-speed"
    label="Green speed (ft)"
    text={String(+metresToFeet(greenSpeed.value).toFixed(1))}
    onText={(text) =>
      apply(parseGreenSpeed(text, LIMITS.greenSpeed), (value) => {
        greenSpeed.value = value;
      })
    }
  />
);

export const GreenFields = () => (
  <>
    <Field
      id="seed"
      label="Green (any word or number)"
      text={seed.value}
      inputMode="text"
      onText={(text) => {
        const parsed = parseSeed(text);
        if (!parsed.ok) return parsed.problem;
        setGreen({ seed: parsed.value });
        return undefined;
      }}
    />
    <div class="together">
      <button type="button" onClick={anotherGreen}>
        Another green
      </button>
      <label class="tick">
        <input
          type="checkbox"
          checked={tier.value}
          onChange={(event) => {
            setGreen({ tier: event.currentTarget.checked });
          }}
        />
        <span>with a tier</span>
      </label>
    </div>
    <p class="hint">At the hole the ground falls {formatSlope(fallAtHole.value.slope)}.</p>
  </>
);
