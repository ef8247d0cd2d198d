import { strToU8, unzipSync, zipSync } from 'fflate';
import { tarEnd, tarHeader, tarPadding } from '../../src/library/backup/tar-archive.ts';
import { compressed, container, score, takeFile, utf8 } from './good-files.ts';
import type { HostileFile } from './hostile-files.ts';

const zeros = (mebibytes: number) => new Uint8Array(mebibytes * 2 ** 20);
const line = '>RLR >LRL ; times: 4';

/** The archive's directory says that a file of `from` bytes has `to`. */
function claiming(archive: Uint8Array, from: number, to: number): Uint8Array {
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  for (let at = 0; at < archive.length - 4; at++)
    if (view.getUint32(at, true) === from) view.setUint32(at, to, true);
  return archive;
}

/**
 * An archive of one packed file of zeros whose directory names it again and again (PKWARE, APPNOTE.TXT 4.3): a small
 * archive that unpacks to all of them.
 */
function oneNamedOften(files: Record<string, Uint8Array>, name: string, times: number): Uint8Array {
  const archive = zipSync(files);
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  const end = archive.length - 22;
  const from = view.getUint32(end + 16, true);
  let entry = from;
  let length = 0;
  for (; ; entry += length) {
    const nameLength = view.getUint16(entry + 28, true);
    length = 46 + nameLength + view.getUint16(entry + 30, true) + view.getUint16(entry + 32, true);
    if (new TextDecoder().decode(archive.subarray(entry + 46, entry + 46 + nameLength)) === name) break;
  }
  const again = archive.slice(entry, entry + length);
  const own = archive.slice(end);
  const ownView = new DataView(own.buffer);
  const count = view.getUint16(end + 10, true) + times;
  for (const at of [8, 10]) ownView.setUint16(at, count, true);
  ownView.setUint32(12, view.getUint32(end + 12, true) + times * length, true);
  return Buffer.concat([archive.subarray(0, end), ...Array.from({ length: times }, () => again), own]);
}

const withFile = (name: string, content: Uint8Array) => async () =>
  zipSync({ ...unzipSync(await takeFile(1)), [name]: content });

/** A file whose entry says that it is a symbolic link (Unix mode 0o120777 in its external attributes). */
async function linked(): Promise<Uint8Array> {
  const link = strToU8('/etc/passwd');
  return zipSync({ ...unzipSync(await takeFile(1)), out: [link, { os: 3, attrs: 0o120777 * 2 ** 16 }] });
}

const tar = (files: readonly (readonly [name: string, bytes: Uint8Array, size?: number])[]) =>
  Buffer.concat([
    ...files.flatMap(([name, bytes, size = bytes.length]) => [
      tarHeader(name, size, 0),
      bytes,
      tarPadding(bytes.length),
    ]),
    tarEnd(),
  ]);
const about = utf8('{"format":"evenhand-library","version":1}');

/** Archives made to write elsewhere, or to fill memory or disk. */
export const hostileArchives: readonly HostileFile[] = [
  ...['../outside.txt', '/etc/passwd', 'a/../../b', 'C:\\Windows\\x', '..\\x', './/x', 'a\u0000.wav'].map(
    (name) => ({
      parser: 'take files',
      name: `a file called ${JSON.stringify(name)}`,
      bytes: withFile(name, utf8('x')),
    }),
  ),
  { parser: 'take files', name: 'a link out of the folder', bytes: linked, harmless: true },
  {
    parser: 'take files',
    name: '64 MiB of zeros for a list of takes',
    bytes: withFile('manifest.json', zeros(64)),
  },
  {
    parser: 'take files',
    name: '64 MiB of zeros that claim to be 1 kB',
    bytes: async () => claiming(await withFile('manifest.json', zeros(64))(), 64 * 2 ** 20, 1024),
  },
  {
    parser: 'take files',
    name: 'one packed file named 60,000 times',
    bytes: async () => oneNamedOften({ ...unzipSync(await takeFile(1)), zeros: zeros(8) }, 'zeros', 60_000),
  },
  {
    parser: 'take files',
    name: 'a list of takes 100,000 lists deep',
    bytes: withFile('manifest.json', utf8('['.repeat(100_000) + ']'.repeat(100_000))),
  },
  {
    parser: 'take files',
    name: 'an archive in an archive',
    bytes: async () => zipSync({ 'a.zip': await takeFile(1) }),
  },
  {
    parser: 'compressed scores',
    name: '64 MiB of zeros for a score',
    bytes: async () => zipSync({ 'META-INF/container.xml': strToU8(container), 'score.xml': zeros(64) }),
  },
  {
    parser: 'compressed scores',
    name: '64 MiB of zeros that claim to be 1 kB',
    bytes: async () =>
      claiming(
        zipSync({ 'META-INF/container.xml': strToU8(container), 'score.xml': zeros(64) }),
        64 * 2 ** 20,
        1024,
      ),
  },
  {
    parser: 'compressed scores',
    name: 'one score of 15 MiB named 60,000 times',
    bytes: async () =>
      oneNamedOften(
        { 'META-INF/container.xml': strToU8(container), 'score.xml': zeros(15) },
        'score.xml',
        60_000,
      ),
  },
  {
    parser: 'compressed scores',
    name: '15 MiB of zeros for the container',
    bytes: async () => zipSync({ 'META-INF/container.xml': zeros(15), 'score.xml': strToU8(score(line)) }),
  },
  {
    parser: 'compressed scores',
    name: 'a container that names a file outside',
    bytes: async () =>
      zipSync({
        'META-INF/container.xml': strToU8(container.replace('score.xml', '../../etc/passwd')),
        'score.xml': strToU8(score(line)),
      }),
  },
  {
    parser: 'compressed scores',
    name: 'a score in a score',
    bytes: async () => compressed(`${compressed(score(line))}`),
  },
  ...['../takes.sqlite', '/etc/passwd', 'audio/../../x'].map((name) => ({
    parser: 'library archives',
    name: `a file called ${JSON.stringify(name)} and no tables`,
    bytes: async () =>
      tar([
        ['library.json', about],
        [name, utf8('x')],
      ]),
  })),
  {
    parser: 'library archives',
    name: 'tables of 8 GiB, as it says',
    bytes: async () =>
      tar([
        ['library.json', about],
        ['takes.sqlite', new Uint8Array(512), 8 * 2 ** 30 - 1],
      ]),
  },
  {
    parser: 'library archives',
    name: 'tables of no bytes',
    bytes: async () =>
      tar([
        ['library.json', about],
        ['takes.sqlite', new Uint8Array()],
      ]),
  },
  {
    parser: 'library archives',
    name: 'tables that are 64 MiB of zeros',
    bytes: async () =>
      tar([
        ['library.json', about],
        ['takes.sqlite', zeros(64)],
      ]),
  },
];
