/** What the speed of the carpet rests on, and the way back to what was measured. Beside the field or slider that sets it. */

import { carpetBasis, takeMeasuredCarpet } from '../state/carpet.ts';
import { formatDay, formatGreenSpeed } from '../text/format.ts';

/** In a sentence. */
export const carpetHint = (): string => {
  const basis = carpetBasis.value;
  if (basis.kind === 'measured') return `Measured on ${formatDay(basis.day)}.`;
  if (basis.kind === 'typed')
    return basis.measured === undefined
      ? 'As you set it.'
      : `As you set it. On ${formatDay(basis.measured.day)} you measured ${formatGreenSpeed(basis.measured.speed)}.`;
  return 'Not measured yet: 11 ft is common practice, no source. Measure finds it with a few timed rolls.';
};

export const TakeMeasured = () => {
  const basis = carpetBasis.value;
  if (basis.kind !== 'typed' || basis.measured === undefined) return null;
  return (
    <p>
      <button type="button" class="plain" onClick={takeMeasuredCarpet}>
        Take what was measured
      </button>
    </p>
  );
};
