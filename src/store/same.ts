/** Whether two records say the same, whatever the order of their fields; a field that holds undefined counts as missing. */

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

const filled = (value: Record<string, unknown>): string[] =>
  Object.keys(value).filter((key) => value[key] !== undefined);

export const same = (one: unknown, two: unknown): boolean => {
  if (one === two) return true;
  if (!isObject(one) || !isObject(two) || Array.isArray(one) !== Array.isArray(two)) return false;
  const keys = filled(one);
  return (
    keys.length === filled(two).length &&
    keys.every((key) => Object.hasOwn(two, key) && same(one[key], two[key]))
  );
};
