import { describe, expect, it } from 'vitest';
import { screenOf } from '../../src/cli/screen.ts';

describe('screenOf', () => {
  it.each([
    ['a wide terminal', { isTTY: true, columns: 120 }, {}, { color: true, width: 100 }],
    ['a narrow one', { isTTY: true, columns: 40 }, {}, { color: true, width: 56 }],
    [
      'one that wants no colour',
      { isTTY: true, columns: 90 },
      { NO_COLOR: '1' },
      { color: false, width: 90 },
    ],
    ['one that says nothing of its width', { isTTY: true }, {}, { color: true, width: 80 }],
    ['a pipe', { columns: 120 }, {}, { color: false, width: 80 }],
  ])('is that of %s', (_, terminal, environment, screen) => {
    expect(screenOf(terminal, environment)).toEqual(screen);
  });
});
