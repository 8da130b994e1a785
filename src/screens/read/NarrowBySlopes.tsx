/** A finished set of slopes narrows the family of the preset in hand, at a press; what that is and is not. */
import { Link } from 'wouter-preact';
import { slopesNamed } from '../../../sim/index.ts';
import { Narrowed } from '../../controls/Narrowed.tsx';
import { hasNarrowed, narrowBy, presetInUse } from '../../state/settings.ts';
import { answeredOf, type KeptSet } from '../../store/schema.ts';
import { NAMED_IS_NOT_PLAYED, narrowLabel } from '../../text/narrowed.ts';

export const NarrowBySlopes = ({ set }: { set: KeptSet }) => {
  const preset = presetInUse.value;
  const results = slopesNamed(answeredOf(set, 'slope'));
  if (preset === undefined || results.length === 0) return null;
  const sitting = { day: set.day, results };
  return (
    <div class="read-narrow">
      {hasNarrowed(sitting) ? (
        <>
          <Narrowed />
          <p>
            <Link href="/">What it makes of die or firm</Link>
          </p>
        </>
      ) : (
        <p>
          <button type="button" onClick={() => narrowBy(sitting)}>
            {narrowLabel(preset.name)}
          </button>
        </p>
      )}
      <p class="quiet">{NAMED_IS_NOT_PLAYED}</p>
    </div>
  );
};
