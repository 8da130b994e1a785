import { ballAt, greenOf } from '../../sim/benchmarks/putts.ts';
import { groundStrokes } from '../../sim/evidence/fit/ground-strokes.ts';
import { BY_ACROSS, ENERGY, MeantLines } from '../../sim/evidence/fit/meant-lines.ts';
import { PlayerStrokes } from '../../sim/evidence/fit/player-strokes.ts';
import { defaultPrior, someoneOf, wideOf } from '../../sim/evidence/fit/prior.ts';
import { chanceOf, recordedStrokes } from '../../sim/evidence/fit/recorded-strokes.ts';
import { missChance, writtenSide } from '../../sim/evidence/fit/words.ts';
import { seededRandom } from '../../sim/index.ts';
import { LineWalk } from '../../sim/read/line.ts';
import { startOf, bearingOf } from '../../sim/roll/roll.ts';
import { normalsOf, plainRoll } from '../support/recordingPlayer.ts';
const prior = { ...defaultPrior(), tails: 1e4 };
for (const [slope, turned, length, pace] of [[0.02,1.5,3,0.43],[0.01,0.8,4,0.43],[0.015,2.2,5,0.43]]) {
const player = { ...prior.about, readBias: -0.25 };
const putt = ballAt(greenOf(slope, 2.9, 'rim'), length, turned);
const walk = new LineWalk(putt); const line = walk.lineAt(pace)!; const start = startOf(putt, line.heading);
const high = start < 0 ? -1 : 1;
const lines = MeantLines.of(putt, high as 1)!;
const n = new Float64Array(10); lines.at(0,.43,n); const a=Math.abs(start);
const ground = { lines, rise: slope*Math.cos(turned), across: slope*Math.sin(turned), aimOffset: length*Math.tan(a), aimByAcross: length*(n[BY_ACROSS+1]-a*n[BY_ACROSS])/n[ENERGY]*(1+Math.tan(a)**2) };
console.log(ground.rise, ground.across, ground.aimOffset, ground.aimByAcross, 'sum aim', ground.aimByAcross*ground.across);
const strokes = groundStrokes(walk, high as 1, 8192, 0);
const one = new PlayerStrokes();
const combos: any[] = [];
for (const breaks of ['straight','highSide','lowSide'] as const) for (const climb of ['up','level','down'] as const) combos.push({breaks, climb, slopeFelt: undefined});
const someone = { ...someoneOf(prior, new Array(6).fill(0)), player, saidAsSeen: 1 };
const outs: any[] = ['holed', { reach:'short', side: writtenSide('low','leftToRight') },{ reach:'short', side: writtenSide('high','leftToRight') }, { reach:'past', side: writtenSide('high','leftToRight') },{ reach:'past', side: writtenSide('low','leftToRight') }];
const normal = normalsOf(seededRandom('x'));
const N = 20000; const counts = combos.map(()=>outs.map(()=>0)); const wordsN = combos.map(()=>0);
for (let i=0;i<N;i++) { const r = plainRoll(putt,pace,player,normal)!;
 const zero = bearingOf(putt);
 const rise = ground.rise + r.seenAlong + 0.003*normal();
 const trueAcross = slope*Math.cos(zero) ;
 const acr = high*(trueAcross + r.seenAcross);
 // aim by solving
 const along = slope*Math.sin(zero)+r.seenAlong, ac = trueAcross + r.seenAcross;
 const w = new LineWalk({...putt, surface:{kind:'plane', slope: Math.hypot(along,ac), downhill: zero+Math.atan2(-ac,-along)}});
 const l = w.lineAt(pace); const aim0 = l? high*length*Math.tan(startOf(putt,l.heading)):1; const aim = aim0*Math.exp(.15*normal())+.025*normal();
 const climb = rise>.005?'up':rise<-.005?'down':'level'; const br = aim>.054?'highSide':aim<-.054?'lowSide':'straight';
 const c = combos.findIndex(x=>x.breaks===br&&x.climb===climb); wordsN[c]++;
 outs.forEach((o,k)=>{ if (o==='holed') counts[c][k]+=r.holed?1:0; else if(!r.holed) counts[c][k]+=missChance(o).of(r.passed,r.along,r.leave); });
}
combos.forEach((words,c)=>{ const spot = { ground, pace, index:0, words, turned:false, share:1 } as any; one.fill([spot], someone);
 if (wordsN[c]<100) return;
 console.log(words.breaks, words.climb, 'P(w)', (wordsN[c]/N).toFixed(3), one.words(0,words).toFixed(3), outs.map((o,k)=>`${(counts[c][k]/N).toFixed(4)} ${chanceOf(recordedStrokes([{...spot,strokes}],()=>o,wideOf(prior,1.6),{},Infinity),one,1).toFixed(4)}`).join(' | ')); });
}
