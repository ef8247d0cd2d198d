import { checked, readJson } from './checked-json.ts';
import { TakeFileError } from './take-file-fault.ts';
import { takeFileLimits } from './take-file-limits.ts';
import { type TakeFileManifest, takeFileManifestSchema, takeFileVersion } from './take-file-manifest.ts';
import { unpackEntry } from './unpack-entry.ts';
import type { ZipEntry } from './zip-entries.ts';

/** The list of takes of an archive; throws `TakeFileError` where it is missing, can't be read or is too new. */
export function readManifest(bytes: Uint8Array, entries: ReadonlyMap<string, ZipEntry>): TakeFileManifest {
  const entry = entries.get('manifest.json');
  if (entry === undefined) throw new TakeFileError('no-manifest');
  const value = readJson(unpackEntry(bytes, entry, takeFileLimits.manifestBytes), 'manifest-unreadable');
  const { format, version } = (value ?? {}) as { format?: unknown; version?: unknown };
  if (format === 'evenhand-take-file' && typeof version === 'number' && version > takeFileVersion)
    throw new TakeFileError('manifest-newer', { version });
  const manifest = checked(takeFileManifestSchema, value, 'manifest-unreadable');
  if (manifest.takes.length > takeFileLimits.takes)
    throw new TakeFileError('too-many-files', { files: manifest.takes.length, limit: takeFileLimits.takes });
  checkNamedOnce(manifest);
  return manifest;
}

/** A file named by many takes would be unpacked and read as often; only a recording may be shared. */
function checkNamedOnce({ takes }: TakeFileManifest): void {
  const paths = takes.flatMap(({ files: { sheet, result, remarks } }) => [
    sheet.path,
    result.path,
    remarks.path,
  ]);
  if (new Set(paths).size < paths.length)
    throw new TakeFileError('manifest-unreadable', { reason: 'two takes name the same file' });
}
