import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { publishedSchema, publishedSchemaPath } from '../../../fixtures/write-result-schema.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { InvalidTakeResult, validateTakeResult } from '../../../src/core/result/validate-take-result.ts';
import { gradedSample } from '../../end-to-end/sample-take.ts';
import { describePython } from '../../python-module.ts';

const samples = ['accent-one', 'demo', 'missed-and-extra', 'restart-from-bar-5', 'third-repeat'];
const written = (name: string): TakeResult => JSON.parse(JSON.stringify(gradedSample(name).result));

// biome-ignore lint/suspicious/noExplicitAny: documents broken on purpose have no type.
type Broken = any;

/** Place of the damage, and the damage. */
const damages: readonly (readonly [string, (document: Broken) => void])[] = [
  ['/version', (d) => (d.version = 0)],
  ['/recording/channels', (d) => (d.recording.channels = 0)],
  ['/recording', (d) => delete d.recording.envelope],
  ['/strokes/role/0', (d) => (d.strokes.role[0] = 'brilliant')],
  ['/strokes/hand/2', (d) => (d.strokes.hand[2] = 'right')],
  ['/slots/state/5', (d) => (d.slots.state[5] = null)],
  ['/segments/0/state', (d) => (d.segments[0].state = 'paused')],
  ['/scores/overall/score', (d) => (d.scores.overall.score = 101)],
  ['/advice/0/strokes', (d) => (d.advice[0].strokes = [0.5])],
  ['/grading', (d) => (d.grading = { state: 'not-gradable' })],
  ['', (d) => delete d.cannotTell],
];

function damaged([, damage]: (typeof damages)[number]): unknown {
  const document = written('accent-one');
  damage(document);
  return document;
}

describe('the published schema', () => {
  it('is the one that documents are checked against', () => {
    expect(JSON.parse(readFileSync(publishedSchemaPath, 'utf8'))).toEqual(
      JSON.parse(JSON.stringify(publishedSchema)),
    );
  });
});

describe('validateTakeResult', () => {
  it.each(samples)('accepts what grading gives, written and read again: %s', (name) => {
    const document = written(name);
    expect(validateTakeResult(document)).toBe(document);
    expect(document).toEqual(gradedSample(name).result);
  });

  it.each(damages)('names %s as the place of the damage', (...damage) => {
    const check = () => validateTakeResult(damaged(damage));
    expect(check).toThrow(InvalidTakeResult);
    expect(check).toThrow(expect.objectContaining({ path: expect.stringMatching(`^${damage[0]}`) }));
  });
});

// An implementation of JSON Schema that shares nothing with ours: the Python package jsonschema.
describePython('jsonschema', 'the published schema, read by another library', (run) => {
  const script = `
import json, sys
from jsonschema import Draft202012Validator
schema, documents = json.load(sys.stdin)
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)
print(json.dumps([["/" + "/".join(map(str, e.absolute_path)) for e in validator.iter_errors(d)] for d in documents]))
`;
  const faults = (documents: readonly unknown[]): string[][] =>
    JSON.parse(
      run(script, JSON.stringify([JSON.parse(readFileSync(publishedSchemaPath, 'utf8')), documents])),
    );

  it('is a valid schema and accepts what grading gives', () => {
    expect(faults(samples.map(written))).toEqual(samples.map(() => []));
  });

  it('refuses the same damaged documents, at the same places', () => {
    const found = faults(damages.map(damaged));
    damages.forEach(([place], i) => {
      expect(found[i]!.length, place).toBeGreaterThan(0);
      expect(found[i]!.some((path) => path.startsWith(place) || place.startsWith(path))).toBe(true);
    });
  });
});
