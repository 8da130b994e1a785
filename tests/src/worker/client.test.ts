/**
 * Lanes to the engine: which question is answered, what travels, what happens when a worker does not start. The worker is
 * replaced by a message channel with a small engine behind it, so that the test decides when it answers.
 */
import { expose } from 'comlink';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fieldSurface, type Putt, type Surface } from '../../../sim/index.ts';
import { createLane } from '../../../src/worker/client.ts';
import type { SentPutt } from '../../../src/worker/messages.ts';

/** Workers made, and how many of the first of them never answer. */
let made = 0;
let deaf = 0;
let asked: string[] = [];
let held: Surface[] = [];
const ports: MessagePort[] = [];

/** As the real one: a putt on a field is an error before its field. */
const smallEngine = () => {
  let field: Surface | undefined;
  return {
    ready: () => true,
    hold: (surface: Surface) => {
      held.push(surface);
      field = surface;
    },
    lines: (putt: SentPutt) => {
      if (putt.surface === 'held' && field === undefined) throw new Error('no field');
      asked.push(String(putt.ball.x));
      return putt;
    },
  };
};

class FakeWorker {
  readonly port: MessagePort;
  constructor() {
    made += 1;
    const { port1, port2 } = new MessageChannel();
    this.port = port1;
    ports.push(port1, port2);
    if (made > deaf) expose(smallEngine(), port2);
    port1.start();
  }
  addEventListener(kind: string, listener: EventListener): void {
    this.port.addEventListener(kind, listener);
  }
  removeEventListener(kind: string, listener: EventListener): void {
    this.port.removeEventListener(kind, listener);
  }
  postMessage(message: unknown, transfer: Transferable[] = []): void {
    this.port.postMessage(message, transfer);
  }
  terminate(): void {
    this.port.close();
  }
}

beforeEach(() => {
  made = 0;
  deaf = 0;
  asked = [];
  held = [];
  vi.stubGlobal('Worker', FakeWorker);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  for (const port of ports.splice(0)) port.close();
});

const field = fieldSurface({
  origin: { x: 0, y: 0 },
  spacing: 1,
  columns: 9,
  rows: 9,
  heights: new Float64Array(81),
});
const putt = (x: number): Putt => ({
  surface: field,
  greenSpeed: 3.048,
  ball: { x, y: 0 },
  hole: { x: 0, y: 0 },
  capture: 'simple',
});
/** Longer than the lane waits for a worker to start (12 s), shorter than twice that, ms. */
const LIMIT = 13_000;
const paces = { die: 0.15, firm: 0.75 };
const ask = (lane: ReturnType<typeof createLane>, x: number) =>
  lane.latest((engine, send) => engine.lines(send.putt(putt(x)), paces));

describe('a lane', () => {
  it('answers the running question and the newest of those that wait; the others get nothing', async () => {
    const lane = createLane();
    const answers = await Promise.all([1, 2, 3, 4].map((x) => ask(lane, x)));
    expect(answers.map((answer) => answer !== undefined)).toEqual([true, false, false, true]);
    expect(asked).toEqual(['1', '4']);
    expect(made).toBe(1);
  });

  it('sends a green once, not with every putt on it', async () => {
    const lane = createLane();
    await ask(lane, 1);
    await ask(lane, 2);
    expect(held).toHaveLength(1);
  });

  it('that interrupts ends the running question and sends the green to the new worker', async () => {
    const lane = createLane({ interrupt: true });
    const [first, second] = await Promise.all([ask(lane, 1), ask(lane, 2)]);
    expect(first).toBeUndefined();
    expect(second).toBeDefined();
    expect(made).toBe(2);
  });

  it('that is cancelled answers nothing, and the next question starts afresh', async () => {
    const lane = createLane();
    const first = ask(lane, 1);
    lane.cancel();
    expect(await first).toBeUndefined();
    expect(await ask(lane, 2)).toBeDefined();
  });

  it('passes on what the engine throws, and goes on with the question that waits', async () => {
    const lane = createLane();
    const first = lane.latest(() => Promise.reject(new Error('no such putt')));
    const second = ask(lane, 2);
    await expect(first).rejects.toThrow('no such putt');
    expect(await second).toBeDefined();
  });

  it('makes another worker when one does not start, and asks again', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    deaf = 1;
    const lane = createLane();
    const answer = ask(lane, 1);
    await vi.advanceTimersByTimeAsync(LIMIT);
    expect(await answer).toBeDefined();
    expect(made).toBe(2);
  });

  it('says so when no worker starts, and tries again for the question that waits', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    deaf = 3;
    const lane = createLane();
    const first = expect(ask(lane, 1)).rejects.toThrow('did not start');
    const second = ask(lane, 2);
    for (let start = 0; start < 3; start += 1) await vi.advanceTimersByTimeAsync(LIMIT);
    await first;
    expect(await second).toBeDefined();
  });
});
