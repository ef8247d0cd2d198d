import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { sha256Hex } from '../sha256-hex.ts';
import { type ManifestFile, type ManifestTake, takeFileVersion } from './take-file-manifest.ts';
import { plainWords } from './take-file-name.ts';
import type { TakeParcel } from './take-parcel.ts';

/**
 * Writes takes as one take file, chunk by chunk, so that only one take is held at a time. A recording that several
 * takes share is written once. The same takes give the same bytes.
 *
 * @example for await (const chunk of takeFileChunks([parcel])) file.write(chunk);
 */
export async function* takeFileChunks(
  parcels: Iterable<TakeParcel> | AsyncIterable<TakeParcel>,
): AsyncGenerator<Uint8Array, void> {
  const chunks: Uint8Array[] = [];
  let failure: Error | null = null;
  const zip = new Zip((error, chunk) => {
    if (error !== null) failure ??= error;
    else chunks.push(chunk);
  });
  const add = async (path: string, bytes: Uint8Array, day: string, packed = true): Promise<ManifestFile> => {
    const file = packed ? new ZipDeflate(path, { level: 6 }) : new ZipPassThrough(path);
    file.mtime = noonOf(day);
    zip.add(file);
    file.push(bytes, true);
    if (failure !== null) throw failure;
    return { path, bytes: bytes.length, sha256: await sha256Hex(bytes) };
  };
  const takes: ManifestTake[] = [];
  const audioOf = new Map<string, ManifestFile>();
  for await (const parcel of parcels) {
    const folder = folderName(takes.length + 1, parcel);
    const { audio, day, details, sheetText, result, remarks } = parcel;
    let audioFile: ManifestFile | null = null;
    if (audio !== null) {
      const hash = await sha256Hex(audio.bytes);
      audioFile =
        audioOf.get(hash) ??
        (await add(`${folder}/recording.${ending(audio.name)}`, audio.bytes, day, false));
      audioOf.set(hash, audioFile);
    }
    const text = (name: string, contents: string) =>
      add(`${folder}/${name}`, new TextEncoder().encode(contents), day);
    const { player, recordedAt, part, tags, gradedWith, setUp, guess, recordingFacts } = parcel;
    takes.push({
      player,
      recordedAt,
      day,
      part,
      ...details,
      tags: [...tags],
      gradedWith,
      setUp,
      guess,
      recordingFacts,
      files: {
        audio: audio === null || audioFile === null ? null : { ...audioFile, name: audio.name },
        sheet: await text('exercise.sheet', sheetText),
        result: await text('result.json', JSON.stringify(result)),
        remarks: await text('remarks.json', JSON.stringify(remarks, null, 2)),
      },
    });
    yield* chunks.splice(0);
  }
  const manifest = { format: 'evenhand-take-file', version: takeFileVersion, takes };
  const last = takes.at(-1)?.day ?? '2000-01-01';
  await add('manifest.json', new TextEncoder().encode(JSON.stringify(manifest, null, 2)), last);
  zip.end();
  if (failure !== null) throw failure;
  yield* chunks.splice(0);
}

/** A take file as a whole, in memory. */
export async function writeTakeFile(parcels: Iterable<TakeParcel>): Promise<Uint8Array<ArrayBuffer>> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of takeFileChunks(parcels)) chunks.push(chunk);
  const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/** ZIP keeps local times from 1980 to 2099. */
function noonOf(day: string): Date {
  const [year = 2000, month = 1, date = 1] = day.split('-').map(Number);
  return new Date(Math.min(2099, Math.max(1980, year)), month - 1, date, 12);
}

function folderName(number: number, { day, result }: TakeParcel): string {
  const title = result.sheet.title || result.sheet.lines[0]?.label || 'take';
  return [String(number).padStart(2, '0'), day, plainWords(title)].filter((part) => part !== '').join('-');
}

function ending(name: string): string {
  return /\.([A-Za-z0-9]{1,5})$/.exec(name)?.[1]?.toLowerCase() ?? 'audio';
}
