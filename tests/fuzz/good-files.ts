import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { rubricToStartFrom } from '../../src/cli/rubric-command.ts';
import { listExercises } from '../../src/core/exercise/catalogue.ts';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { upgradeTakeResult } from '../../src/core/result/upgrade-take-result.ts';
import { rubrics } from '../../src/core/scoring/rubrics/index.ts';
import { writeMusicXml } from '../../src/formats/music-xml/write-music-xml.ts';
import { takeMidi } from '../../src/formats/take-midi.ts';
import { archiveLibrary } from '../../src/library/backup/archive-library.ts';
import { packMessage } from '../../src/library/call-message.ts';
import { openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { takeFileChunks } from '../../src/library/take-file/write-take-file.ts';
import { encodeHead, encodeNote, encodeSamples } from '../../src/page/recording/kept/chunk-file.ts';
import { fill } from '../library/backup/filled-library.ts';
import { madeParcel } from '../library/take-file/made-parcel.ts';

const root = join(import.meta.dirname, '../..');
export const utf8 = (text: string) => new TextEncoder().encode(text);
export const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const demo = () => readFileSync(join(root, 'reports/samples/demo.json'));

export const notations = [
  '>RLR >LRL',
  'RR>L LLR | lRLz -RL',
  '>RLRLRL R--- llR>L- | RzL',
  'RLRLR LRLRLRL R RLRL',
];

export function sheets(): string[] {
  const takes = join(root, 'fixtures/takes');
  return [
    ...readdirSync(takes)
      .filter((name) => name.endsWith('.sheet'))
      .map((name) => readFileSync(join(takes, name), 'utf8')),
    'title: Week 7\ntempo: 97.5\ntimes: 3\n\n>RLR >LRL ; rest: 4 ; name: A < B # note\nRR>L LLR ; lead: changes ; ratio: 8 to 16 dB',
    ...listExercises()
      .filter((_, i) => i % 60 === 0)
      .map(({ id }) => `${id} ; times: 4 ; tempo: 120`),
  ];
}

/** A sheet as a MusicXML score. */
export function score(text: string): string {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return writeMusicXml(parsed.sheet);
}

export const container =
  '<?xml version="1.0"?><container><rootfiles><rootfile full-path="score.xml"/></rootfiles></container>';

export const compressed = (text: string) =>
  zipSync({ 'META-INF/container.xml': strToU8(container), 'score.xml': strToU8(text) });

export const rubricFiles = () => [
  ...rubrics.map((rubric) => utf8(JSON.stringify(rubricToStartFrom(rubric)))),
  utf8('{"basedOn":"steady","measures":{"timing-spread-share":{"secure":4,"nearly":9}}}'),
];

export const results = (): Uint8Array[] => [demo()];

// biome-ignore format: one event a line.
const shortMidi = Uint8Array.from([
  ...utf8('MThd'), 0, 0, 0, 6, 0, 0, 0, 1, 0, 96,
  ...utf8('MTrk'), 0, 0, 0, 12,
  0, 0x99, 38, 100,
  96, 0x99, 38, 0,
  0, 0xff, 0x2f, 0,
]);

/** A graded take's, and one note of format 0. */
export const midiFiles = () => [takeMidi(upgradeTakeResult(JSON.parse(textOf(demo()))))!, shortMidi];

export async function takeFile(count: number): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of takeFileChunks(Array.from({ length: count }, (_, i) => madeParcel(i + 1))))
    chunks.push(chunk);
  return Buffer.concat(chunks);
}

/** A library of three takes as one file. */
export async function libraryArchive(): Promise<Uint8Array> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-archive-'));
  const library = await openFolderLibrary(join(folder, 'own'));
  try {
    await fill(library);
    await archiveLibrary(library, join(folder, 'all.library.tar'));
    return readFileSync(join(folder, 'all.library.tar'));
  } finally {
    await library.close();
    rmSync(folder, { recursive: true });
  }
}

/** A recording as the page writes it while it comes. */
export function brokenOff(): Uint8Array {
  const head = {
    id: 'a',
    startedAt: '2026-03-09T17:00:00Z',
    sampleRate: 48_000,
    sheetText: 'RLR',
    name: 'A',
  };
  return Buffer.concat([
    encodeHead(head),
    encodeSamples(0, new Float32Array(96).fill(0.25)),
    encodeNote({ frame: 96, what: 'device-changed', facts: {} }),
    encodeSamples(128, new Float32Array(96).fill(-0.25)),
  ]);
}

/** What the page asks a folder's library. */
export const callMessages = (): Uint8Array[] =>
  [
    { name: 'listTakes', args: [{ player: 'p', limit: 50 }] },
    { name: 'keepTake', args: [{ audio: utf8('RIFF'), name: 'a.wav', parts: [utf8('a'), null] }] },
  ].map((call) => Buffer.concat([...packMessage(call)]));
