import { parseXml } from '@rgrove/parse-xml';
import { strFromU8, unzipSync } from 'fflate';
import { childrenOf, elementAt } from './xml-tree.ts';

/** What is unpacked at most; `read-score.ts` reads fewer characters. Our judgement. */
const mostBytes = 16_000_000;
const zipStart = [0x50, 0x4b, 0x03, 0x04];

type ScoreText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly reason: string };

/** Byte order marks of UTF-16, big and little end first. */
const wide = { 'utf-16be': [0xfe, 0xff], 'utf-16le': [0xff, 0xfe] } as const;

/** Whether bytes begin like a score: XML, or the zip that a compressed score is. */
export function beginsLikeScore(bytes: Uint8Array): boolean {
  const head = strFromU8(bytes.subarray(0, 200))
    .replace(/^\uFEFF/, '')
    .trimStart();
  return (
    zipStart.every((value, i) => bytes[i] === value) || codingOf(bytes) !== 'utf-8' || head.startsWith('<')
  );
}

/**
 * The text of a MusicXML file: as it is (UTF-8 or, by its byte order mark, UTF-16), or out of a compressed one, whose
 * container names it (MusicXML 4.0, "Compressed .mxl files").
 */
export function scoreText(bytes: Uint8Array): ScoreText {
  if (!zipStart.every((value, i) => bytes[i] === value)) return decoded(bytes);
  try {
    const container = inside(bytes, 'META-INF/container.xml');
    const root = container && parseXml(strFromU8(container)).root;
    const files = root && elementAt(root, 'rootfiles');
    const path = files && childrenOf(files, 'rootfile')[0]?.attributes['full-path'];
    const score = path ? inside(bytes, path) : undefined;
    return score ? decoded(score) : { ok: false, reason: 'The compressed file holds no score.' };
  } catch {
    return { ok: false, reason: 'The compressed file is damaged.' };
  }
}

/** One file out of a zip; what would grow too large isn't unpacked, nor one that is listed again and again. */
function inside(bytes: Uint8Array, path: string): Uint8Array | undefined {
  let found = false;
  const filter = ({ name, originalSize }: { name: string; originalSize: number }) => {
    if (found || name !== path || originalSize > mostBytes) return false;
    found = true;
    return true;
  };
  return unzipSync(bytes, { filter })[path];
}

function codingOf(bytes: Uint8Array): string {
  const found = Object.entries(wide).find(([, mark]) => mark.every((value, i) => bytes[i] === value));
  return found?.[0] ?? 'utf-8';
}

function decoded(bytes: Uint8Array): ScoreText {
  try {
    return { ok: true, text: new TextDecoder(codingOf(bytes), { fatal: true }).decode(bytes) };
  } catch {
    return { ok: false, reason: 'Its letters are neither UTF-8 nor UTF-16.' };
  }
}
