/** Answers kept in step with a question, by a worker that the test plays itself: asked for in turn, answered when the test says. */
import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createJob, type JobRun } from '../../../src/state/job.ts';

interface Asked {
  readonly question: string;
  readonly run: JobRun<string>;
  answer(found: string | undefined): Promise<void>;
  fail(message: string): Promise<void>;
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const settle = (): Promise<void> => vi.advanceTimersByTimeAsync(0) as Promise<unknown> as Promise<void>;

function jobOf(options: { most?: number; pause?: number; isKnown?: (question: string) => boolean } = {}) {
  const question = signal<string | undefined>(undefined);
  const asked: Asked[] = [];
  const job = createJob<string, string>(question, {
    keyOf: (one) => one,
    ask: (one, run) =>
      new Promise((resolve, reject) => {
        asked.push({
          question: one,
          run,
          async answer(found) {
            resolve(found);
            await settle();
          },
          async fail(message) {
            reject(new Error(message));
            await settle();
          },
        });
      }),
    most: 2,
    mend: 'Change it to try again.',
    ...options,
  });
  return { question, asked, job, end: job.follow() };
}

describe('a job', () => {
  it('asks nothing before there is a question, then shows how far it is, and its answer', async () => {
    const { question, asked, job } = jobOf();
    await settle();
    expect(asked).toEqual([]);
    question.value = 'a';
    await settle();
    expect(asked.map((one) => one.question)).toEqual(['a']);
    expect(job.work.value).toBe(0);
    asked[0].run.told(0.4);
    expect(job.work.value).toBe(0.4);
    await asked[0].answer('A');
    expect(job.shown.value).toEqual({ question: 'a', found: 'A' });
    expect([job.behind.value, job.work.value]).toEqual([false, undefined]);
  });

  it('shows a first answer as behind until the last one is there', async () => {
    const { question, asked, job } = jobOf();
    question.value = 'a';
    await settle();
    asked[0].run.first('nearly A');
    expect([job.shown.value?.found, job.behind.value, job.work.value]).toEqual(['nearly A', true, 0]);
    await asked[0].answer('A');
    expect([job.shown.value?.found, job.behind.value]).toEqual(['A', false]);
  });

  it('hears the newest question alone, whatever earlier work still tells', async () => {
    const { question, asked, job } = jobOf();
    question.value = 'a';
    await settle();
    question.value = 'b';
    await settle();
    asked[0].run.told(0.9);
    asked[0].run.first('nearly A');
    await asked[0].answer('A');
    expect([job.shown.value, job.work.value, job.behind.value]).toEqual([undefined, 0, true]);
    await asked[1].answer('B');
    expect(job.shown.value).toEqual({ question: 'b', found: 'B' });
  });

  it('waits for a question on its way to keep still, but not for the first one', async () => {
    const { question, asked } = jobOf({ pause: 500 });
    question.value = 'a';
    await settle();
    await asked[0].answer('A');
    for (const next of ['b', 'c', 'd']) {
      question.value = next;
      await vi.advanceTimersByTimeAsync(300);
    }
    expect(asked).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(300);
    expect(asked.map((one) => one.question)).toEqual(['a', 'd']);
  });

  it('answers a question that comes again at once, the oldest forgotten', async () => {
    const { question, asked, job } = jobOf({ most: 2 });
    for (const next of ['a', 'b', 'c']) {
      question.value = next;
      await settle();
      await asked[asked.length - 1].answer(next.toUpperCase());
    }
    question.value = 'b';
    expect([job.shown.value?.found, job.behind.value]).toEqual(['B', false]);
    await settle();
    expect(asked).toHaveLength(3);
    question.value = 'a';
    await settle();
    expect(asked).toHaveLength(4);
  });

  it('is stopped, keeps what it shows, and goes on when asked', async () => {
    const { question, asked, job } = jobOf();
    question.value = 'a';
    await settle();
    asked[0].run.first('nearly A');
    job.stop();
    expect([job.stopped.value, job.work.value, job.shown.value?.found]).toEqual([
      true,
      undefined,
      'nearly A',
    ]);
    await asked[0].answer('A');
    expect(job.shown.value?.found).toBe('nearly A');
    job.resume();
    expect([job.stopped.value, job.work.value]).toEqual([false, 0]);
    await asked[1].answer('A');
    expect([job.shown.value?.found, job.behind.value]).toEqual(['A', false]);
  });

  it('says a failure in a sentence with what to do, until the question changes', async () => {
    const { question, asked, job } = jobOf();
    question.value = 'a';
    await settle();
    await asked[0].fail('no memory');
    expect(job.failure.value).toBe('The engine could not answer: no memory. Change it to try again.');
    expect([job.work.value, job.behind.value]).toEqual([undefined, true]);
    question.value = 'b';
    expect(job.failure.value).toBeUndefined();
  });

  it('does not ask what is known elsewhere, nor anything once it is no longer followed', async () => {
    const { question, asked, end } = jobOf({ isKnown: (one) => one === 'known' });
    question.value = 'known';
    await settle();
    expect(asked).toEqual([]);
    end();
    question.value = 'a';
    await settle();
    expect(asked).toEqual([]);
  });
});
