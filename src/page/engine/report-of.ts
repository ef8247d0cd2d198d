import { gzipSync } from 'fflate';
import type { TakeResult } from '../../core/result/take-result.ts';
import type { Source } from '../../core/signal/source.ts';
import { soundPrint } from '../../report/listening/sound-print.ts';
import type { ReportSound } from '../../report/parts/listening.ts';
import { reportHtml } from '../../report/report-html.ts';
import { base64 } from './base64.ts';
import { mp3Uri } from './mp3-uri.ts';
import { withDigests } from './with-digests.ts';

/**
 * The report on a take as one HTML file, with its sound where there is one that isn't too long; `uri` is that sound as
 * an MP3 where it is known already.
 */
export async function reportOf(result: TakeResult, source: Source | null, uri?: string): Promise<string> {
  const parts = await import('virtual:report-parts');
  const { clientScript, listeningScript, filesScript, fontFaces } = parts;
  const sound = source === null ? null : await reportSound(result, source, uri);
  return withDigests((sha256) =>
    reportHtml(result, {
      images: {},
      clientScript,
      listeningScript,
      files: { script: filesScript, pack },
      fontFaces,
      sha256,
      ...(sound === null ? {} : { sound }),
    }),
  );
}

function pack(contents: string | Uint8Array): string {
  const bytes = typeof contents === 'string' ? new TextEncoder().encode(contents) : contents;
  return base64(gzipSync(bytes, { level: 9 }));
}

async function reportSound(
  { strokes }: TakeResult,
  source: Source,
  known: string | undefined,
): Promise<ReportSound | null> {
  const uri = known ?? (await mp3Uri(source));
  if (uri === null) return null;
  const { nearestRate } = await import('../../formats/write-mp3.ts');
  const print = soundPrint(source, strokes);
  return { place: 'inside', uri, sampleRate: nearestRate(source.sampleRate), print };
}
