import { describe, expect, it } from 'vitest';
import { CommandFault } from '../../src/cli/command-fault.ts';
import { lineOptions, settingsFromOptions } from '../../src/cli/line-options.ts';
import { settingWords } from '../../src/core/exercise/line-settings.ts';

describe('settingsFromOptions', () => {
  it('reads every option as a sheet reads its settings', () => {
    expect(
      settingsFromOptions({ bpm: '110', times: 'x4', bar: '3', lead: 'changes', ratio: '8..16' }),
    ).toEqual({
      bpm: 110,
      repeats: 4,
      beatsInBar: 3,
      leadChange: true,
      ratioBand: { minDb: 8, maxDb: 16 },
    });
    expect(settingsFromOptions({})).toEqual({});
    expect(settingsFromOptions({ bpm: 'open' })).toEqual({ bpm: null });
  });

  it.each(lineOptions)('names --$name, what was typed and what to write', ({ name, setting }) => {
    expect(Object.keys(settingWords)).toContain(setting);
    for (const typed of ['', 'nonsense']) {
      expect(() => settingsFromOptions({ [name]: typed })).toThrow(CommandFault);
      expect(() => settingsFromOptions({ [name]: typed })).toThrow(
        new RegExp(`^--${name}( nonsense)? can't be understood\\. Write .*--${name} \\w.*\\.$`),
      );
    }
  });
});
