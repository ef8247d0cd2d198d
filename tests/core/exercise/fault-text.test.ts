import { describe, expect, it } from 'vitest';
import { faultText } from '../../../src/core/exercise/fault-text.ts';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';

function shown(text: string): string {
  const parsed = parseNotation(text);
  return parsed.ok ? 'no fault' : faultText(text, parsed.fault);
}

describe('faultText', () => {
  it('puts a caret under the place', () => {
    expect(shown('>RLR RXR')).toBe(
      [
        'Character 7: "X" means nothing here. Write R or L for a stroke, - for a rest, > before an accent, | between bars.',
        '  >RLR RXR',
        '        ^',
      ].join('\n'),
    );
  });

  it('shows the line of the fault, tabs as a space', () => {
    expect(shown('RLR\n\tRL>\nRLR').split('\n')).toEqual([
      'Line 2, character 4: This > has no stroke after it. Write R or L behind it, or take it out.',
      '   RL>',
      '     ^',
    ]);
  });

  it('shows the part of a long line around the place', () => {
    const [, line, caret] = shown(`${'RLR '.repeat(100)}RXR ${'RLR '.repeat(100)}`).split('\n');
    expect(line).toHaveLength(2 + 72 + 2);
    expect(line![caret!.indexOf('^')]).toBe('X');
  });

  it('lets no control or direction character through', () => {
    expect(shown('RLR \u001b[31m\u202e')).not.toMatch(/[^\P{C}\n]/u);
  });

  it('points out a dash that a word processor made', () => {
    expect(shown('R–R')).toContain('plain hyphen');
  });
});
