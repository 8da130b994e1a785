/** The device's own level, asked for only by a press: the live reading and its way into the next empty field. */
import { useEffect, useMemo } from 'preact/hooks';
import type { Draft } from './drafts.ts';
import { addRow, typeCell } from './drafts.ts';
import { createTilt, type TiltReading, type TiltState } from './tilt.ts';

const STATE_WORDS: Readonly<Record<Exclude<TiltState, 'live'>, string>> = {
  off: '',
  asking: 'Asking for leave to use the sensor…',
  refused: 'The sensor was not allowed. Type the readings of any level instead.',
  missing: 'This device or browser gives no tilt. Type the readings of any level instead.',
  waiting: 'Waiting for the sensor…',
};

/** Tenths are shown, hundredths kept. */
const shown = (degrees: number): string =>
  `${degrees
    .toFixed(1)
    .replace('-', '−')
    .replace(/^−(0\.0)$/, '$1')}°`;

/** The first empty reading, in the order in which they are made. */
const nextEmpty = (draft: Draft): { row: number; key: 'facing' | 'turned' } | undefined => {
  for (const row of draft.rows)
    for (const key of ['facing', 'turned'] as const)
      if ((row.cells[key]?.text.trim() ?? '') === '') return { row: row.key, key };
  return undefined;
};

const adviceOn = ({ still, flat }: TiltReading): string => {
  if (!flat) return 'Lay the telephone on the board, face up.';
  return still ? 'It lies still.' : 'Take your hands off and let it come to rest.';
};

export const TiltPanel = ({ draft }: { draft: Draft }) => {
  const tilt = useMemo(() => createTilt(window), []);
  useEffect(() => tilt.stop, [tilt]);
  const state = tilt.state.value;
  const reading = tilt.reading.value;
  const next = nextEmpty(draft);
  const take = (): void => {
    const now = tilt.reading.peek();
    if (now === undefined) return;
    const { row, key } = next ?? { row: addRow('slope'), key: 'facing' as const };
    typeCell('slope', row, key, { text: now.degrees.toFixed(2), units: 'imperial' });
  };
  const number = next === undefined ? draft.rows.length : draft.rows.findIndex(({ key }) => key === next.row);
  const into = `pair ${number + 1}, ${next?.key === 'turned' ? 'turned round' : 'as laid'}`;
  return (
    <section class="card measure-tilt" aria-label="This device’s level">
      {state === 'off' || state === 'refused' || state === 'missing' ? (
        <p>
          <button type="button" onClick={() => void tilt.start()}>
            Use this device’s level
          </button>
        </p>
      ) : null}
      {state === 'live' && reading !== undefined ? (
        <>
          <p class="measure-live">
            <span data-testid="tilt">{shown(reading.degrees)}</span>{' '}
            <span class="quiet" role="status">
              {adviceOn(reading)}
            </span>
          </p>
          <p class="measure-actions">
            <button
              type="button"
              class="measure-main"
              disabled={!(reading.still && reading.flat)}
              onClick={take}
            >
              Take this reading
            </button>
            <span class="quiet">for {into}</span>
            <button type="button" class="plain" onClick={tilt.stop}>
              Switch it off
            </button>
          </p>
        </>
      ) : (
        <p class="quiet" role="status">
          {state === 'live' ? '' : STATE_WORDS[state]}
        </p>
      )}
    </section>
  );
};
