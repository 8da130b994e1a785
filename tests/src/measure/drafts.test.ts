/** Drafts of the measuring forms: texts stay as typed, and what storage holds is another program's until checked. */
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import {
  addRow,
  choose,
  clearForm,
  emptyDraft,
  MOST_ROWS,
  parseState,
  removeRow,
  state,
  typeCell,
  undo,
  undoable,
} from '../../../src/screens/measure/drafts.ts';
import { FORM_IDS } from '../../../src/screens/measure/forms.ts';

const fresh = parseState(null);
beforeEach(() => {
  state.value = fresh;
  undoable.value = undefined;
});
const texts = (id: (typeof FORM_IDS)[number], key: string): (string | undefined)[] =>
  state.value.drafts[id].rows.map(({ cells }) => cells[key]?.text);

describe('stored drafts', () => {
  it('come back as they were typed, good and bad texts alike', () => {
    typeCell('greenSpeed', 1, 'seconds', { text: 'three and a bit', units: 'metric' });
    typeCell('greenSpeed', undefined, 'height', { text: '9.4', units: 'imperial' });
    choose('greenSpeed', undefined, 'by', 'ramp');
    choose('greenSpeed', 0, 'way', 'back');
    expect(parseState(JSON.stringify(state.value))).toEqual(state.value);
  });

  it.each([
    null,
    '',
    '{',
    '[]',
    '7',
    '{"form":"cheese","drafts":3}',
    '{"drafts":{"slope":{"rows":"many"},"pace":{"rows":[null,3]}}}',
  ])('that say %s begin empty, or with the rows that can be read', (text) => {
    const found = parseState(text);
    expect(found.form).toBe('greenSpeed');
    expect(found.drafts.slope).toEqual(emptyDraft('slope'));
  });

  it('never let through a choice, a text or a number of rows that we would not have written', () => {
    fc.assert(
      fc.property(fc.json(), fc.constantFrom(...FORM_IDS), (json, id) => {
        const any: unknown = JSON.parse(json);
        const found = parseState(
          JSON.stringify({
            form: id,
            drafts: { [id]: { rows: [any, { cells: any, choices: any }], cells: any } },
          }),
        );
        const { rows, choices } = found.drafts[id];
        expect(rows.length).toBeLessThanOrEqual(MOST_ROWS);
        expect(Object.keys(choices)).toEqual(Object.keys(emptyDraft(id).choices));
        for (const { cells } of rows)
          for (const { text, units } of Object.values(cells)) {
            expect(text).toBeTypeOf('string');
            expect(units).toMatch(/^(imperial|metric)$/);
          }
      }),
      { seed: 60, numRuns: 200 },
    );
    const wild = { rows: [{ choices: { way: '<b>' }, cells: { distance: { text: 'x'.repeat(900) } } }] };
    const { rows } = parseState(JSON.stringify({ drafts: { greenSpeed: wild } })).drafts.greenSpeed;
    expect(rows).toEqual([{ key: 0, cells: {}, choices: { way: 'there' } }]);
  });
});

describe('rows', () => {
  it('are added with the ways going on in turn, up to a limit', () => {
    addRow('greenSpeed');
    addRow('greenSpeed');
    expect(state.value.drafts.greenSpeed.rows.map(({ choices }) => choices.way)).toEqual([
      'there',
      'back',
      'there',
      'back',
      'there',
      'back',
    ]);
    for (let i = 0; i < 2 * MOST_ROWS; i++) addRow('greenSpeed');
    const { rows } = state.value.drafts.greenSpeed;
    expect(rows).toHaveLength(MOST_ROWS);
    expect(new Set(rows.map(({ key }) => key)).size).toBe(MOST_ROWS);
  });

  it('that are removed, one or all, come back by undo', () => {
    typeCell('step', 0, 'steps', { text: '20', units: 'imperial' });
    typeCell('step', 1, 'steps', { text: 'x', units: 'imperial' });
    removeRow('step', 0);
    expect(texts('step', 'steps')).toEqual(['x']);
    undo();
    expect(texts('step', 'steps')).toEqual(['20', 'x']);
    clearForm('step');
    expect(texts('step', 'steps')).toEqual([undefined, undefined]);
    undo();
    expect(texts('step', 'steps')).toEqual(['20', 'x']);
    // Nothing more to undo: nothing happens.
    undo();
    expect(texts('step', 'steps')).toEqual(['20', 'x']);
  });

  it('can all be removed and one added again', () => {
    removeRow('startLine', 0);
    expect(state.value.drafts.startLine.rows).toEqual([]);
    addRow('startLine');
    expect(state.value.drafts.startLine.rows).toHaveLength(1);
  });
});
