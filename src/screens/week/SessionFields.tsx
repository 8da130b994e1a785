/** Day, minutes and ground of one session. Leaves out: what follows from a change. */
import { Choice } from '../../controls/Choice.tsx';
import type { AskedSession } from '../../state/plans/plan.ts';
import { formatWeekday } from '../../text/format.ts';
import { MINUTES } from './making.ts';

export interface SessionFieldsProps {
  /** Unique on the page. */
  readonly id: string;
  /** Of what: "Session 1". */
  readonly name: string;
  readonly session: AskedSession;
  /** To choose from. */
  readonly days: readonly string[];
  /** Only the day may change. */
  readonly fixed?: boolean;
  readonly onChange: (change: Partial<AskedSession>) => void;
}

export const SessionFields = ({ id, name, session, days, fixed, onChange }: SessionFieldsProps) => {
  const minutes = [...new Set<number>([...MINUTES, session.minutes])].sort((a, b) => a - b);
  const choices = [...new Set([...days, session.day])].sort();
  return (
    <div class="week-fields">
      <div class="field">
        <label for={`${id}-day`}>
          <span class="unseen">{name}, </span>day
        </label>
        <select
          id={`${id}-day`}
          value={session.day}
          onChange={(event) => onChange({ day: event.currentTarget.value })}
        >
          {choices.map((day) => (
            <option key={day} value={day}>
              {formatWeekday(day)}
            </option>
          ))}
        </select>
      </div>
      {!fixed && (
        <>
          <div class="field">
            <label for={`${id}-minutes`}>
              <span class="unseen">{name}, </span>minutes
            </label>
            <select
              id={`${id}-minutes`}
              value={session.minutes}
              onChange={(event) => onChange({ minutes: Number(event.currentTarget.value) })}
            >
              {minutes.map((count) => (
                <option key={count} value={count}>
                  {count}
                </option>
              ))}
            </select>
          </div>
          <Choice
            legend={`${name}, ground`}
            name={`${id}-ground`}
            value={session.ground}
            options={[
              { value: 'grass', label: 'grass' },
              { value: 'carpet', label: 'carpet' },
            ]}
            onChange={(ground) => onChange({ ground })}
          />
        </>
      )}
    </div>
  );
};
