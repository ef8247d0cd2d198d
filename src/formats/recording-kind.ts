/** What a file is by its first bytes. `riff` stands for every RIFF file, WAVE or not. */
export type RecordingKind = (typeof signatures)[number]['kind'] | 'riff' | 'text' | 'unknown';

/** Bytes that `recordingKind` wants to see. */
export const kindBytes = 512;

/**
 * Published first bytes of common files: `at` is the offset, characters stand for their Latin-1 code. The more
 * particular signature comes first.
 */
const signatures = [
  { kind: 'png', at: 0, starts: ['\x89PNG'] },
  { kind: 'jpeg', at: 0, starts: ['\xff\xd8\xff'] },
  { kind: 'gif', at: 0, starts: ['GIF8'] },
  { kind: 'pdf', at: 0, starts: ['%PDF'] },
  { kind: 'zip', at: 0, starts: ['PK\x03\x04'] },
  { kind: 'midi', at: 0, starts: ['MThd'] },
  { kind: 'flac', at: 0, starts: ['fLaC'] },
  { kind: 'ogg', at: 0, starts: ['OggS'] },
  { kind: 'aiff', at: 8, starts: ['AIFF', 'AIFC'] },
  { kind: 'caf', at: 0, starts: ['caff'] },
  { kind: 'au', at: 0, starts: ['.snd'] },
  { kind: 'amr', at: 0, starts: ['#!AMR'] },
  { kind: 'wma', at: 0, starts: ['\x30\x26\xb2\x75\x8e\x66\xcf\x11'] },
  { kind: 'wave64', at: 0, starts: ['riff\x2e\x91\xcf\x11'] },
  { kind: 'webm', at: 0, starts: ['\x1a\x45\xdf\xa3'] },
  { kind: 'm4a', at: 4, starts: ['ftypM4A', 'ftypM4B'] },
  { kind: 'quicktime', at: 4, starts: ['ftypqt'] },
  { kind: '3gp', at: 4, starts: ['ftyp3g'] },
  { kind: 'mp4', at: 4, starts: ['ftyp'] },
  { kind: 'quicktime', at: 4, starts: ['moov', 'wide', 'mdat'] },
  { kind: 'aac', at: 0, starts: ['\xff\xf1', '\xff\xf9'] },
  { kind: 'mp3', at: 0, starts: ['ID3', '\xff\xfb', '\xff\xfa', '\xff\xf3', '\xff\xf2', '\xff\xe3'] },
] as const;

/** Kinds whose sound is decoded, if the coding inside is known. */
const decodedKinds: ReadonlySet<string> = new Set([
  'caf',
  'flac',
  'mp3',
  'aac',
  'ogg',
  'webm',
  'm4a',
  'mp4',
  'quicktime',
  '3gp',
]);

/** Whether the sound of such a file has to be decoded before it can be read. */
export const isDecoded = (kind: RecordingKind): boolean => decodedKinds.has(kind);

/** Whether such a file may hold sound that can be read. */
export const isReadable = (kind: RecordingKind): boolean =>
  kind === 'riff' || kind === 'aiff' || isDecoded(kind);

const riffStarts = ['RIFF', 'RF64', 'BW64', 'RIFX'];

/**
 * Says what a file is by its first bytes (`kindBytes` of them, or all it has).
 *
 * @example
 * recordingKind(new TextEncoder().encode('fLaC')); // 'flac'
 */
export function recordingKind(head: Uint8Array): RecordingKind {
  const text = String.fromCharCode(...head.subarray(0, kindBytes));
  if (riffStarts.some((start) => text.startsWith(start))) return 'riff';
  const signature = signatures.find(({ at, starts }) => starts.some((start) => text.startsWith(start, at)));
  if (signature !== undefined) return signature.kind;
  return looksLikeText(text) ? 'text' : 'unknown';
}

/** Text has tabs and line ends but no other control characters. */
function looksLikeText(text: string): boolean {
  return (
    text.length > 0 && [...text].every((character) => character >= ' ' || '\t\n\r\f'.includes(character))
  );
}
