/** One of the two threads of maps.ts: keeps the first question it is sent, plays places, sends them back. */
import { parentPort } from 'node:worker_threads';
import { emptyGreenMap, type GreenMap, type GreenQuestion, playPlaces } from '../../sim/index.ts';

interface Asked {
  readonly question?: GreenQuestion;
  readonly spacing?: number;
  readonly nodes: Int32Array;
}

let kept: { readonly question: GreenQuestion; readonly map: GreenMap } | undefined;

parentPort?.on('message', ({ question, spacing = 0.25, nodes }: Asked) => {
  if (question !== undefined) kept = { question, map: emptyGreenMap(question.putt, { spacing }) };
  if (kept === undefined) throw new Error('Got places before a question, expected the question first.');
  parentPort?.postMessage(playPlaces(kept.question, kept.map, nodes));
});
