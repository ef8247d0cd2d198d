import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { reportFonts } from '../../report/report-fonts.ts';

/** Scripts and type that reports and pages on several takes hold. */
export interface ReportPartTexts {
  readonly clientScript: string;
  readonly listeningScript: string;
  readonly filesScript: string;
  readonly weeksScript: string;
  readonly fontFaces: string;
}

/** The texts that reports are made of, from the folder of the built scripts. */
export async function readReportParts(built: string): Promise<ReportPartTexts> {
  const read = (file: string) => readFile(join(built, file), 'utf8');
  const [clientScript, listeningScript, filesScript, weeksScript, fontFaces] = await Promise.all([
    read('report-client.js'),
    read('report-listening.js'),
    read('report-files.js'),
    read('report-weeks.js'),
    reportFonts(),
  ]);
  return { clientScript, listeningScript, filesScript, weeksScript, fontFaces };
}

const id = 'virtual:report-parts';

/** Gives the page a module with the texts of a report's parts, which loads when the first report is made. */
export function reportParts(built: string): Plugin {
  return {
    name: 'report-parts',
    resolveId: (source) => (source === id ? `\0${id}` : undefined),
    async load(source) {
      if (source !== `\0${id}`) return undefined;
      const parts = await readReportParts(built);
      return Object.entries(parts)
        .map(([name, text]) => `export const ${name} = ${JSON.stringify(text)};`)
        .join('\n');
    },
  };
}
