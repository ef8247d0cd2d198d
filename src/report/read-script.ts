import { readFile } from 'node:fs/promises';

/** The report's scripts have not been built. */
class ReportScriptMissing extends Error {
  readonly code = 'report-script-missing';
  constructor() {
    super('A script of the report is missing: run `npm run build`, which makes them in dist.');
    this.name = 'ReportScriptMissing';
  }
}

/** A built script: beside the built program, or in `dist` seen from the source. */
export async function readScript(file: string): Promise<string> {
  for (const place of [`./${file}`, `../../dist/${file}`]) {
    const text = await readFile(new URL(place, import.meta.url), 'utf8').catch(() => null);
    if (text !== null) return text;
  }
  throw new ReportScriptMissing();
}
