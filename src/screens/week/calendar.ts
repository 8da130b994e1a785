/**
 * A plan as a calendar file: iCalendar, RFC 5545, one all-day event for each session and one for the test's repetition. The only place
 * that imports ical.js, which escapes, folds and ends lines. Leaves out: words (screens/week/words.ts), saving (controls/saveFile.ts).
 * All-day events have neither time nor zone: they are on that day wherever the calendar is.
 */
import ICAL from 'ical.js';

/** Octets of a line (RFC 5545, 3.1: 75), less the space before a folded one, which ical.js does not count. */
ICAL.foldLength = 74;

export interface CalendarEvent {
  /** Stays the same for the same event of the same plan. */
  readonly uid: string;
  /** YYYY-MM-DD */
  readonly day: string;
  readonly summary: string;
  /** Line by line. */
  readonly description: readonly string[];
}

export interface CalendarOptions {
  /** When the file is made, ms since 1970. */
  readonly made: number;
  /** Goes up with every change of the plan: calendars then take the newer event of the same name. */
  readonly revision: number;
}

/** Characters that no line of text may hold (RFC 5545, 3.3.11): control characters but for the tab. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const CONTROLS = /[\u0000-\u0008\u000b-\u001f\u007f]/g;

const eventOf = (
  { uid, day, summary, description }: CalendarEvent,
  { made, revision }: CalendarOptions,
): ICAL.Component => {
  const event = new ICAL.Component('vevent');
  const set = (name: string, value: unknown): void => {
    event.addPropertyWithValue(name, value as string);
  };
  set('uid', uid);
  set('dtstamp', ICAL.Time.fromJSDate(new Date(made), true));
  set('sequence', revision);
  set('dtstart', ICAL.Time.fromDateString(day));
  set('summary', summary.replace(CONTROLS, ' '));
  set('description', description.map((line) => line.replace(CONTROLS, ' ')).join('\n'));
  set('transp', 'TRANSPARENT');
  return event;
};

/** The file's text. */
export function calendarFile(events: readonly CalendarEvent[], options: CalendarOptions): string {
  const calendar = new ICAL.Component('vcalendar');
  calendar.addPropertyWithValue('version', '2.0');
  calendar.addPropertyWithValue('prodid', '-//Borrow//The week//EN');
  for (const event of events) calendar.addSubcomponent(eventOf(event, options));
  return `${calendar.toString()}\r\n`;
}
