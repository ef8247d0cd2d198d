import type { Sheet } from '../../core/exercise/sheet.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { decodeByBrowser } from './decode-by-browser.ts';
import type {
  EngineAnswer,
  EngineWish,
  Numbered,
  ShownWeeks,
  SoundStretch,
  TakeFacts,
  TakeSound,
} from './engine-messages.ts';
import type { HeardRecording, HeardTold } from './heard-recording.ts';

/** The engine's refusal; its message is a sentence for the user. */
class EngineFault extends Error {
  override readonly name = 'EngineFault';
}

/**
 * s of a recording that is heard while it comes: of a longer one a phone would hold too much at once. Our judgement.
 */
const longestAlong = 900;

/** Grades takes and writes reports beside the page, in a worker. What can't be done rejects with `EngineFault`. */
export interface Engine {
  /** The result alone: the first thing that is there. */
  grade(sound: TakeSound, facts: TakeFacts): Promise<TakeResult>;
  /** The report on a result, with sound if there is one. */
  report(result: TakeResult, sound: TakeSound | null): Promise<string>;
  /**
   * A sound, or a part of it, as a data URI of an MP3; null where it can't be read or is too long to go inside a page.
   */
  mp3(sound: TakeSound, part?: SoundStretch): Promise<string | null>;
  /** A page on several takes as one HTML file. */
  weekPage(page: ShownWeeks): Promise<string>;
  /** Has everything ready for a take that is about to be played. */
  warmUp(): void;
  /** Begins to hear a recording of what the sheet says while it comes; `told`, where given, hears of its strokes. */
  hear(sampleRate: number, sheet: Sheet, told?: HeardTold): HeardRecording;
  stop(): void;
}

/** Starts the engine. One at a time is enough: wishes wait for each other. */
export function startEngine(): Engine {
  const worker = new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, (answer: EngineAnswer) => void>();
  const along = new Map<number, HeardTold>();
  let count = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<Numbered<EngineAnswer>>) => {
    const { number, body } = data;
    if (body.answer === 'heard') return along.get(number)?.(body.heard);
    const take = waiting.get(number);
    waiting.delete(number);
    take?.(body);
  });
  worker.addEventListener('error', () => {
    const sentence = 'The grading part of the page could not be loaded. Load the page again while online.';
    for (const take of waiting.values()) take({ answer: 'fault', sentence, unreadable: false });
    waiting.clear();
  });
  const send = (body: EngineWish, transfer: Transferable[] = []): number => {
    count += 1;
    worker.postMessage({ number: count, body }, transfer);
    return count;
  };
  const ask = (body: EngineWish) => new Promise<EngineAnswer>((resolve) => waiting.set(send(body), resolve));

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

  async function mp3(sound: TakeSound, part?: SoundStretch): Promise<string | null> {
    const answer = await ask({ wish: 'mp3', sound, ...(part === undefined ? {} : { part }) });
    if (answer.answer === 'mp3') return answer.uri;
    const decoded =
      answer.answer === 'fault' && answer.unreadable && 'bytes' in sound
        ? await decodeByBrowser(sound.bytes)
        : null;
    return decoded === null ? null : mp3(decoded, part);
  }

  async function weekPage(page: ShownWeeks): Promise<string> {
    const answer = await ask({ wish: 'week-page', page });
    if (answer.answer === 'report') return answer.html;
    throw new EngineFault(answer.answer === 'fault' ? answer.sentence : 'The page could not be made.');
  }

  function hear(sampleRate: number, sheet: Sheet, told?: HeardTold): HeardRecording {
    const recording = send({ wish: 'hear', sampleRate, sheet, live: told !== undefined });
    if (told !== undefined) along.set(recording, told);
    let gone = false;
    const leave = () => {
      if (!gone) send({ wish: 'leave', recording });
      gone = true;
      along.delete(recording);
    };
    return {
      leave,
      add(at, samples) {
        if (gone) return;
        if (at + samples.length > longestAlong * sampleRate) return leave();
        const copy = samples.slice();
        send({ wish: 'hear-more', recording, at, samples: copy }, [copy.buffer]);
      },
      over(put) {
        if (!gone) send({ wish: 'over', recording, ...(put && { put }) });
      },
      async grade(facts) {
        if (gone) return null;
        gone = true;
        along.delete(recording);
        const answer = await ask({ wish: 'grade-heard', recording, facts });
        return answer.answer === 'result' && answer.bytes !== undefined
          ? { result: answer.result, bytes: answer.bytes }
          : null;
      },
    };
  }

  return {
    grade,
    report,
    mp3,
    weekPage,
    warmUp: () => void send({ wish: 'warm-up' }),
    hear,
    stop: () => worker.terminate(),
  };
}
