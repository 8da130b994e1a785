/** Die or firm in words. A thousandth of a putt is as fine as the engine's comparison; more digits would only look exact. */
import type { PaceChoice, PaceSummary, PuttsByPace } from '../../../sim/index.ts';

/** Less than this is a coin's toss, putts: one putt in two hundred. */
const NEARLY_ALIKE = 0.005;

/** "0.023 putts". */
export const formatCost = (putts: number): string => `${putts.toFixed(3)} putts`;

export const paceMargin = (pace: PaceChoice, putts: PuttsByPace): string => {
  const margin = putts[pace] - putts[pace === 'die' ? 'firm' : 'die'];
  const size = Math.abs(margin).toFixed(3);
  return Number(size) === 0 ? '0' : `${margin > 0 ? '+' : '−'}${size}`;
};

const better = ({ die, firm }: PuttsByPace): PaceChoice => (die <= firm ? 'die' : 'firm');

export const paceHeadline = (chosen: PaceChoice, putts: PuttsByPace): string => {
  const margin = Math.abs(putts.die - putts.firm);
  if (margin < NEARLY_ALIKE) return 'Nearly alike: either will do';
  if (chosen === better(putts)) return `Yes, ${chosen}: it saves ${formatCost(margin)}`;
  return `${better(putts) === 'die' ? 'Die' : 'Firm'} is better: ${chosen} costs ${formatCost(margin)}`;
};

export const paceSentence = (putts: PuttsByPace): string =>
  `With your errors it takes ${putts.die.toFixed(3)} putts to die it in and ${putts.firm.toFixed(3)} to hit it firm.`;

/** The answer, then what the same pace everywhere and a coin would have cost. */
export const paceSummaryHeadline = ({ cost, count }: PaceSummary): string =>
  `Your choices gave away ${formatCost(cost.value)} a putt, over ${count} ${count === 1 ? 'putt' : 'putts'}.`;

export const paceSummarySentence = ({
  cost,
  alwaysDie,
  alwaysFirm,
  coin,
  better: right,
  count,
}: PaceSummary): string =>
  `${Number.isFinite(cost.low) ? `95% interval ${Math.max(0, cost.low).toFixed(3)} to ${cost.high.toFixed(3)}` : 'No margin yet'}. Die everywhere would have given away ${alwaysDie.toFixed(3)}, firm everywhere ${alwaysFirm.toFixed(3)}, a tossed coin ${coin.toFixed(3)}. Your pace was the better one ${right} of ${count} times.`;
