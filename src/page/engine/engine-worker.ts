import { gradeTake } from '../../core/grade-take.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { cutSource } from '../../core/signal/cut-source.ts';
import { sha256Hex } from '../../library/sha256-hex.ts';
import type {
  EngineAnswer,
  EngineWish,
  Numbered,
  SoundStretch,
  TakeFacts,
  TakeSound,
} from './engine-messages.ts';
import { type HearingAlong, hearAlong } from './hear-along.ts';
import { mp3Uri, uriOf } from './mp3-uri.ts';
import { reportOf } from './report-of.ts';
import { takeSource } from './take-source.ts';
import { warmUp } from './warm-up.ts';

const scope = globalThis as unknown as {
  postMessage(message: Numbered<EngineAnswer>, transfer?: Transferable[]): void;
  addEventListener(type: 'message', take: (event: MessageEvent<Numbered<EngineWish>>) => void): void;
};

type Tell = (answer: EngineAnswer, transfer?: Transferable[]) => void;

/** Recordings that are heard while they come, by the number of the wish that began it. */
const along = new Map<number, HearingAlong>();
let warm = false;
/** The MP3 of the recording that was heard last, as a data URI, and the SHA-256 of its file. */
let lastMp3: { readonly sha256: string | null; readonly uri: string } | null = null;

scope.addEventListener('message', async ({ data: { number, body } }) => {
  const tell: Tell = (answer, transfer = []) => scope.postMessage({ number, body: answer }, transfer);
  try {
    await grant(body, number, tell);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const sentence = `Something went wrong while grading (${reason}). The recording is still there.`;
    tell({ answer: 'fault', sentence, unreadable: false });
  }
});

async function grant(body: EngineWish, number: number, tell: Tell): Promise<void> {
  switch (body.wish) {
    case 'grade':
      return grade(body.sound, body.facts, tell);
    case 'report':
      return report(body.result, body.sound, tell);
    case 'mp3':
      return mp3(body.sound, body.part, tell);
    case 'week-page': {
      const { weekPageOf } = await import('./week-page-of.ts');
      return tell({ answer: 'report', html: await weekPageOf(body.page) });
    }
    case 'warm-up':
      if (!warm) warmUp();
      warm = true;
      return;
    case 'hear':
      lastMp3 = null;
      along.set(number, hearAlong(body));
      return;
    case 'hear-more': {
      const heard = along.get(body.recording)?.add(body.at, body.samples);
      if (heard) scope.postMessage({ number: body.recording, body: { answer: 'heard', heard } });
      return;
    }
    case 'over':
      along.get(body.recording)?.over(body.put);
      return;
    case 'grade-heard': {
      const heard = along.get(body.recording)!;
      const { result, bytes } = await heard.grade(body.facts);
      along.delete(body.recording);
      tell({ answer: 'result', result, bytes }, [bytes.buffer]);
      const mp3 = heard.mp3();
      lastMp3 = mp3 && { sha256: result.recording.sha256, uri: uriOf(mp3) };
      return;
    }
    case 'leave':
      along.delete(body.recording);
  }
}

async function grade(sound: TakeSound, facts: TakeFacts, tell: Tell): Promise<void> {
  const opened = await takeSource(sound, facts.name);
  if (!opened.ok) return tell({ answer: 'fault', sentence: opened.sentence, unreadable: true });
  try {
    const { source, notes } = opened;
    const { sheet, ...known } = facts;
    const sha256 = 'bytes' in sound ? await sha256Hex(sound.bytes) : null;
    const warnings = [...(facts.warnings ?? []), ...notes];
    const gaps = [...(facts.gaps ?? []), ...opened.gaps];
    tell({ answer: 'result', result: gradeTake(source, sheet, { ...known, sha256, warnings, gaps }) });
  } finally {
    opened.close();
  }
}

async function report(result: TakeResult, sound: TakeSound | null, tell: Tell): Promise<void> {
  const opened = sound === null ? null : await takeSource(sound, result.recording.name);
  if (opened?.ok === false) return tell({ answer: 'fault', sentence: opened.sentence, unreadable: true });
  try {
    const { sha256 } = result.recording;
    const uri = sha256 !== null && lastMp3?.sha256 === sha256 ? lastMp3.uri : undefined;
    tell({ answer: 'report', html: await reportOf(result, opened?.source ?? null, uri) });
  } finally {
    opened?.close();
  }
}

async function mp3(sound: TakeSound, part: SoundStretch | undefined, tell: Tell): Promise<void> {
  const opened = await takeSource(sound, '');
  if (!opened.ok) return tell({ answer: 'fault', sentence: opened.sentence, unreadable: true });
  try {
    const heard =
      part === undefined ? opened.source : cutSource(opened.source, { from: part[0], to: part[1] });
    tell({ answer: 'mp3', uri: await mp3Uri(heard) });
  } finally {
    opened.close();
  }
}
