import { withoutComments } from './scan-imports.ts';
import { importedPath, type SourceTree } from './source-tree.ts';

const exported =
  /^export (?:declare )?(?:abstract )?(?:async )?(?:const|function\*?|type|interface|class|let) (\w+)/gm;
const bindings = /\b(?:import|export)\s+(?:type\s+)?([\w*{}\s,$]+?)\s+from\s*['"]([^'"]+)['"]/g;
const wholeModule = /\bimport\s*\(\s*['"]([^'"]+)['"]/g;

/**
 * Names that a file of the tree exports and no other file of it, nor of `others`, asks for: "path name". Files that are
 * imported as a whole count as used. `others` has paths beside those of the tree, such as `../tests/a.test.ts`.
 */
export function unusedExports(tree: SourceTree, others: SourceTree): string[] {
  const asked = new Map<string, Set<string>>();
  const ask = (imported: string, name: string) => {
    const path = imported.replace(/^\.\.\/src\//, '');
    asked.set(path, (asked.get(path) ?? new Set()).add(name));
  };
  for (const [path, source] of [...tree, ...others]) {
    const text = withoutComments(source);
    for (const [, names, target] of text.matchAll(bindings)) {
      const from = importedPath(path, target!);
      const listed = /\{(.*)\}/s.exec(names!)?.[1];
      if (listed === undefined && names!.includes('*')) ask(from, '*');
      for (const name of listed?.split(',') ?? [])
        ask(
          from,
          name
            .trim()
            .replace(/^type\s+/, '')
            .split(/\s+as\s+/)[0]!,
        );
    }
    for (const [, target] of text.matchAll(wholeModule)) ask(importedPath(path, target!), '*');
  }
  return [...tree].flatMap(([path, source]) => {
    const names = asked.get(path) ?? new Set();
    if (names.has('*')) return [];
    return [...withoutComments(source).matchAll(exported)]
      .map(([, name]) => name!)
      .filter((name) => !names.has(name))
      .map((name) => `${path} ${name}`);
  });
}
