/**
 * The forms of the measuring screen as data: what each row asks for, in which unit and within which limits.
 * Answers for: fields, choices, empty rows. Leaves out: what was typed (drafts.ts), what it gives (work.ts), guidance (src/text).
 */
import { feetToMetres, inchesToMetres } from '../../../sim/index.ts';
import type { Units } from '../../text/format.ts';
import {
  type Limits,
  type Parsed,
  parseLength,
  parseQuantity,
  parseShort,
  type Quantity,
} from '../../text/parse.ts';

export const FORM_IDS = ['greenSpeed', 'slope', 'pace', 'startLine', 'step'] as const;
export type FormId = (typeof FORM_IDS)[number];
export const isFormId = (text: string): text is FormId => (FORM_IDS as readonly string[]).includes(text);

/** A typed field. Lengths are in the person's units, long ones in ft or m, short ones in inches or cm. */
export interface CellSpec {
  readonly key: string;
  readonly label: string;
  readonly kind: 'long' | 'short' | 'quantity';
  readonly limits: Limits;
  readonly quantity?: Quantity;
  /** Empty takes the value of the row above; asked for by this name from the second row on. */
  readonly asAbove?: string;
  /** May be counted in the person's steps: "3 steps". */
  readonly steps?: boolean;
}

/** A choice of words. */
export interface ChoiceSpec {
  readonly key: string;
  readonly label: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

export interface FormSpec {
  readonly id: FormId;
  readonly name: string;
  /** "roll", as in "Add another roll". */
  readonly row: string;
  /** Of the whole form. */
  readonly choices: readonly ChoiceSpec[];
  readonly cells: readonly CellSpec[];
  readonly rowChoices: readonly ChoiceSpec[];
  readonly rowCells: readonly CellSpec[];
  /** Choices of the rows a form begins with. */
  readonly beginsWith: readonly Readonly<Record<string, string>>[];
}

const quantity = (key: string, label: string, spec: Quantity): CellSpec => ({
  key,
  label,
  kind: 'quantity',
  limits: spec,
  quantity: spec,
});

const WAY: ChoiceSpec = {
  key: 'way',
  label: 'Rolled',
  options: [
    { value: 'there', label: 'there' },
    { value: 'back', label: 'back' },
  ],
};
const DEGREES: Quantity = {
  what: 'an angle',
  unit: ['°', 'degrees'],
  example: '1.2 or -1.2',
  min: -20,
  max: 20,
};
const BALLS: Quantity = {
  what: 'a number of balls',
  unit: ['balls'],
  example: '10',
  min: 1,
  max: 500,
  step: 1,
};

const FORMS: readonly FormSpec[] = [
  {
    id: 'greenSpeed',
    name: 'Green speed',
    row: 'roll',
    choices: [
      {
        key: 'by',
        label: 'How',
        options: [
          { value: 'timed', label: 'timed rolls' },
          { value: 'ramp', label: 'off a ramp' },
        ],
      },
      {
        key: 'ground',
        label: 'Ground',
        options: [
          { value: 'grass', label: 'green' },
          { value: 'carpet', label: 'mat' },
        ],
      },
    ],
    cells: [
      {
        key: 'height',
        label: 'Height of the ramp',
        kind: 'short',
        limits: { min: 0.02, max: 1 },
      },
    ],
    rowChoices: [WAY],
    rowCells: [
      { key: 'distance', label: 'Mark to rest', kind: 'long', limits: { min: 0.2, max: 20 } },
      quantity('seconds', 'Time (s)', {
        what: 'a time',
        unit: ['s', 'seconds'],
        example: '3.2',
        min: 0.5,
        max: 15,
      }),
    ],
    beginsWith: [{ way: 'there' }, { way: 'back' }, { way: 'there' }, { way: 'back' }],
  },
  {
    id: 'slope',
    name: 'Slope',
    row: 'pair of readings',
    choices: [
      {
        key: 'directions',
        label: 'Along',
        options: [
          { value: 'one', label: 'one line' },
          { value: 'two', label: 'two, for the whole fall' },
        ],
      },
    ],
    cells: [],
    rowChoices: [
      {
        key: 'direction',
        label: 'Laid',
        options: [
          { value: 'forwards', label: 'forwards' },
          { value: 'left', label: 'left' },
        ],
      },
    ],
    rowCells: [quantity('facing', 'As laid (°)', DEGREES), quantity('turned', 'Turned (°)', DEGREES)],
    beginsWith: [{ direction: 'forwards' }, { direction: 'left' }],
  },
  {
    id: 'pace',
    name: 'Pace',
    row: 'ball',
    choices: [
      {
        key: 'sides',
        label: 'Write down',
        options: [
          { value: 'no', label: 'how far only' },
          { value: 'yes', label: 'left and right too' },
        ],
      },
    ],
    cells: [],
    rowChoices: [
      {
        key: 'reach',
        label: 'It stopped',
        options: [
          { value: 'past', label: 'past' },
          { value: 'short', label: 'short' },
        ],
      },
      {
        key: 'side',
        label: 'and',
        options: [
          { value: 'left', label: 'left' },
          { value: 'right', label: 'right' },
        ],
      },
    ],
    rowCells: [
      {
        key: 'target',
        label: 'Target at',
        kind: 'long',
        limits: { min: feetToMetres(3), max: feetToMetres(100) },
        asAbove: 'New target',
      },
      { key: 'off', label: 'Off by', kind: 'long', limits: { min: 0, max: feetToMetres(60) }, steps: true },
      { key: 'beside', label: 'Beside by', kind: 'short', limits: { min: 0, max: feetToMetres(10) } },
    ],
    beginsWith: Array.from({ length: 10 }, () => ({ reach: 'past', side: 'left' })),
  },
  {
    id: 'startLine',
    name: 'Start line',
    row: 'gate',
    choices: [],
    cells: [],
    rowChoices: [],
    rowCells: [
      {
        key: 'width',
        label: 'Gate width',
        kind: 'short',
        limits: { min: inchesToMetres(1.75), max: 0.6 },
      },
      { key: 'distance', label: 'Ball to gate', kind: 'short', limits: { min: 0.1, max: 5 } },
      quantity('tries', 'Balls', BALLS),
      quantity('passes', 'Clean passes', {
        ...BALLS,
        min: 0,
        what: 'a number of passes',
        unit: ['passes'],
        example: '7',
      }),
    ],
    beginsWith: [{}],
  },
  {
    id: 'step',
    name: 'Step',
    row: 'walk',
    choices: [],
    cells: [],
    rowChoices: [],
    rowCells: [
      { key: 'length', label: 'Known length', kind: 'long', limits: { min: 2, max: 200 } },
      quantity('steps', 'Steps', {
        what: 'a number of steps',
        unit: ['steps'],
        example: '20 or 20.5',
        min: 2,
        max: 400,
        step: 0.5,
      }),
    ],
    beginsWith: [{}, {}],
  },
];

export const formOf = (id: FormId): FormSpec => FORMS.find((form) => form.id === id) ?? FORMS[0];
export const FORM_NAMES = FORMS.map(({ id, name }) => ({ value: id, label: name }));

/** The label with its unit. */
export const labelOf = ({ label, kind, asAbove }: CellSpec, units: Units, first: boolean): string => {
  if (kind === 'quantity') return label;
  const [long, short] = units === 'imperial' ? ['ft', 'in'] : ['m', 'cm'];
  return `${first ? label : (asAbove ?? label)} (${kind === 'long' ? long : short})`;
};

const STEPS = /^(.*?)\s*steps?$/i;

/** @param step the person's own, m; undefined: not measured */
export const parseCell = (spec: CellSpec, text: string, units: Units, step?: number): Parsed => {
  if (spec.quantity) return parseQuantity(text, spec.quantity);
  if (spec.kind === 'short') return parseShort(text, units, spec.limits);
  const counted = spec.steps ? STEPS.exec(text.trim()) : null;
  if (counted === null) return parseLength(text, units, spec.limits);
  if (step === undefined)
    return {
      ok: false,
      problem: 'Got steps, but yours has no length yet. Measure it under “Step”, or type a length.',
    };
  const steps = parseQuantity(counted[1], {
    what: 'a number of steps',
    unit: [],
    example: '2 steps',
    min: 0,
    max: 60,
  });
  return steps.ok ? { ok: true, value: steps.value * step } : steps;
};
