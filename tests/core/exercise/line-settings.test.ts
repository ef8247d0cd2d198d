import { describe, expect, it } from 'vitest';
import { readSetting, type SettingWord } from '../../../src/core/exercise/line-settings.ts';

describe('readSetting', () => {
  it.each<[SettingWord, string, object]>([
    ['ratio', '8 to 16 dB', { ratioBand: { minDb: 8, maxDb: 16 } }],
    ['ratio', '7.5..12', { ratioBand: { minDb: 7.5, maxDb: 12 } }],
    ['ratio', '6–9dB', { ratioBand: { minDb: 6, maxDb: 9 } }],
    ['ratio', 'Any', { ratioBand: null }],
    ['tempo', '110', { bpm: 110 }],
    ['tempo', ' 92,5 bpm ', { bpm: 92.5 }],
    ['tempo', 'open', { bpm: null }],
    ['times', 'x2', { repeats: 2 }],
    ['times', '4 times', { repeats: 4 }],
    ['bar', '3 beats', { beatsInBar: 3 }],
    ['rest', '0', { restBeats: 0 }],
    ['lead', 'changes', { leadChange: true }],
    ['lead', 'Stays', { leadChange: false }],
    ['name', ' Accent on two ', { label: 'Accent on two' }],
  ])('reads %s: %s', (word, text, settings) => {
    expect(readSetting(word, text)).toEqual({ ok: true, settings });
  });

  it.each<[SettingWord, string, string]>([
    ['tempo', '', 'setting-empty'],
    ['tempo', 'fast', 'setting-unreadable'],
    ['tempo', '-110', 'setting-unreadable'],
    ['tempo', '1e9', 'setting-unreadable'],
    ['tempo', '0', 'setting-out-of-range'],
    ['tempo', '501', 'setting-out-of-range'],
    ['times', '0', 'setting-out-of-range'],
    ['times', '2.5', 'setting-not-whole'],
    ['bar', '33', 'setting-out-of-range'],
    ['rest', '4,5', 'setting-not-whole'],
    ['lead', 'maybe', 'setting-unreadable'],
    ['ratio', '16 to 8', 'ratio-upside-down'],
    ['ratio', '8 to 61', 'setting-out-of-range'],
    ['ratio', '8', 'setting-unreadable'],
    ['name', 'n'.repeat(201), 'name-too-long'],
  ])('refuses %s: %s', (word, text, code) => {
    expect(readSetting(word, text)).toMatchObject({ ok: false, code });
  });
});
