import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** The name under which the notices lie beside what was built. */
export const noticesFile = 'notices.txt';

/**
 * Name, licence and notice of every package that files of a build came from, as most licences ask for wherever their
 * code goes; for people to read.
 *
 * @example noticesOf(['/project/node_modules/commander/lib/command.js']) // 'commander 14.0.3, MIT\n\n(The MIT License) …'
 */
export function noticesOf(paths: Iterable<string>): string {
  const folders = new Set<string>();
  for (const path of paths) {
    const found = /^(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(
      path.replaceAll('\\', '/').replace(/^\0/, ''),
    );
    if (found !== null && existsSync(join(found[1]!, 'package.json'))) folders.add(found[1]!);
  }
  const notices = new Set([...folders].map(noticeOf).sort());
  return `${[...notices].join(`\n${'-'.repeat(80)}\n\n`)}\n`;
}

function noticeOf(folder: string): string {
  const about = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    readonly name: string;
    readonly version: string;
    readonly license?: string;
    readonly author?: string | { readonly name: string };
    readonly repository?: string | { readonly url: string };
  };
  const file = readdirSync(folder).find((name) => /^(licen[cs]e|copying|notice)/i.test(name));
  const { author = '', repository = '' } = about;
  const of = [
    typeof author === 'string' ? author : author.name,
    typeof repository === 'string' ? repository : repository.url,
  ];
  const text =
    file === undefined ? of.filter(Boolean).join('\n') : readFileSync(join(folder, file), 'utf8').trim();
  return `${about.name} ${about.version}, ${about.license ?? 'see below'}\n\n${text}\n`;
}

/** Puts the notices of all that the page is built from beside it; workers' builds are told by the same `paths`. */
export function pageNotices(paths: Set<string>, { write }: { readonly write: boolean }): Plugin {
  return {
    name: 'notices',
    apply: 'build',
    generateBundle() {
      for (const id of this.getModuleIds()) paths.add(id);
      if (write) this.emitFile({ type: 'asset', fileName: noticesFile, source: noticesOf(paths) });
    },
  };
}
