/** Calendar days of the device. Records keep the day they were made on, so that it stays the same in any time zone. */

/** YYYY-MM-DD of a moment in this device's time zone. @param moment ms since 1970 */
export const localDay = (moment: number): string => {
  const date = new Date(moment);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
};
