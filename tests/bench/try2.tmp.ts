import { fitErrors, Grounds, ERRORS, presetOf } from '../../sim/index.ts';
import { recordRounds, ORDINARY } from '../support/recordingPlayer.ts';
const base = presetOf('handicap-6')!.player;
const grounds = new Grounds();
const cases: any = {
  base: [{}, {}],
  truthWords: [{}, {saidAsSeen:0}],
  seenWords: [{}, {saidAsSeen:1}],
  firstOnly: [{}, {saidAsSeen:0, firstOnly:true}],
  noBias: [{noBias:true}, {saidAsSeen:0}],
  noBiasSeen: [{noBias:true}, {saidAsSeen:1}],
};
const which = process.argv[2]?.split(',') ?? Object.keys(cases);
for (const name of which) {
  const [g, h] = cases[name];
  const rec = recordRounds({ player: { ...base, readBias: g.noBias?0:-0.25 }, ...g }, { says: ORDINARY, ...h }, name, 800);
  const fit = fitErrors(rec, { grounds, taps: [] });
  if (fit.status==='ok') console.log(name, ERRORS.map(e=>`${e} ${fit.player[e].toFixed(4)} (${fit.errors[e].range90.low.toFixed(4)} ${fit.errors[e].range90.high.toFixed(4)})`).join('; '), 'worth', fit.worth.toFixed(0), 'tails', fit.tails.median.toFixed(0));
}
console.log(base);
