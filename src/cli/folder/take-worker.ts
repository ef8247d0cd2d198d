import { parentPort } from 'node:worker_threads';
import { gradeJob } from './grade-job.ts';
import type { TakeAnswer, TakeJob } from './take-job.ts';

/** What a worker says: how far it has come, or what became of the job. */
export type WorkerTold = { readonly share: number } | { readonly answer: TakeAnswer };

/** Where each phase stands in the whole of a take, from usual times. */
const phases = { listening: [0, 0.6], laying: [0.6, 0.8], measuring: [0.8, 1] } as const;
const everyMs = 200;

parentPort?.on('message', async (job: TakeJob) => {
  let told = performance.now();
  const answer = await gradeJob(job, (phase, share) => {
    if (performance.now() - told < everyMs) return;
    told = performance.now();
    const [from, to] = phases[phase];
    say({ share: from + (to - from) * share });
  });
  say({ answer });
});

const say = (what: WorkerTold) => parentPort?.postMessage(what);
