import { fitErrors, Grounds, ERRORS, presetOf } from '/work/wt/fit/sim/index.ts';
import { recordRounds, ORDINARY } from '/work/wt/fit/tests/support/recordingPlayer.ts';
const base = presetOf('handicap-6')!.player;
const grounds = new Grounds();
for (const [n, seed] of [[120,'a'],[120,'b'],[1000,'c']] as const) {
  let t=process.cpuUsage();
  const rec = recordRounds({ player: { ...base, readBias: -0.25 } }, { says: ORDINARY }, seed, n);
  console.log('sim', process.cpuUsage(t).user/1e6, rec.putts.filter(p=>p.stroke>1).length, rec.putts.filter(p=>p.holed).length);
  t=process.cpuUsage();
  let first=0; 
  const fit = fitErrors(rec, { grounds: seed==='a'? new Grounds(): grounds, taps: [], wanted: (d)=>{ if (d>=0.5&&!first) first=process.cpuUsage(t).user/1e6; return true; } });
  console.log('fit', first, process.cpuUsage(t).user/1e6);
  if (fit.status==='ok') { for (const e of ERRORS) console.log(e, fit.player[e].toFixed(4), fit.errors[e].range90.low.toFixed(4), fit.errors[e].range90.high.toFixed(4), 'truth', e==='readBias'?-0.25:base[e]); console.log(fit.worth, fit.tails.median, JSON.stringify(fit.pace.rolledPast.range90), fit.readBias); }
}
