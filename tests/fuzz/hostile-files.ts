import { encodeHead, encodeSamples } from '../../src/page/recording/kept/chunk-file.ts';
import { results, rubricFiles, textOf, utf8 } from './good-files.ts';
import { hostileArchives } from './hostile-archives.ts';
import { hostileScores } from './hostile-scores.ts';

/** A file made to harm whoever reads it. */
export interface HostileFile {
  /** Which of the parsers reads it. */
  readonly parser: string;
  readonly name: string;
  readonly bytes: () => Promise<Uint8Array>;
  /** May be used: what is wrong in it is passed over. */
  readonly harmless?: boolean;
}

const deep = (count: number) => '['.repeat(count) + ']'.repeat(count);
const text = (parser: string, name: string, make: () => string, harmless = false): HostileFile => ({
  parser,
  name,
  harmless,
  bytes: async () => utf8(make()),
});

const withEntry = (json: string, entry: string) => `{${entry},${json.trimStart().slice(1)}`;
const rubric = () => textOf(rubricFiles()[0]!);
const result = () => textOf(results()[0]!);

const number32 = (value: number) => [value >>> 24, (value >>> 16) & 255, (value >>> 8) & 255, value & 255];
const midi = (tracks: readonly (readonly number[])[], division = 96) =>
  Buffer.concat([
    utf8('MThd'),
    Uint8Array.from([
      ...number32(6),
      0,
      1,
      tracks.length >> 8,
      tracks.length & 255,
      division >> 8,
      division & 255,
    ]),
    ...tracks.flatMap((events) => [
      utf8('MTrk'),
      Uint8Array.from(number32(events.length)),
      Uint8Array.from(events),
    ]),
  ]);
const end = [0, 0xff, 0x2f, 0];
const tempo = [1, 0xff, 0x51, 3, 7, 0xa1, 0x20];
const note = [1, 0x99, 38, 90];
const many = (event: readonly number[], count: number) => Array.from({ length: count }, () => event).flat();

const head = { id: 'a', startedAt: '2026-03-09T17:00:00Z', sampleRate: 48_000, sheetText: 'RLR', name: 'A' };
const rate = (sampleRate: number, frames: readonly number[]) => async () =>
  Buffer.concat([
    encodeHead({ ...head, sampleRate }),
    ...frames.map((frame) => encodeSamples(frame, new Float32Array(1))),
  ]);

const message = (json: string) => async () =>
  Buffer.concat([Uint8Array.from(number32(json.length).toReversed()), utf8(json)]);

export const hostileFiles: readonly HostileFile[] = [
  text('notation', 'ten million accents', () => '>'.repeat(10_000_000)),
  text('notation', 'a million grace notes', () => `${'l'.repeat(1_000_000)}R`),
  text('notation', 'a million bar lines', () => 'R|'.repeat(1_000_000)),
  text('sheets', 'a million lines', () => 'RLR\n'.repeat(1_000_000)),
  text('sheets', 'one line of ten million signs', () => `title: ${'a'.repeat(10_000_000)}`),
  text('sheets', '150,000 semicolons', () => `RLR ${';'.repeat(150_000)}`, true),
  text('sheets', 'the longest lines, as often as may be', () =>
    `${'RLR '.repeat(400)} ; times: 1000\n`.repeat(100),
  ),
  text('sheets', 'repeats past counting', () => `RLR ; times: ${'9'.repeat(400)}`),
  text('sheets', 'nothing but zero bytes', () => '\u0000'.repeat(1_000_000)),
  ...hostileScores,
  text('rubrics', '100,000 lists in each other', () => deep(100_000)),
  text('rubrics', 'a title of 100,000 lists in each other', () =>
    withEntry(rubric(), `"title":${deep(100_000)}`),
  ),
  text('rubrics', 'a title of ten million signs', () => `{"basedOn":"${'x'.repeat(10_000_000)}"}`),
  text('rubrics', 'an entry called __proto__', () => withEntry(rubric(), '"__proto__":{"weight":1}')),
  text(
    'rubrics',
    '100,000 unknown measures',
    () =>
      `{"basedOn":"steady","measures":{${Array.from({ length: 100_000 }, (_, i) => `"m${i}":{"weight":1}`).join()}}}`,
  ),
  text('results of takes', '100,000 lists in each other', () => deep(100_000)),
  text('results of takes', 'lists in each other for an entry', () =>
    withEntry(result(), `"x":${deep(100_000)}`),
  ),
  text('results of takes', '500,000 nothings for strokes', () =>
    result().replace(/"strokes": ?\[/, (at) => `${at}${'null,'.repeat(500_000)}`),
  ),
  text('results of takes', 'a version past counting', () =>
    result().replace(/"version": ?\d+/, '"version":1e300'),
  ),
  {
    parser: 'MIDI files',
    name: '150,000 changes of tempo, as many notes',
    harmless: true,
    bytes: async () =>
      midi([
        [...many(tempo, 150_000), ...end],
        [...many(note, 150_000), ...end],
      ]),
  },
  {
    parser: 'MIDI files',
    name: '65,535 tracks',
    bytes: async () => midi(Array.from({ length: 65_535 }, () => end)),
  },
  {
    parser: 'MIDI files',
    name: 'a step that never ends',
    bytes: async () => midi([many([0xff], 1_000_000)]),
  },
  {
    parser: 'MIDI files',
    name: '500,000 notes',
    harmless: true,
    bytes: async () => midi([[...many(note, 500_000), ...end]]),
  },
  {
    parser: 'MIDI files',
    name: 'a text of 4 GiB, as it says',
    bytes: async () => midi([[0, 0xff, 1, 0x8f, 0xff, 0xff, 0xff, 0x7f, 65, ...end]]),
  },
  {
    parser: 'recordings that broke off',
    name: '100 samples, two minutes apart',
    harmless: true,
    bytes: rate(
      48_000,
      Array.from({ length: 100 }, (_, i) => i * 119 * 48_000),
    ),
  },
  { parser: 'recordings that broke off', name: 'a trillion samples a second', bytes: rate(1e12, [0, 1e14]) },
  { parser: 'calls of the page', name: '100,000 lists in each other', bytes: message(deep(100_000)) },
  {
    parser: 'calls of the page',
    name: 'a call of 4 GiB, as it says',
    bytes: async () => Uint8Array.from([0xff, 0xff, 0xff, 0xff, 0x7b, 0x7d]),
  },
  ...hostileArchives,
];
