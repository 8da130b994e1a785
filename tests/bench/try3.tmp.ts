import { fitErrors, Grounds, ERRORS, presetOf } from '../../sim/index.ts';
import { recordRounds, ORDINARY } from '../support/recordingPlayer.ts';
const base = presetOf('handicap-6')!.player;
const grounds = new Grounds();
const [,, rb, said, n, count, extra] = process.argv;
const h = extra ? JSON.parse(extra) : {};
for (let i=0;i<Number(count);i++) {
  const rec = recordRounds({ player: { ...base, readBias: Number(rb) }, ...(h.golfer??{}) }, { says: {...ORDINARY, ...(h.says??{})}, saidAsSeen: Number(said), ...h.habits }, 't'+i, Number(n));
  const fit = fitErrors(rec, { grounds, taps: [] });
  if (fit.status==='ok') console.log(rb, said, extra??'', ERRORS.map(e=>`${fit.player[e].toFixed(4)} (${fit.errors[e].range90.low.toFixed(4)} ${fit.errors[e].range90.high.toFixed(4)})`).join('; '), 'worth', fit.worth.toFixed(0), 'tails', fit.tails.median.toFixed(0));
}
