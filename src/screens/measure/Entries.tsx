/** The rows of a form: typed cells, choices, one more, one less. Every text stays as typed, its complaint beneath it. */
import { Choice } from '../../controls/Choice.tsx';
import { Field } from '../../controls/Field.tsx';
import type { Units } from '../../text/format.ts';
import {
  addRow,
  choose,
  clearForm,
  type Draft,
  MOST_ROWS,
  type Row,
  removeRow,
  typeCell,
  undo,
  undoable,
} from './drafts.ts';
import { type CellSpec, type ChoiceSpec, type FormSpec, labelOf } from './forms.ts';
import { cellsOf, problemOf, rowCellsOf, rowChoicesOf, rowProblem, shownText } from './work.ts';

export interface EntriesProps {
  readonly form: FormSpec;
  readonly draft: Draft;
  readonly units: Units;
  /** The person's, m. */
  readonly step: number | undefined;
}

interface Place extends EntriesProps {
  /** Undefined: of the whole form. */
  readonly row?: Row;
}

const idOf = ({ form, row }: Place, key: string): string =>
  `measure-${form.id}-${row === undefined ? '' : `${row.key}-`}${key}`;

const CellField = ({ spec, place }: { spec: CellSpec; place: Place }) => {
  const { form, draft, row, units, step } = place;
  const cell = (row ?? draft).cells[spec.key];
  return (
    <Field
      id={idOf(place, spec.key)}
      label={labelOf(spec, units, row === undefined || row === draft.rows[0])}
      text={shownText(spec, cell, units, step)}
      inputMode={spec.steps || form.id === 'slope' ? 'text' : 'decimal'}
      problem={problemOf(spec, cell, step)}
      onText={(text) => {
        typeCell(form.id, row?.key, spec.key, { text, units });
        return undefined;
      }}
    />
  );
};

const CellChoice = ({ spec, place }: { spec: ChoiceSpec; place: Place }) => {
  const { form, draft, row } = place;
  return (
    <Choice
      legend={spec.label}
      name={idOf(place, spec.key)}
      showLegend
      value={(row ?? draft).choices[spec.key]}
      options={spec.options}
      onChange={(value) => choose(form.id, row?.key, spec.key, value)}
    />
  );
};

/** The row goes on where the eye is: its first field. */
const focusRow = (form: FormSpec, key: number): void => {
  requestAnimationFrame(() =>
    document.querySelector<HTMLElement>(`[data-row="${form.id}-${key}"] input`)?.focus(),
  );
};

const RowFields = ({ number, place }: { number: number; place: Place & { row: Row } }) => {
  const { form, draft, row } = place;
  const name = `${form.row[0].toUpperCase()}${form.row.slice(1)} ${number}`;
  const problem = rowProblem(form.id, row);
  return (
    <li data-row={`${form.id}-${row.key}`}>
      <fieldset class="measure-row" aria-describedby={problem ? idOf(place, 'row') : undefined}>
        <legend>{name}</legend>
        {rowChoicesOf(form, draft).map((spec) => (
          <CellChoice key={spec.key} spec={spec} place={place} />
        ))}
        {rowCellsOf(form, draft).map((spec) => (
          <CellField key={spec.key} spec={spec} place={place} />
        ))}
        <button
          type="button"
          class="plain measure-remove"
          aria-label={`Remove ${name.toLowerCase()}`}
          onClick={() => removeRow(form.id, row.key)}
        >
          Remove
        </button>
      </fieldset>
      <p class="problem" id={idOf(place, 'row')} role="alert">
        {problem}
      </p>
    </li>
  );
};

export const Entries = (props: EntriesProps) => {
  const { form, draft } = props;
  const cells = cellsOf(form, draft);
  const last = undoable.value;
  return (
    <section class="card measure-entries" aria-label="Entries">
      <div class="measure-choices">
        {form.choices.map((spec) => (
          <CellChoice key={spec.key} spec={spec} place={props} />
        ))}
        {cells.map((spec) => (
          <CellField key={spec.key} spec={spec} place={props} />
        ))}
      </div>
      <ol class="measure-rows">
        {draft.rows.map((row, index) => (
          <RowFields key={`${form.id} ${row.key}`} number={index + 1} place={{ ...props, row }} />
        ))}
      </ol>
      <p class="measure-actions">
        <button
          type="button"
          disabled={draft.rows.length >= MOST_ROWS}
          onClick={() => focusRow(form, addRow(form.id))}
        >
          Add another {form.row}
        </button>
        <button type="button" class="plain" onClick={() => clearForm(form.id)}>
          Start again
        </button>
        {last?.form === form.id && (
          <button type="button" class="plain" onClick={undo}>
            Undo: put back what was removed
          </button>
        )}
      </p>
    </section>
  );
};
