import { gradeTake } from '../../core/grade-take.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import type { EngineAnswer, EngineWish, Numbered, TakeFacts, TakeSound } from './engine-messages.ts';
import { reportOf } from './report-of.ts';
import { takeSource } from './take-source.ts';

const scope = globalThis as unknown as {
  postMessage(message: Numbered<EngineAnswer>): void;
  addEventListener(type: 'message', take: (event: MessageEvent<Numbered<EngineWish>>) => void): void;
};

scope.addEventListener('message', async ({ data: { number, body } }) => {
  const tell = (answer: EngineAnswer) => scope.postMessage({ number, body: answer });
  try {
    await (body.wish === 'grade'
      ? grade(body.sound, body.facts, tell)
      : report(body.result, body.sound, tell));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const sentence = `Something went wrong while grading (${reason}). The recording is still there.`;
    tell({ answer: 'fault', sentence, unreadable: false });
  }
});

async function grade(
  sound: TakeSound,
  facts: TakeFacts,
  tell: (answer: EngineAnswer) => void,
): Promise<void> {
  const opened = await takeSource(sound, facts.name);
  if (!opened.ok) return tell({ answer: 'fault', sentence: opened.sentence, unreadable: true });
  try {
    const { source, notes } = opened;
    const { sheet, ...known } = facts;
    const sha256 = 'bytes' in sound ? await hexDigest(sound.bytes) : null;
    const warnings = [...(facts.warnings ?? []), ...notes];
    const gaps = [...(facts.gaps ?? []), ...opened.gaps];
    tell({ answer: 'result', result: gradeTake(source, sheet, { ...known, sha256, warnings, gaps }) });
  } finally {
    opened.close();
  }
}

async function report(
  result: TakeResult,
  sound: TakeSound | null,
  tell: (answer: EngineAnswer) => void,
): Promise<void> {
  const opened = sound === null ? null : await takeSource(sound, result.recording.name);
  if (opened?.ok === false) return tell({ answer: 'fault', sentence: opened.sentence, unreadable: true });
  try {
    tell({ answer: 'report', html: await reportOf(result, opened?.source ?? null) });
  } finally {
    opened?.close();
  }
}

async function hexDigest(bytes: Uint8Array): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', Uint8Array.from(bytes)));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
