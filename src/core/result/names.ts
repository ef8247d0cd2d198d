import { measureNames } from './measure-names.ts';

/** Measures for readers of papers: written to files, left out of tables that people read. */
const forExportAlone: readonly string[] = ['npvi', 'lag-one'];

/** Whether a measure is only written to files, since no teacher acts on it. */
export const isForExport = (id: string): boolean => forExportAlone.includes(id);

/** Names of a rubric's dimensions. */
export const dimensionNames: Readonly<Record<string, string>> = {
  evenness: 'Evenness',
  shape: 'Shape of the beat',
  dynamics: 'Accents and taps',
  hands: 'Hands',
  steadiness: 'Tempo',
  completeness: 'Every stroke there',
};

/** Words for a score's place. */
export const scoreWords = { secure: 'secure', nearly: 'nearly there', 'not-yet': 'not yet' } as const;

const spelledOut = (id: string) => id.charAt(0).toUpperCase() + id.slice(1).replaceAll('-', ' ');

export const measureName = (id: string): string => measureNames[id]?.name ?? spelledOut(id);
export const dimensionName = (id: string): string => dimensionNames[id] ?? spelledOut(id);

/** Names of measures given as ids with commas between them, each name once, as part of a sentence. */
export function measureList(ids: string): string {
  return [...new Set(ids.split(',').map((id) => measureName(id).toLowerCase()))].join(', ');
}
