/** A plan's events for a calendar, and handing the file over. Leaves out: the format (calendar.ts), the words (screens/week/words.ts). */
import { saveFile } from '../../controls/saveFile.ts';
import { testedIn } from '../../state/plans/plan.ts';
import type { Plan } from '../../store/planSchema.ts';
import type { CalendarEvent } from './calendar.ts';
import { againLines, againTitle, calendarLines, calendarTitle } from './words.ts';

export const eventsOf = (plan: Plan): CalendarEvent[] => {
  const tested = testedIn(plan);
  return [
    ...plan.sessions.map((session) => ({
      uid: `${plan.id}-${session.id}`,
      day: session.day,
      summary: calendarTitle(session),
      description: calendarLines(session, plan),
    })),
    ...(plan.test && tested
      ? [
          {
            uid: `${plan.id}-test-again`,
            day: plan.test.againOn,
            summary: againTitle(tested.item),
            description: againLines(tested.item),
          },
        ]
      : []),
  ];
};

/** Loaded when first asked for: few pages need it. */
export const saveCalendar = async (plan: Plan): Promise<void> => {
  const { calendarFile } = await import('./calendar.ts');
  const text = calendarFile(eventsOf(plan), { made: Date.now(), revision: plan.revision });
  saveFile(`borrow-week-${plan.start}.ics`, new Blob([text], { type: 'text/calendar;charset=utf-8' }));
};
