/** The questions about one putt, one at a time: the putt before the stroke, where it went, what was left. */
import type { ComponentChildren } from 'preact';
import type { MissReach, MissSide } from '../../../sim/index.ts';
import type { Hand } from '../../state/settings.ts';
import type { BREAK_WAYS, CLIMBS } from '../../store/recordSchema.ts';
import type { Units } from '../../text/format.ts';
import { BREAK_WORDS, CLIMB_WORDS, formatTapped, missWords, placeOfPutt } from '../../text/record.ts';
import { Bar } from './Bar.tsx';
import { MIDDLE_DISTANCE, MIDDLE_LEAVE, usualDistances, usualLeaves } from './distances.ts';
import type { PuttDraft, Tap } from './draft.ts';
import { BreakDrawing, ClimbDrawing, WayDrawing } from './drawings.tsx';
import { LengthPad } from './LengthPad.tsx';
import { MorePad } from './MorePad.tsx';
import { Picks } from './Picks.tsx';

export interface PadProps {
  readonly draft: PuttDraft;
  readonly units: Units;
  readonly hand: Hand;
  readonly onTap: (tap: Tap) => void;
  /** One question back, or the last saved putt. */
  readonly undo: ComponentChildren;
}

/** Level lies between the other two, as the ground does. */
const CLIMB_ORDER = ['up', 'level', 'down'] as const satisfies readonly (typeof CLIMBS)[number][];
const BREAK_ORDER = [
  'leftToRight',
  'straight',
  'rightToLeft',
] as const satisfies readonly (typeof BREAK_WAYS)[number][];

export const BeforePad = ({ draft, units, hand, onTap, undo }: PadProps) => (
  <>
    <LengthPad
      legend="How far is it?"
      value={draft.distance}
      usual={usualDistances(units)}
      middle={MIDDLE_DISTANCE[units]}
      units={units}
      hand={hand}
      onLength={(metres, fine) => onTap({ kind: 'distance', metres, fine })}
    />
    <Picks
      legend="Up or down?"
      picks={CLIMB_ORDER.map((value) => ({
        value,
        label: CLIMB_WORDS[value],
        drawing: <ClimbDrawing climb={value} />,
      }))}
      isChosen={(value) => draft.climb === value}
      onPick={(climb) => onTap({ kind: 'climb', climb })}
    />
    <Picks
      legend="Which way does it break?"
      picks={BREAK_ORDER.map((value) => ({
        value,
        label: BREAK_WORDS[value],
        drawing: <BreakDrawing breaks={value} />,
      }))}
      isChosen={(value) => draft.breaks === value}
      onPick={(breaks) => onTap({ kind: 'breaks', breaks })}
    />
    <Bar
      hand={hand}
      other={undo}
      main={
        <button
          type="button"
          class="main"
          disabled={draft.distance === undefined}
          onClick={() => onTap({ kind: 'goOn' })}
        >
          {draft.distance === undefined || (draft.climb && draft.breaks) ? 'Go on' : 'Leave out the rest'}
        </button>
      }
    />
  </>
);

const REACHES = ['past', 'short'] as const;

/** The sides in the order in which they lie as the player looks; none where it is not known how the putt breaks. */
const sidesOf = ({ breaks }: PuttDraft): readonly MissSide[] => {
  if (breaks === undefined) return [];
  if (breaks === 'straight') return ['left', 'online', 'right'];
  return breaks === 'leftToRight' ? ['high', 'online', 'low'] : ['low', 'online', 'high'];
};

export const ResultPad = ({ draft, units, hand, onTap, undo }: PadProps) => {
  const sides: readonly (MissSide | undefined)[] = draft.breaks ? sidesOf(draft) : [undefined];
  const place = (side: MissSide | undefined, reach: MissReach) => (
    <button
      key={`${side}-${reach}`}
      type="button"
      class={`rec-place rec-place-${reach}`}
      data-miss={[side, reach].filter(Boolean).join('-')}
      aria-label={`Missed ${missWords(side, reach)}`}
      aria-pressed={draft.result === 'missed' && draft.side === side && draft.reach === reach}
      onClick={() => onTap({ kind: 'missed', side, reach })}
    >
      {missWords(side, reach)}
    </button>
  );
  return (
    <>
      <p class="rec-asked">
        {draft.distance !== undefined &&
          placeOfPutt({ ...draft, distance: draft.distance, kind: 'putt', holed: false }, units)}
        {draft.offGreen && ', from off the green'}
      </p>
      <MorePad more={draft} onMore={(more) => onTap({ kind: 'more', more })} />
      {draft.breaks && (
        <p class="hint rec-side">
          {draft.breaks === 'straight' ? 'Left or right' : 'High or low'}: the side on which it passed the
          hole, or would have.
        </p>
      )}
      {/* biome-ignore lint/a11y/useSemanticElements: a picture of places, not form fields */}
      <div
        class="rec-way"
        role="group"
        aria-label="If it missed: on which side did it pass the hole, and was it short or past?"
        style={`--sides: ${sides.length}`}
      >
        <WayDrawing breaks={draft.breaks} />
        <span class="rec-hole" />
        {draft.breaks && <span class="rec-ball" />}
        {REACHES.map((reach) => sides.map((side) => place(side, reach)))}
      </div>
      <Bar
        hand={hand}
        other={undo}
        main={
          <button type="button" class="main" onClick={() => onTap({ kind: 'holed' })}>
            {draft.handedOn === undefined ? 'Holed' : 'Holed the next'}
          </button>
        }
      />
    </>
  );
};

export const LeavePad = ({ draft, units, hand, onTap, undo }: PadProps) => (
  <>
    <p class="rec-asked">Missed {missWords(draft.side, draft.reach)}</p>
    <LengthPad
      legend="How much is left?"
      value={draft.leave}
      usual={usualLeaves(units)}
      middle={MIDDLE_LEAVE[units]}
      units={units}
      hand={hand}
      onLength={(metres, fine) => onTap({ kind: 'leave', metres, fine })}
    />
    <Bar
      hand={hand}
      other={undo}
      main={
        <button
          type="button"
          class="main"
          disabled={draft.leave === undefined}
          onClick={() => draft.leave !== undefined && onTap({ kind: 'leave', metres: draft.leave })}
        >
          {draft.leave === undefined ? 'That much' : `${formatTapped(draft.leave, units)} left`}
        </button>
      }
    />
  </>
);
