import { faultText } from '../../core/exercise/fault-text.ts';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { decodeByBrowser } from './decode-by-browser.ts';
import type { EngineAnswer, EngineWish, Numbered, TakeFacts, TakeSound } from './engine-messages.ts';

/** The engine's refusal; its message is a sentence for the user. */
export class EngineFault extends Error {
  override readonly name = 'EngineFault';
}

export interface Graded {
  readonly result: TakeResult;
  /** The report as one HTML file, with the sound inside. */
  readonly html: string;
}

type Asked = Omit<TakeFacts, 'sheet'> & { readonly sheet?: Sheet; readonly sheetText?: string };
export type GradeBytes = Asked & { readonly bytes: Uint8Array };
export type GradeSamples = Asked & { readonly samples: readonly Float32Array[]; readonly sampleRate: number };

/** Grades takes and writes reports beside the page, in a worker. What can't be done rejects with `EngineFault`. */
export interface Engine {
  /** The result alone: the first thing that is there. */
  grade(sound: TakeSound, facts: TakeFacts): Promise<TakeResult>;
  /** The report on a result, with sound if there is one. */
  report(result: TakeResult, sound: TakeSound | null): Promise<string>;
  gradeBytes(take: GradeBytes): Promise<Graded>;
  gradeSamples(take: GradeSamples): Promise<Graded>;
  stop(): void;
}

/** Starts the engine. One at a time is enough: wishes wait for each other. */
export function startEngine(): Engine {
  const worker = new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, (answer: EngineAnswer) => void>();
  let count = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<Numbered<EngineAnswer>>) => {
    const take = waiting.get(data.number);
    waiting.delete(data.number);
    take?.(data.body);
  });
  worker.addEventListener('error', () => {
    const sentence = 'The grading part of the page could not be loaded. Load the page again while online.';
    for (const take of waiting.values()) take({ answer: 'fault', sentence, unreadable: false });
    waiting.clear();
  });
  const ask = (body: EngineWish) =>
    new Promise<EngineAnswer>((resolve) => {
      count += 1;
      waiting.set(count, resolve);
      worker.postMessage({ number: count, body });
    });

  async function grade(sound: TakeSound, facts: TakeFacts): Promise<TakeResult> {
    const answer = await ask({ wish: 'grade', sound, facts });
    if (answer.answer === 'result') return answer.result;
    if (answer.answer !== 'fault')
      throw new EngineFault('The page and its grading part are of two versions.');
    const decoded = answer.unreadable && 'bytes' in sound ? await decodeByBrowser(sound.bytes) : null;
    if (decoded === null) throw new EngineFault(answer.sentence);
    return grade(decoded, facts);
  }

  async function report(result: TakeResult, sound: TakeSound | null): Promise<string> {
    const answer = await ask({ wish: 'report', result, sound });
    if (answer.answer === 'report') return answer.html;
    // As it was graded: by the browser's own decoder, and without sound where that can't read it either.
    if (answer.answer === 'fault' && answer.unreadable && sound !== null)
      return report(result, 'bytes' in sound ? await decodeByBrowser(sound.bytes) : null);
    throw new EngineFault(answer.answer === 'fault' ? answer.sentence : 'The report could not be made.');
  }

  async function both(sound: TakeSound, { sheet, sheetText, ...facts }: Asked): Promise<Graded> {
    const result = await grade(sound, { ...facts, sheet: sheet ?? sheetOf(sheetText) });
    return { result, html: await report(result, sound) };
  }

  return {
    grade,
    report,
    gradeBytes: ({ bytes, ...asked }) => both({ bytes }, asked),
    gradeSamples: ({ samples, sampleRate, ...asked }) => both({ samples, sampleRate }, asked),
    stop: () => worker.terminate(),
  };
}

function sheetOf(text: string | undefined): Sheet {
  if (text === undefined) throw new EngineFault("What was played isn't said. Choose an exercise or a sheet.");
  const parsed = parseSheet(text);
  if (parsed.ok) return parsed.sheet;
  throw new EngineFault(parsed.faults.map((fault) => faultText(text, fault)).join('\n'));
}
