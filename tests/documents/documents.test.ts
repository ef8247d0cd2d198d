import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { Command } from 'commander';
import { describe, expect, it } from 'vitest';
import { measures } from '../../src/core/measures/index.ts';
import { rubrics } from '../../src/core/scoring/rubrics/index.ts';
import { helpPage } from '../../src/page/build/help-pages.ts';
import { helpFiles } from '../../src/page/help/help-address.ts';

const root = resolve(import.meta.dirname, '../..');
const documents = [
  'README.md',
  'DEVELOPERS.md',
  'src/page/help/for-students.md',
  'src/page/help/for-teachers.md',
  'src/page/help/glossary.md',
  'src/core/measures/handbook.md',
  'src/core/scoring/scores.md',
];
const textOf = (path: string) => readFileSync(join(root, path), 'utf8');

/** Command lines in code: a command, what stands behind it. */
const lines = documents.flatMap((path) =>
  [...textOf(path).matchAll(/^npx evenhand (.+)$|`(?:npx )?evenhand ([^`]+)`/gm)].map(
    ([, block, inline]) => [path, (block ?? inline)!.replace(/ {2,}#.*$/, '')] as const,
  ),
);

/** The program's commands by name, as its list loads them. */
async function programCommands(): Promise<ReadonlyMap<string, Command>> {
  const listed = [
    ...textOf('src/main.ts').matchAll(
      /^ {2}'?([a-z-]+)'?: async \(\) =>\s+\(await import\('(.+?)'\)\)\.(\w+)\(\)/gm,
    ),
  ];
  const loaded = listed.map(async ([, name, path, make]) => {
    const module = (await import(join(root, 'src', path!))) as Record<string, () => Command>;
    return [name!, module[make!]!()] as const;
  });
  return new Map(await Promise.all(loaded));
}

/** Names of a command's options, and of those of the parts of it that a line names. */
function optionsOf(command: Command, words: readonly string[]): string[] {
  const part = command.commands.find((one) => one.name() === words[0]);
  const own = command.options.map(({ long }) => long ?? '');
  return part === undefined ? own : [...own, ...optionsOf(part, words.slice(1))];
}

describe('the documents', () => {
  it('have command lines to check', () => {
    expect(lines.length).toBeGreaterThan(30);
    const told = new Set(lines.map(([path]) => path));
    expect(told.has('src/page/help/for-teachers.md')).toBe(true);
  });

  it('name commands that there are, with options that they have', async () => {
    const commands = await programCommands();
    expect(commands.size).toBeGreaterThan(12);
    for (const [path, line] of lines) {
      const [name = '', ...words] = line.split(' ');
      const where = `${path}: evenhand ${line}`;
      const command = commands.get(name);
      expect(command, where).toBeDefined();
      const known = ['--help', ...optionsOf(command!, words)];
      for (const option of line.match(/(?<= )--[a-z-]+/g) ?? []) expect(known, where).toContain(option);
    }
  });

  it('link to files that there are, and to anchors that they have', () => {
    const pages = new Map<string, string>();
    const pageOf = (path: string) => {
      const known = pages.get(path) ?? helpPage('handbook.md', readFileSync(path, 'utf8'));
      pages.set(path, known);
      return known;
    };
    for (const path of documents) {
      // What stands in code is no link.
      const text = textOf(path).replace(/```[\s\S]*?```|`[^`]*`/g, '');
      for (const [, href] of text.matchAll(/\]\(([^)\s]+)\)/g)) {
        if (/^https?:/.test(href!)) continue;
        const [file = '', anchor] = href!.split('#');
        const to = file === '' ? join(root, path) : join(root, dirname(path), file);
        expect(existsSync(to), `${path}: ${href}`).toBe(true);
        if (anchor !== undefined) expect(pageOf(to), `${path}: ${href}`).toContain(`id="${anchor}"`);
      }
    }
  });

  it('name measures and rubrics that there are', () => {
    const known = new Set([...measures.map(({ id }) => id), ...rubrics.map(({ id }) => id)]);
    const named = lines.flatMap(([path, line]) => {
      const [, command, one] = /^(measures|rubric) ([a-z-]+)(?: |$)/.exec(line) ?? [];
      return command === undefined ? [] : [[`${path}: ${line}`, one!] as const];
    });
    expect(named.length).toBeGreaterThan(4);
    for (const [where, one] of named) expect(known.has(one), where).toBe(true);
  });

  it('quote what the program says of the demo take', () => {
    const said = textOf('reports/samples/demo.txt');
    const quoted = ['for-students', 'for-teachers'].flatMap((name) =>
      [...textOf(`src/page/help/${name}.md`).matchAll(/```text\n([\s\S]*?)```/g)].map(([, block]) => block!),
    );
    const ofTake = quoted.filter((block) => !block.startsWith('title:'));
    expect(ofTake).toHaveLength(2);
    for (const block of ofTake) expect(said).toContain(block);
  });
});

describe('a page of the help', () => {
  it('has every file of the list, with links that stay inside the help or are text', () => {
    for (const file of Object.keys(helpFiles)) {
      const path = documents.find((document) => document.endsWith(`/${file}`))!;
      const html = helpPage(file, textOf(path));
      expect(html.match(/<h1 /g), file).toHaveLength(1);
      for (const [, href] of html.matchAll(/href="([^"]*)"/g))
        expect(href).toMatch(/^#\/help\/[a-z-]+(\/[a-z0-9-]+)?$/);
      expect(html).not.toMatch(/<script|style=|<img/);
    }
  });

  it('leads to measures by their ids', () => {
    const html = helpPage('handbook.md', textOf('src/core/measures/handbook.md'));
    for (const { id } of measures) expect(html).toContain(`href="#/help/measures/${id}"`);
  });
});
