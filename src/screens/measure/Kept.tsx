/** What was measured and kept: day, ground, value with its margin, newest first, each to be taken back. */
import { useSignal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import { RemoveButton } from '../../controls/RemoveButton.tsx';
import { followed } from '../../state/records.ts';
import { hasNarrowed, narrowBy, presetInUse, units, widenBy } from '../../state/settings.ts';
import { type KeptMeasurement, measuredOf } from '../../store/measurementSchema.ts';
import { measurementsOf } from '../../store/measurements.ts';
import { formatDay } from '../../text/format.ts';
import { measurementLine } from '../../text/measureKept.ts';
import { narrowLabel, widenLabel } from '../../text/narrowed.ts';
import { plural } from '../../text/phrases.ts';
import { measurements } from './keeping.ts';
import { sittingOf } from './uses.ts';

/** Shown before the person asks for all. */
const SHOWN = 8;

/** What was measured narrows the preset in hand, or has done so. */
const NarrowButton = ({ one, what }: { one: KeptMeasurement; what: string }) => {
  const preset = presetInUse.value;
  const sitting = sittingOf(measuredOf(one));
  if (preset === undefined || sitting === undefined) return null;
  if (hasNarrowed(sitting))
    return (
      <button
        type="button"
        class="plain"
        aria-label={`${widenLabel(preset.name)}: ${what}`}
        onClick={() => widenBy(sitting)}
      >
        {widenLabel(preset.name)}
      </button>
    );
  return (
    <button
      type="button"
      class="plain"
      aria-label={`${narrowLabel(preset.name)}: ${what}`}
      onClick={() => narrowBy(sitting)}
    >
      {narrowLabel(preset.name)}
    </button>
  );
};

export const Kept = () => {
  const [found] = useState(() => followed((database) => measurementsOf(database).list()));
  useEffect(() => found.stop, [found]);
  const everything = useSignal(false);
  const list = found.answer.value;
  if (list === undefined) return null;
  const all = list.records;
  const shown = everything.value ? all : all.slice(0, SHOWN);
  return (
    <section class="card measure-kept" aria-labelledby="measure-kept" data-testid="kept">
      <h2 id="measure-kept">What you measured</h2>
      {all.length === 0 && (
        <p class="quiet">Nothing kept yet: what you keep, or use, is listed here with its day.</p>
      )}
      <ul>
        {shown.map((one) => {
          const { what, value } = measurementLine(one, units.value);
          const when = formatDay(one.day);
          return (
            <li key={one.id}>
              <span>
                <strong>{what}</strong>: {value}
                <span class="quiet">{when}</span>
                <NarrowButton one={one} what={`${what} of ${when}`} />
              </span>
              <RemoveButton
                what={`${what} of ${when}`}
                onRemove={async () => {
                  await (await measurements()).remove(one.id);
                  const sitting = sittingOf(measuredOf(one));
                  // What is taken back narrows nobody any more.
                  if (sitting) widenBy(sitting);
                }}
              />
            </li>
          );
        })}
      </ul>
      {all.length > shown.length && (
        <button
          type="button"
          class="plain"
          onClick={() => {
            everything.value = true;
          }}
        >
          Show all {all.length}
        </button>
      )}
      {list.unreadable > 0 && (
        <p class="hint">
          {plural(list.unreadable, 'measurement')} on this device cannot be read by this version of the page;
          nothing of them is lost.
        </p>
      )}
    </section>
  );
};
