/**
 * The calendar file against RFC 5545, rule by rule and read off the bytes: 3.1 (lines end in CRLF, at most 75 octets, folded with one
 * space), 3.3.11 (backslash, semicolon, comma and newline escaped), 3.6 (VERSION and PRODID), 3.6.1 (UID and DTSTAMP once each event),
 * 3.3.4 (DATE). Then parsed back by ical.js.
 */
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarFile } from '../../../src/screens/week/calendar.ts';
import { eventsOf } from '../../../src/screens/week/takeAway.ts';
import { moveSession, testedIn } from '../../../src/state/plans/plan.ts';
import { samplePlan } from '../../support/weekPlan.ts';

const MADE = Date.UTC(2026, 10, 26, 18, 5, 9);
const NASTY = `Left, right; up\\down <b>&amp;</b> "quoted" ${'Länge über 30 Fuß – ⛳ '.repeat(12)}`;
const events = [
  {
    uid: 'a-1',
    day: '2026-11-28',
    summary: NASTY,
    description: ['first, line', 'second; line', 'END:VEVENT'],
  },
  { uid: 'a-2', day: '2027-01-01', summary: 'plain', description: [] },
];
const file = calendarFile(events, { made: MADE, revision: 3 });
const octets = (text: string): number => new TextEncoder().encode(text).length;
/** 3.1: a CRLF and one space are taken out. */
const unfolded = (text: string): string[] => text.replace(/\r\n[ \t]/g, '').split('\r\n');

describe('the calendar file', () => {
  it('ends every line in CRLF, the last one too, and has no other line ends', () => {
    expect(file.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(file.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
  });

  it('has no line longer than 75 octets, and folds between characters, never within one', () => {
    const lines = file.split('\r\n');
    for (const line of lines) expect(octets(line)).toBeLessThanOrEqual(75);
    expect(lines.filter((line) => line.startsWith(' ')).length).toBeGreaterThan(3);
    expect(file).not.toContain('\ufffd');
    for (const line of lines) expect(line.isWellFormed()).toBe(true);
  });

  it('escapes backslashes, semicolons, commas and newlines, and leaves markup and colons as they are', () => {
    const lines = unfolded(file);
    expect(lines.find((line) => line.startsWith('SUMMARY:Left'))).toMatch(
      /^SUMMARY:Left\\, right\\; up\\\\down <b>&amp\\;<\/b> "quoted" /,
    );
    expect(lines).toContain('DESCRIPTION:first\\, line\\nsecond\\; line\\nEND:VEVENT');
  });

  it('says who made it by which version, and each event’s name, stamp, revision and day', () => {
    const lines = unfolded(file);
    expect(lines.slice(0, 3)).toEqual(['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Borrow//The week//EN']);
    for (const [line, count] of [
      ['BEGIN:VEVENT', 2],
      ['END:VEVENT', 2],
      ['UID:a-1', 1],
      ['UID:a-2', 1],
      ['DTSTAMP:20261126T180509Z', 2],
      ['SEQUENCE:3', 2],
      ['DTSTART;VALUE=DATE:20261128', 1],
      ['DTSTART;VALUE=DATE:20270101', 1],
    ] as const)
      expect(lines.filter((one) => one === line).length, line).toBe(count);
    // Neither zone nor time of day: the day is that day anywhere.
    expect(file).not.toMatch(/TZID|VTIMEZONE/);
  });

  it('drops control characters that no text may hold', () => {
    const odd = calendarFile([{ ...events[0], summary: 'a\u0000b\u0007c\rd', description: ['e\u001bf'] }], {
      made: MADE,
      revision: 0,
    });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
    expect(odd.replace(/\r\n/g, '')).not.toMatch(/[\u0000-\u001f]/);
    expect(unfolded(odd)).toContain('SUMMARY:a b c d');
  });

  it('comes back from a reader as it went in', () => {
    const read = new ICAL.Component(ICAL.parse(file))
      .getAllSubcomponents('vevent')
      .map((event) => new ICAL.Event(event));
    expect(read.map(({ uid, summary, description }) => ({ uid, summary, description }))).toEqual(
      events.map(({ uid, summary, description }) => ({ uid, summary, description: description.join('\n') })),
    );
    expect(read.map(({ startDate }) => [startDate.toString(), startDate.isDate])).toEqual([
      ['2026-11-28', true],
      ['2027-01-01', true],
    ]);
  });

  it('has an event for each session and one for the repetition, whose names stay when a session moves', () => {
    const plan = samplePlan();
    const before = eventsOf(plan);
    expect(before.map(({ day }) => day)).toEqual(['2026-11-26', '2026-11-29', plan.test?.againOn]);
    expect(new Set(before.map(({ uid }) => uid)).size).toBe(3);
    const session = plan.sessions[1];
    const after = eventsOf(moveSession(plan, session.id, '2026-12-02'));
    expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
    expect(after[1].day).toBe('2026-12-02');
    expect(after[2].summary).toContain('test again');
    expect(testedIn(plan)?.item.kind).toBe('drill');
  });
});
