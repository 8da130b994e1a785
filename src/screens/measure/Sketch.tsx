/** How each measurement is set up, drawn as the map is: ink lines, hachures downhill, a tape below. */
import type { ComponentChildren } from 'preact';
import type { FormId } from './forms.ts';

const Drawing = ({ name, children }: { name: string; children: ComponentChildren }) => (
  <svg class="measure-sketch" viewBox="0 0 320 92" role="img" aria-label={name}>
    {children}
  </svg>
);

/** A length between two uprights, with its word. */
const Tape = ({ from, to, y, word }: { from: number; to: number; y: number; word: string }) => (
  <>
    <path class="measure-thin" d={`M${from} ${y - 4}v8M${to} ${y - 4}v8M${from} ${y}H${to}`} />
    <text x={(from + to) / 2} y={y + 13} text-anchor="middle">
      {word}
    </text>
  </>
);
const Ball = ({ x, y, ghost = false }: { x: number; y: number; ghost?: boolean }) => (
  <circle class={ghost ? 'measure-ghost' : 'measure-ball'} cx={x} cy={y} r="5" />
);

const TimedRoll = () => (
  <Drawing name="A ball rolls past a mark and on to rest; the stretch from mark to rest is measured and timed.">
    <Ball x={20} y={36} ghost />
    <path class="measure-roll" d="M28 36H292" />
    <Ball x={300} y={36} />
    <path class="measure-ink" d="M130 22v28" />
    <text x="130" y="14" text-anchor="middle">
      mark: start the watch
    </text>
    <text x="314" y="14" text-anchor="end">
      rest: stop it
    </text>
    <Tape from={130} to={300} y={66} word="measure this" />
  </Drawing>
);

const RampRoll = () => (
  <Drawing name="A ball rolls down a flat board and along the ground to rest; height of the ramp and distance are measured.">
    <path class="measure-ink" d="M20 20L84 54Q92 58 104 58H312" />
    <Ball x={26} y={16} />
    <path class="measure-roll" d="M112 52H292" />
    <Ball x={300} y={53} />
    <path class="measure-thin" d="M10 16v42M6 16h8M6 58h8" />
    <text x="20" y="52">
      height
    </text>
    <Tape from={104} to={300} y={72} word="measure this" />
  </Drawing>
);

const Level = ({ both }: { both: boolean }) => (
  <Drawing
    name={
      both
        ? 'A board seen from above along two directions at right angles, a telephone on it.'
        : 'A telephone on a board on sloping ground, read, turned end for end, read again.'
    }
  >
    {both ? (
      <>
        <rect class="measure-ink" x="150" y="8" width="20" height="66" />
        <rect class="measure-fill" x="154" y="22" width="12" height="26" />
        <rect class="measure-dash" x="74" y="54" width="66" height="20" />
        <path class="measure-thin" d="M140 12Q104 16 98 44M94 37l4 8l6-6" />
        <text x="178" y="20">
          forwards
        </text>
        <text x="70" y="68" text-anchor="end">
          to the left
        </text>
      </>
    ) : (
      <>
        <path class="measure-ink" d="M10 66L150 52M170 66L310 52" />
        <path class="measure-ink" d="M24 59L136 48M184 59L296 48" />
        <path class="measure-thin" d="M30 68l3 9M52 66l3 9M74 64l3 9M96 62l3 9M118 60l3 9" />
        <path class="measure-thin" d="M190 68l3 9M212 66l3 9M234 64l3 9M256 62l3 9M278 60l3 9" />
        <path class="measure-phone" d="M58 52L104 47.5M218 52L264 47.5" />
        <text x="80" y="32" text-anchor="middle">
          top →
        </text>
        <text x="240" y="32" text-anchor="middle">
          ← top
        </text>
      </>
    )}
  </Drawing>
);

const Pace = () => (
  <Drawing name="Balls have stopped past and short of a target; each distance along the line is measured.">
    <path class="measure-roll" d="M28 40H214" />
    <Ball x={20} y={40} ghost />
    <path class="measure-ink" d="M230 24v32" />
    <text x="230" y="16" text-anchor="middle">
      target
    </text>
    <Ball x={206} y={34} />
    <Ball x={247} y={46} />
    <Ball x={266} y={36} />
    <Ball x={218} y={49} />
    <Tape from={230} to={266} y={68} word="past" />
    <path class="measure-thin" d="M206 64v8M206 68H230" />
    <text x="216" y="81" text-anchor="middle">
      short
    </text>
  </Drawing>
);

const GateSketch = () => (
  <Drawing name="A gate of two tees ahead of the ball, as wide as is measured between their inner sides.">
    <Ball x={30} y={42} />
    <path class="measure-roll" d="M40 42H300" />
    <circle class="measure-fill" cx="196" cy="26" r="3" />
    <circle class="measure-fill" cx="196" cy="58" r="3" />
    <path class="measure-thin" d="M210 29h8M210 55h8M214 29V55" />
    <text x="224" y="34">
      width
    </text>
    <Tape from={30} to={196} y={72} word="ball to gate" />
  </Drawing>
);

const Steps = () => (
  <Drawing name="A known length walked in steps.">
    {[28, 72, 116, 160, 204, 248, 292].map((x, i) => (
      <ellipse key={x} class="measure-ghost" cx={x} cy={i % 2 ? 30 : 44} rx="10" ry="4" />
    ))}
    <Tape from={28} to={292} y={64} word="known length" />
  </Drawing>
);

export const Sketch = ({ form, choices }: { form: FormId; choices: Readonly<Record<string, string>> }) => {
  switch (form) {
    case 'slope':
      return <Level both={choices.directions === 'two'} />;
    case 'pace':
      return <Pace />;
    case 'startLine':
      return <GateSketch />;
    case 'step':
      return <Steps />;
    default:
      return choices.by === 'ramp' ? <RampRoll /> : <TimedRoll />;
  }
};
