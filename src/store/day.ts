/** Calendar days of the device. Records keep the day they were made on, so that it stays the same in any time zone. */

/** YYYY-MM-DD of a moment in this device's time zone. @param moment ms since 1970 */
export const localDay = (moment: number): string => {
  const date = new Date(moment);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
};

const DAY = 86_400_000;

/** So many days after a day; by the calendar, whatever clocks do. @param day YYYY-MM-DD */
export const addDays = (day: string, count: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + count * DAY).toISOString().slice(0, 10);

/** Days from one day to another, YYYY-MM-DD. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY);
