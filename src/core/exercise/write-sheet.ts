import { longestBar } from './bars.ts';
import { findExercise } from './catalogue.ts';
import { limits } from './limits.ts';
import { plainSettings, type SettingWord } from './line-settings.ts';
import { plainLabel } from './plain-label.ts';
import type { Sheet, SheetLine } from './sheet.ts';
import { type HeadingWord, noteCharacters } from './sheet-headings.ts';

/** One line of text, as long as a name may be, quoted where the sheet would read it otherwise. */
function textValue(text: string, most: number = limits.nameCharacters): string {
  const flat = [...text.replace(/[\s\p{Cc}]+/gu, ' ').trim()].slice(0, most).join('').trim();
  return /[;#"]/.test(flat) ? `"${flat.replaceAll('"', '""')}"` : flat;
}

type Written = ReadonlyMap<SettingWord, string>;

/** A line's settings as written, the plain ones left out. Bar lines say the length of their bars themselves. */
function settingsOf(line: SheetLine): Written {
  const { bpm, repeats, beatsInBar, restBeats, leadChange, ratioBand } = line;
  const settings = new Map<SettingWord, string>();
  if (bpm !== plainSettings.bpm) settings.set('tempo', `${bpm}`);
  if (repeats !== plainSettings.repeats) settings.set('times', `${repeats}`);
  if (beatsInBar !== (longestBar(line.beats) ?? plainSettings.beatsInBar))
    settings.set('bar', `${beatsInBar}`);
  if (restBeats !== plainSettings.restBeats) settings.set('rest', `${restBeats}`);
  if (leadChange) settings.set('lead', 'changes');
  if (ratioBand !== null) settings.set('ratio', `${ratioBand.minDb} to ${ratioBand.maxDb} dB`);
  return settings;
}

/**
 * Writes a sheet as text that `parseSheet` reads back: settings that all lines share once at the top, the others
 * in their lines, plain ones not at all. Titles and names lose line breaks, control characters and what goes past
 * 200 characters. A line whose id isn't the catalogue's is written as notation.
 *
 * @example writeSheet(sheet) // 'title: Off the beat\ntempo: 110\n\nRL>R LR>L ; times: 8\n'
 */
export function writeSheet(sheet: Sheet): string {
  const settings = sheet.lines.map(settingsOf);
  const barred = sheet.lines.some((line) => longestBar(line.beats) !== null);
  const shared = [...(settings[0] ?? [])].filter(
    ([word, value]) => settings.every((one) => one.get(word) === value) && !(word === 'bar' && barred),
  );
  const sharedWords = new Set(shared.map(([word]) => word));
  const written = ([word, value]: readonly [SettingWord, string]) => `${word}: ${value}`;

  const { player = '', due = null, note = '' } = sheet.assigned ?? {};
  const headings: readonly (readonly [HeadingWord, string])[] = [
    ['title', textValue(sheet.title)],
    ['for', textValue(player)],
    ['due', due ?? ''],
    ['note', textValue(note, noteCharacters)],
  ];
  const said = headings.filter(([, text]) => text !== '').map(([word, text]) => `${word}: ${text}`);
  const head = [...said, ...shared.map(written)];
  const body = sheet.lines.map((line, index) => {
    const exercise = findExercise(line.id)?.notation === line.notation ? line.id : line.notation;
    const own = [...settings[index]!].filter(([word]) => !sharedWords.has(word)).map(written);
    const label = textValue(line.label);
    const plain = label === '' || label === textValue(plainLabel(line.id, line.notation));
    return [exercise, ...own, ...(plain ? [] : [`name: ${label}`])].join(' ; ');
  });
  return `${[...head, ...(head.length > 0 ? [''] : []), ...body].join('\n')}\n`;
}
