import { expect, it } from 'vitest';
import { defaultLibraryFolder } from '../../src/library/default-library-folder.ts';

const on = (platform: string, environment = {}) =>
  defaultLibraryFolder({ platform, home: '/home/mirelle', environment });

// XDG Base Directory Specification 0.8: $HOME/.local/share where XDG_DATA_HOME is unset or empty; relative paths are
// invalid and ignored.
it('follows the platform', () => {
  expect(on('linux')).toBe('/home/mirelle/.local/share/evenhand');
  expect(on('linux', { XDG_DATA_HOME: '/data' })).toBe('/data/evenhand');
  expect(on('linux', { XDG_DATA_HOME: '' })).toBe('/home/mirelle/.local/share/evenhand');
  expect(on('linux', { XDG_DATA_HOME: 'relative' })).toBe('/home/mirelle/.local/share/evenhand');
  expect(on('darwin')).toBe('/home/mirelle/Library/Application Support/Evenhand');
  expect(on('win32', { LOCALAPPDATA: '/local' })).toBe('/local/Evenhand');
});
