import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hanging, padded, printable, textStyles, wrapped } from '../../src/cli/text-layout.ts';

describe('printable', () => {
  it('takes out what could steer a terminal or turn the reading direction', () => {
    expect(printable('\u001b[31mred\u0007\r\nline\u202Eback\u2028 x ')).toBe('[31mredlineback x');
    expect(printable('Übung № 1 – Wirbel')).toBe('Übung № 1 – Wirbel');
  });
});

describe('wrapped', () => {
  it('breaks between words and keeps every character but the blanks', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), fc.integer({ min: 1, max: 40 }), (text, width) => {
        const lines = wrapped(text, width);
        return (
          lines.join('').replaceAll(' ', '') === text.replaceAll(' ', '') &&
          lines.every((l) => [...l].length <= width)
        );
      }),
    );
    expect(wrapped('three in a row', 8)).toEqual(['three in', 'a row']);
  });
});

describe('hanging', () => {
  it('indents the lines that follow as far as the mark', () => {
    expect(hanging('1. ', 'one two three', 10)).toEqual(['1. one two', '   three']);
  });
});

describe('padded', () => {
  it('fills up on either side and never cuts', () => {
    expect([padded('ab', 4), padded('ab', 4, 'end'), padded('abcdef', 4)]).toEqual([
      'ab  ',
      '  ab',
      'abcdef',
    ]);
  });
});

describe('textStyles', () => {
  it('leaves text as it is without colour and closes what it opens with it', () => {
    expect(textStyles(false).strong('x')).toBe('x');
    expect(textStyles(true).strong('x')).toBe('\u001b[1mx\u001b[22m');
  });
});
