/** How long a fit of a player takes: once, ground and all, as a visit's first one does; and again on grounds that are known. */
import { firstLook, fitErrors, Grounds, presetOf } from '../../sim/index.ts';
import { ORDINARY, recordRounds } from '../support/recordingPlayer.ts';
import { milliseconds } from './timing.ts';

const NUMBERS = [120, 1000];

export function fitRows(): { what: string; time: string }[] {
  const preset = presetOf('handicap-6');
  if (preset === undefined) throw new Error('Got no preset handicap-6; expected it in player/presets.ts.');
  return NUMBERS.flatMap((number) => {
    const record = recordRounds({ player: preset.player }, { says: ORDINARY }, 'bench', number);
    const part = firstLook(record);
    const looks = [
      ...(part ? [{ what: `first look at ${number} putts`, record: part }] : []),
      { what: `fit of ${number} putts`, record },
    ];
    return looks.flatMap(({ what, record: one }) => {
      const grounds = new Grounds();
      return ['grounds made', 'grounds known'].map((state) => {
        const before = performance.now();
        fitErrors(one, { grounds, taps: [] });
        return { what: `${what}, ${state}`, time: milliseconds(performance.now() - before) };
      });
    });
  });
}
