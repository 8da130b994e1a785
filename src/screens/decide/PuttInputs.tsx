/** Typing the putt: ground, length, slope, clock, green speed and the two paces. */

import { metresToFeet } from '../../../sim/index.ts';
import { Choice } from '../../app/Choice.tsx';
import { Field } from '../../app/Field.tsx';
import { units } from '../../app/settings.ts';
import { formatClock, formatLength, formatShort, formatSlope } from '../../text/format.ts';
import {
  type Parsed,
  parseClock,
  parseGreenSpeed,
  parseLength,
  parsePace,
  parsePercent,
  parseSeed,
} from '../../text/parse.ts';
import { ModelChoices } from './ModelChoices.tsx';
import {
  anotherGreen,
  clock,
  diePace,
  fallAtHole,
  firmPace,
  greenSpeed,
  ground,
  LIMITS,
  length,
  placeBall,
  seed,
  setGreen,
  setGround,
  slope,
  tier,
} from './situation.ts';

const apply = (parsed: Parsed, take: (value: number) => unknown): string | undefined => {
  if (!parsed.ok) return parsed.problem;
  const refused = take(parsed.value);
  return typeof refused === 'string' ? refused : undefined;
};

const GreenFields = () => (
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

export const PuttInputs = () => {
  const unit = units.value;
  const plane = ground.value === 'plane';
  return (
    <section class="card" aria-labelledby="putt-title">
      <h2 id="putt-title">The putt</h2>
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
      <div class="fields">
        <Field
          id="length"
          label={`Length (${unit === 'imperial' ? 'ft' : 'm'})`}
          text={formatLength(length.value, unit).replace(/ .*/, '')}
          onText={(text) =>
            apply(parseLength(text, unit, LIMITS.length), (value) => placeBall(value, clock.peek()))
          }
        />
        <Field
          id="clock"
          label="Ball at (clock)"
          text={formatClock(clock.value)}
          inputMode="text"
          onText={(text) => apply(parseClock(text), (value) => placeBall(length.peek(), value))}
        />
        {plane && (
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
        )}
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
        {!plane && <GreenFields />}
        <Field
          id="die-pace"
          label={`Die: stops past (${unit === 'imperial' ? 'in' : 'cm'})`}
          text={formatShort(diePace.value, unit).replace(/ .*/, '')}
          onText={(text) =>
            apply(parsePace(text, unit, { min: LIMITS.pace.min, max: firmPace.peek() - 0.01 }), (value) => {
              diePace.value = value;
            })
          }
        />
        <Field
          id="firm-pace"
          label={`Firm: stops past (${unit === 'imperial' ? 'in' : 'cm'})`}
          text={formatShort(firmPace.value, unit).replace(/ .*/, '')}
          onText={(text) =>
            apply(parsePace(text, unit, { min: diePace.peek() + 0.01, max: LIMITS.pace.max }), (value) => {
              firmPace.value = value;
            })
          }
        />
      </div>
      <p class="hint">
        The hole is the centre of the clock: 12:00 is straight uphill of it, 6:00 below it, 3:00 pin-high.
        Green speed is a Stimpmeter reading. Past: where the ball would stop if the hole were covered.
      </p>
      <ModelChoices />
    </section>
  );
};
