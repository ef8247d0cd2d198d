import { join } from 'node:path';

/** What the place of a library depends on. */
interface Surroundings {
  readonly platform: string;
  readonly home: string;
  readonly environment: Readonly<Record<string, string | undefined>>;
}

/**
 * Where a library lies unless told otherwise: the platform's folder for a program's data. On Linux and alike that is
 * the XDG Base Directory Specification's `XDG_DATA_HOME` (an absolute path, else ignored), on a Mac
 * `Library/Application Support`, on Windows `%LOCALAPPDATA%`.
 *
 * @example defaultLibraryFolder({ platform: 'linux', home: '/home/mirelle', environment: {} })
 * // '/home/mirelle/.local/share/evenhand'
 */
export function defaultLibraryFolder({ platform, home, environment }: Surroundings): string {
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Evenhand');
  if (platform === 'win32')
    return join(environment.LOCALAPPDATA || join(home, 'AppData', 'Local'), 'Evenhand');
  const data = environment.XDG_DATA_HOME;
  return join(data?.startsWith('/') ? data : join(home, '.local', 'share'), 'evenhand');
}
