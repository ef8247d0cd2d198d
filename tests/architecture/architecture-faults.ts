import { findCircle } from './find-circle.ts';
import { scanImports, withoutComments } from './scan-imports.ts';
import { importedPath, type SourceTree } from './source-tree.ts';

/** Lower first. A file imports from its own folder and from lower levels. */
const levels = [
  ['core'],
  ['formats', 'charts'],
  ['report'],
  ['library'],
  ['page', 'server'],
  ['cli'],
  ['main.ts'],
];

/** Inside core: a file imports from its own level, too, as long as the folders make no circle. */
const coreLevels = [
  ['signal', 'stats', 'exercise', 'result'],
  ['onsets', 'click', 'click-track'],
  ['alignment'],
  ['recording-check', 'measures'],
  ['scoring'],
  ['grading'],
  ['grade-take.ts', 'grade-notes.ts'],
  ['session'],
  ['progress'],
];

const corePackages = ['fft.js', 'meyda', 'typebox'];

/** What would make core's results depend on more than its arguments. */
const impure = /\bMath\.random\b|\bDate\.now\b|\bnew Date\(\s*\)|\bperformance\.now\b|\bglobalThis\b/;

/** Files that ask the package which version it is. */
const readsManifest = ['main.ts', 'library/program-version.ts'];

const mostLines = 200;
const folderName = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const fileName = /^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.d)?\.[a-z0-9]+$/;

/**
 * Everything in the tree of src that breaks a rule, one sentence each. `longFiles` gives the reason why a file may
 * be longer than 200 lines.
 */
export function architectureFaults(tree: SourceTree, longFiles: Readonly<Record<string, string>>): string[] {
  return [
    ...[...tree].flatMap(([path, source]) => importFaults(path, source, tree)),
    ...circleFaults(tree),
    ...[...tree].flatMap(([path, source]) => shapeFaults(path, source, longFiles)),
    ...Object.keys(longFiles)
      .filter((path) => (tree.get(path)?.split('\n').length ?? 0) - 1 <= mostLines)
      .map((path) => `${path} needn't be on the list of long files`),
  ];
}

function importFaults(path: string, source: string, tree: SourceTree): string[] {
  if (!isCode(path)) return [];
  const [top = '', second = ''] = path.split('/');
  const level = levelOf(levels, top);
  const inCore = top === 'core';
  const faults = level === -1 ? [`${path} stands in no known folder`] : [];
  if (inCore && levelOf(coreLevels, second) === -1) faults.push(`${path} stands in no known folder of core`);
  const found = inCore ? impure.exec(withoutComments(source)) : null;
  if (found !== null) faults.push(`${path} uses ${found[0]}, which core does without`);

  for (const target of scanImports(source)) {
    if (!target.startsWith('.')) {
      const allowed = corePackages.some(
        (allowedName) => target === allowedName || target.startsWith(`${allowedName}/`),
      );
      if (inCore && !allowed) faults.push(`${path} imports ${target}, which core does without`);
      continue;
    }
    const to = importedPath(path, target);
    if (readsManifest.includes(path) && to === '../package.json') continue;
    if (!tree.has(to)) {
      faults.push(`${path} imports ${target}, which isn't there`);
      continue;
    }
    const [toTop = '', toSecond = ''] = to.split('/');
    if (top !== toTop && levelOf(levels, toTop) >= level)
      faults.push(`${path} imports upwards or sideways: ${to}`);
    if (inCore && toTop === 'core' && levelOf(coreLevels, toSecond) > levelOf(coreLevels, second)) {
      faults.push(`${path} imports upwards in core: ${to}`);
    }
  }
  return faults;
}

function circleFaults(tree: SourceTree): string[] {
  const files = new Map<string, Set<string>>();
  const folders = new Map<string, Set<string>>();
  for (const [path, source] of tree) {
    if (!isCode(path)) continue;
    const targets = scanImports(source).filter((target) => target.startsWith('.'));
    const paths = targets.map((target) => importedPath(path, target));
    files.set(path, new Set(paths));
    const folder = coreFolder(path);
    if (folder === undefined) continue;
    const known = folders.get(folder) ?? new Set<string>();
    folders.set(folder, known);
    for (const to of paths.map(coreFolder)) if (to !== undefined && to !== folder) known.add(to);
  }
  return [findCircle(files), findCircle(folders)]
    .filter((circle) => circle !== undefined)
    .map((circle) => `a circle of imports: ${circle.join(' → ')}`);
}

function shapeFaults(path: string, source: string, longFiles: Readonly<Record<string, string>>): string[] {
  const lines = source.split('\n').length - 1;
  const folders = path.split('/');
  const file = folders.pop() ?? '';
  const faults: string[] = [];
  if (!fileName.test(file) || !folders.every((folder) => folderName.test(folder))) {
    faults.push(`${path} isn't named in kebab-case`);
  }
  if (lines > mostLines && !Object.hasOwn(longFiles, path)) faults.push(`${path} has ${lines} lines`);
  return faults;
}

/** Whether a file holds imports of ours: TypeScript, with or without markup in it. */
export const isCode = (path: string): boolean => /\.tsx?$/.test(path);

const levelOf = (order: readonly (readonly string[])[], entry: string): number =>
  order.findIndex((level) => level.includes(entry));

const coreFolder = (path: string): string | undefined => /^core\/([^/]+)\//.exec(path)?.[1];
