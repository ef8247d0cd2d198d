import { Worker } from 'node:worker_threads';
import type { TakeAnswer, TakeJob } from './take-job.ts';
import type { WorkerTold } from './take-worker.ts';

/** MB of objects that one take may need; a two-hour take needs a quarter of it. */
const mostMegabytes = 2048;

interface AtOnce {
  /** Workers that grade side by side; each holds one take at a time. */
  readonly workers: number;
  /** Hears how many takes are done, counting parts of those under way. */
  readonly tell: (done: number) => void;
  /** Takes each answer as it comes, in any order; the next job waits for it. */
  readonly take: (answer: TakeAnswer, index: number) => Promise<void>;
}

/**
 * Grades jobs side by side in threads. A take that ends its thread (out of memory) comes back as failed, and another
 * thread goes on. Rejects only where `take` does. Leaves no thread behind.
 *
 * @example await gradeAtOnce(jobs, { workers: 2, tell: () => {}, take: async ({ take }) => console.log(take.recording) })
 */
export async function gradeAtOnce(jobs: readonly TakeJob[], { workers, tell, take }: AtOnce): Promise<void> {
  let next = 0;
  let stopped = false;
  const threads = new Set<Worker>();
  const shares = new Map<number, number>();
  const come = (index: number, share: number) => {
    shares.set(index, share);
    tell([...shares.values()].reduce((sum, one) => sum + one, 0));
  };

  async function line(): Promise<void> {
    let worker: Worker | undefined;
    for (let index = next++; index < jobs.length && !stopped; index = next++) {
      worker ??= startThread(threads);
      const job = jobs[index]!;
      const answer = await answerOf(worker, job, (share) => come(index, share)).catch((error: Error) => {
        worker = undefined;
        return failed(job, error);
      });
      if (stopped) return;
      await take(answer, index);
      come(index, 1);
    }
  }
  try {
    await Promise.all(Array.from({ length: Math.min(workers, jobs.length) }, line));
  } finally {
    stopped = true;
    await Promise.all([...threads].map((thread) => thread.terminate()));
  }
}

function startThread(threads: Set<Worker>): Worker {
  const thread = new Worker(new URL('./take-worker.js', import.meta.url), {
    resourceLimits: { maxOldGenerationSizeMb: mostMegabytes },
  });
  threads.add(thread);
  return thread.once('exit', () => threads.delete(thread));
}

function answerOf(worker: Worker, job: TakeJob, tell: (share: number) => void): Promise<TakeAnswer> {
  return new Promise<TakeAnswer>((resolve, reject) => {
    const ended = (code: number) => reject(new Error(`its thread ended with code ${code}`));
    const hear = (told: WorkerTold) => {
      if ('share' in told) return tell(told.share);
      worker.off('message', hear).off('error', reject).off('exit', ended);
      resolve(told.answer);
    };
    worker.on('message', hear).on('error', reject).on('exit', ended).postMessage(job);
  });
}

function failed({ shown }: TakeJob, { message }: Error): TakeAnswer {
  const fault = `"${shown}" could not be graded: ${message}. Grade it alone with \`evenhand grade\`.`;
  const nothing = { earlier: false, figures: null, report: null, result: null };
  return { take: { recording: shown, state: 'failed', fault, ...nothing }, files: [], notes: [] };
}
