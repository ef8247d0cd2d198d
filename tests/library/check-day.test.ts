import { expect, it } from 'vitest';
import { checkDay } from '../../src/library/check-day.ts';
import { LibraryFault } from '../../src/library/library-fault.ts';

it('knows days from what only looks like one', () => {
  for (const day of ['2026-03-09', '2024-02-29', '0001-01-01', '9999-12-31']) checkDay('Day', day);
  for (const text of ['2026-02-29', '2026-13-01', '2026-3-9', '09.03.2026', '2026-03-09T10:00', '', 'today'])
    expect(() => checkDay('Day', text), text).toThrow(LibraryFault);
});
