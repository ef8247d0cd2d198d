import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { type ScenarioName, scenario, scenarios } from '../../fixtures/generator/scenarios.ts';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { resultDifferences } from '../support/result-differences.ts';

/*
 * Sines, exponentials and logarithms differ in their last bits between versions of the engine, so a result does too; the
 * strokes and every decision on them may not. `EVENHAND_NODES` names other versions of Node to hold against this one.
 */
const root = join(import.meta.dirname, '../..');
const nodes = (process.env.EVENHAND_NODES ?? '').split(delimiter).filter((path) => path !== '');
const kinds: readonly ScenarioName[] = ['click-in-room', 'phone', 'snare-long-wires'];
/** Of the greater of the figure and a thousandth of its unit; the worst of 69 kinds of take was 3e-10. */
const tolerance = 1e-8;

/** What differs, but for figures within the tolerance. */
const differences = (one: unknown, other: unknown) =>
  resultDifferences(one, other)
    .filter(({ share }) => share > tolerance)
    .map(({ path, one, other }) => `${path}: ${String(one)} and ${String(other)}`);

const grade = (node: string, files: readonly string[]): unknown =>
  JSON.parse(
    execFileSync(node, [join(root, 'dist/main.js'), 'grade', ...files, '--json', '-'], {
      encoding: 'utf8',
      maxBuffer: 64 * 2 ** 20,
      stdio: ['ignore', 'pipe', 'ignore'],
    }),
  );

describe('a take graded by other versions of Node', () => {
  if (nodes.length === 0) {
    const reason =
      'NOT CHECKED, EVENHAND_NODES names no other version of Node: the same strokes and decisions';
    const required = process.env.EVENHAND_REQUIRE_NODES === '1';
    if (!required) console.warn(reason);
    it.skipIf(!required)(reason, () => {
      throw new Error(reason);
    });
    return;
  }

  it('is told from one with another stroke', () => {
    expect(differences({ a: [1.5, 2] }, { a: [1.5 + 1e-9, 2] })).toEqual([]);
    expect(differences({ a: [1.5, 2] }, { a: [1.5, 3] })).toEqual(['/a/1: 2 and 3']);
    expect(differences({ a: [1.5] }, { a: [1.51] })).toHaveLength(1);
    expect(differences({ a: 'x' }, {})).toHaveLength(1);
  });

  it.each(kinds)('are the same strokes and decisions: %s', (kind) => {
    const files = rendered(temporaryFolder(), kind);
    const here = grade(process.execPath, files);
    for (const node of nodes) expect(differences(here, grade(node, files)), node).toEqual([]);
  });

  it('was asked of other versions than this', () => {
    for (const node of nodes)
      expect(execFileSync(node, ['--version'], { encoding: 'utf8' })).not.toContain(process.version);
  });
});

function rendered(folder: string, kind: ScenarioName): string[] {
  const { samples, sampleRate } = renderTake(scenario(kind, 77).spec);
  const [wav, sheet] = [join(folder, 'take.wav'), join(folder, 'take.sheet')];
  writeFileSync(wav, encodeWav(samples, sampleRate));
  writeFileSync(sheet, scenarios[kind].sheetText);
  return [wav, '--sheet', sheet];
}
