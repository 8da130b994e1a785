/** A typed aim: a distance beside the hole centre, with or without its side. SI inside; sentences for bad input. */
import { inchesToMetres, metresToInches } from '../../../sim/index.ts';
import { sideOf, type Units } from '../../text/format.ts';

/** No aim is further off, m. */
export const WIDEST_AIM = 10;

const PATTERN = /^(\d+(?:[.,]\d*)?|[.,]\d+)\s*(in|inch|inches|"|″|cm)?\s*(l|left|r|right)?$/i;

export type ParsedAim =
  | { readonly ok: true; readonly size: number; readonly side: 'left' | 'right' | undefined }
  | { readonly ok: false; readonly problem: string };

/** "12", "12.5 in", "30 cm left", "4 r". @returns size in metres, 0 or more, and the side if it was typed */
export const parseAim = (text: string, units: Units): ParsedAim => {
  const found = PATTERN.exec(text.trim());
  if (found !== null) {
    const value = Number(found[1].replace(',', '.'));
    const centimetres = found[2] === undefined ? units === 'metric' : found[2].toLowerCase() === 'cm';
    const size = centimetres ? value / 100 : inchesToMetres(value);
    const side =
      found[3] === undefined ? undefined : found[3].toLowerCase().startsWith('l') ? 'left' : 'right';
    if (size <= WIDEST_AIM) return { ok: true, size, side };
  }
  const got = text.trim() === '' ? 'nothing' : `“${text.trim().slice(0, 24)}”`;
  const unit = units === 'imperial' ? 'inches, such as 12 or 12 left' : 'centimetres, such as 30 or 30 left';
  return {
    ok: false,
    problem: `Got ${got}, expected a distance beside the hole centre of at most ${units === 'imperial' ? '393 in' : '1000 cm'}. Type ${unit}.`,
  };
};

/** The size of an aim as the field shows it: a quarter inch or a half centimetre is as fine as anyone aims. */
export const aimFieldText = (aim: number, units: Units): string => {
  const value = units === 'imperial' ? metresToInches(Math.abs(aim)) : Math.abs(aim) * 100;
  return String(Number(value.toFixed(units === 'imperial' ? 2 : 1)));
};

/** The person's own aim as it was set, with its side: "7.75 in left". @param aim m, positive left */
export const ownAimText = (aim: number, units: Units): string => {
  const size = `${aimFieldText(aim, units)} ${units === 'imperial' ? 'in' : 'cm'}`;
  return Number.parseFloat(size) === 0 ? size : `${size} ${sideOf(aim)}`;
};

/** The nearest aim of the finest step: a hand on the map sets no hundredths. */
export const roundAim = (aim: number, units: Units): number => {
  const { fine } = aimSteps(units);
  return Math.round(aim / fine) * fine;
};

/** Steps of the aim by keys, m: plain, with Shift, by page. Round numbers of the person's own units. */
export const aimSteps = (
  units: Units,
): { readonly step: number; readonly fine: number; readonly page: number } =>
  units === 'imperial'
    ? { step: inchesToMetres(1), fine: inchesToMetres(0.25), page: inchesToMetres(6) }
    : { step: 0.02, fine: 0.005, page: 0.15 };
