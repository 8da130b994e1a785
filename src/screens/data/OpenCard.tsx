/** A file chosen or dropped, how far the work is, and what came of it. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { DataSession, Stage } from './session.ts';

const FORMATS = 'application/json,text/csv,text/plain,.json,.csv,.txt';

const Help = () => (
  <details>
    <summary>What may a CSV file look like?</summary>
    <p>
      The first line names the columns. Putts need <code>day</code>, <code>hole</code>, <code>holed</code> and{' '}
      <code>distance_m</code> or <code>distance_ft</code>; practice sets need <code>day</code>,{' '}
      <code>attempts</code>, <code>holed</code> and a distance. Days are written 2026-05-02, answers yes or
      no, a miss needs <code>leave_m</code> or <code>leave_ft</code>. Export a file here to see the other
      columns.
    </p>
    <p>
      Commas, semicolons or tabs between cells; a decimal point or a decimal comma; UTF-8, as spreadsheets
      save it by “CSV UTF-8”. A name that looks like a formula is written with an apostrophe in front, which
      is taken off again.
    </p>
  </details>
);

export const OpenCard = ({ on }: { on: DataSession }) => {
  const [over, setOver] = useState(false);
  const busy = on.stage.value.kind === 'working';
  const take = (files: FileList | null | undefined): void => {
    const [file] = files ?? [];
    if (file !== undefined && !busy) void on.open(file);
  };
  return (
    <section
      class={over ? 'card data-open over' : 'card data-open'}
      aria-label="Open a file"
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        take(event.dataTransfer?.files);
      }}
    >
      <h2>Open a file</h2>
      <p>
        A backup, or putts or practice sets as CSV; drop it here or choose it. You see what it would add,
        change or refuse before anything is written.
      </p>
      <label class="data-file" aria-disabled={busy}>
        <input
          type="file"
          accept={FORMATS}
          disabled={busy}
          onChange={(event) => {
            const input = event.currentTarget;
            take(input.files);
            // The same file may be chosen again, mended.
            input.value = '';
          }}
        />
        <span>Choose a file</span>
      </label>
      <Help />
    </section>
  );
};

export const Progress = ({
  stage,
  onCancel,
}: {
  stage: Extract<Stage, { kind: 'working' }>;
  onCancel: () => void;
}) => (
  <section class="card data-wide data-row" aria-label="Progress">
    <label class="data-progress">
      <span>{stage.what}…</span>
      <progress value={stage.share} max={1} />
    </label>
    <button type="button" onClick={onCancel}>
      Cancel
    </button>
  </section>
);

export const Said = ({ stage: { problem, sentence } }: { stage: Extract<Stage, { kind: 'said' }> }) => {
  const place = useRef<HTMLParagraphElement>(null);
  // What was pressed may be gone: whoever uses the keyboard goes on from here.
  useLayoutEffect(() => place.current?.focus(), [sentence]);
  return (
    <section class="card data-wide" aria-label="Result">
      <p
        ref={place}
        tabIndex={-1}
        class={problem ? 'problem' : ''}
        role={problem ? 'alert' : 'status'}
        data-testid="said"
      >
        {sentence}
      </p>
    </section>
  );
};
