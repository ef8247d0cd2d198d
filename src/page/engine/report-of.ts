import { gzipSync } from 'fflate';
import type { TakeResult } from '../../core/result/take-result.ts';
import type { Source } from '../../core/signal/source.ts';
import { soundPrint } from '../../report/listening/sound-print.ts';
import type { ReportSound } from '../../report/parts/listening.ts';
import { reportHtml } from '../../report/report-html.ts';
import { base64 } from './base64.ts';

/** s of sound that go into a report: with more of it, a phone has to hold the report's text several times over. Our judgement. */
const mostSound = 900;

/** The report on a take as one HTML file, with its sound where there is one that isn't too long. */
export async function reportOf(result: TakeResult, source: Source | null): Promise<string> {
  const parts = await import('virtual:report-parts');
  const { clientScript, listeningScript, filesScript, fontFaces } = parts;
  const sound = source === null ? null : await reportSound(result, source);
  // Digests come later than the text asks for them, so it is written with places for them.
  const texts: string[] = [];
  const place = (i: number) => `digest-${i}-to-come`;
  const html = reportHtml(result, {
    images: {},
    clientScript,
    listeningScript,
    files: { script: filesScript, pack },
    fontFaces,
    sha256: (text) => place(texts.push(text) - 1),
    ...(sound === null ? {} : { sound }),
  });
  const digests = await Promise.all(texts.map(sha256));
  return digests.reduce((text, digest, i) => text.replace(place(i), digest), html);
}

async function sha256(text: string): Promise<string> {
  return base64(new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text))));
}

function pack(contents: string | Uint8Array): string {
  const bytes = typeof contents === 'string' ? new TextEncoder().encode(contents) : contents;
  return base64(gzipSync(bytes, { level: 9 }));
}

async function reportSound({ strokes }: TakeResult, source: Source): Promise<ReportSound | null> {
  if (source.length > mostSound * source.sampleRate) return null;
  const { mp3Of, nearestRate } = await import('../../formats/write-mp3.ts');
  const uri = `data:audio/mpeg;base64,${base64(await mp3Of(source))}`;
  const print = soundPrint(source, strokes);
  return { place: 'inside', uri, sampleRate: nearestRate(source.sampleRate), print };
}
