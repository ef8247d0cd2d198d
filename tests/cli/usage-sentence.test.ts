import { describe, expect, it } from 'vitest';
import { usageSentence } from '../../src/cli/usage-sentence.ts';

describe('usageSentence', () => {
  it('gives the example of its comment', () => {
    expect(usageSentence("error: unknown option '--bmp'\n(Did you mean --bpm?)\n", 'evenhand grade')).toBe(
      "Unknown option '--bmp'. Did you mean --bpm? `evenhand grade --help` shows what there is.\n",
    );
  });

  it.each([
    [
      "too many arguments for 'grade'. Expected 1 argument but got 2.",
      '2 names stand behind the command, which takes 1. Put a name with spaces in quotes.',
    ],
    ["missing required argument 'take'", 'What is missing behind the command is its <take>.'],
    ["required option '--sheet <file>' not specified", 'This command needs --sheet <file>. Add it.'],
    [
      "option '--exercise <text>' argument missing",
      '--exercise has nothing behind it. Write it as --exercise <text>.',
    ],
    ["unknown command 'garde'", "Unknown command 'garde'."],
  ])('says in trade words: %s', (said, sentence) => {
    expect(usageSentence(`error: ${said}\n`, 'evenhand grade')).toBe(
      `${sentence} \`evenhand grade --help\` shows what there is.\n`,
    );
  });

  it("leaves a command's own words as they are", () => {
    expect(usageSentence('No exercise fits.\n', 'evenhand exercises')).toBe('No exercise fits.\n');
  });
});
