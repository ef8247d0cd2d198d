import { describe, expect, it } from 'vitest';
import { InvalidTakeResult, validateTakeResult } from '../../../src/core/result/validate-take-result.ts';
import { exampleResult } from '../../support/example-result.ts';

/** The example as it comes out of a file, with one thing changed. */
function changed(change: (document: Record<string, never>) => void): unknown {
  const document = JSON.parse(JSON.stringify(exampleResult()));
  change(document);
  return document;
}

function faultOf(value: unknown): InvalidTakeResult {
  try {
    validateTakeResult(value);
  } catch (error) {
    if (error instanceof InvalidTakeResult) return error;
    throw error;
  }
  throw new Error('no fault found');
}

// biome-ignore lint/suspicious/noExplicitAny: documents broken on purpose have no type.
type Broken = any;

describe('validateTakeResult', () => {
  it('accepts a document that was written and read again', () => {
    const document = changed(() => {});
    expect(validateTakeResult(document)).toBe(document);
  });
  it.each<[string, (document: Broken) => void]>([
    ['/version', (d) => (d.version = 2)],
    ['/schema', (d) => (d.schema = 'something-else')],
    ['/recording', (d) => delete d.recording.sha256],
    ['/recording/duration', (d) => (d.recording.duration = -1)],
    ['/strokes/time/3', (d) => (d.strokes.time[3] = 'soon')],
    ['/slots/partial/0', (d) => (d.slots.partial[0] = 0)],
    ['/measures/0/outcome', (d) => (d.measures[0].outcome = { state: 'measured', value: null })],
    ['/measures/0/scope/hand', (d) => (d.measures[0].scope = { hand: 'B' })],
    ['/hands', (d) => (d.hands = 'maybe')],
  ])('names %s as the place of the fault', (path, breakIt) => {
    const fault = faultOf(changed(breakIt as never));
    expect(fault.path.startsWith(path)).toBe(true);
    expect(fault.message).toContain('not a take result');
  });
  it.each([null, undefined, 7, 'text', [], {}])('refuses %j', (value) => {
    expect(faultOf(value)).toBeInstanceOf(InvalidTakeResult);
  });
  it('refuses numbers that are none', () => {
    expect(
      faultOf({ ...exampleResult(), recording: { ...exampleResult().recording, sampleRate: Number.NaN } }),
    ).toBeInstanceOf(InvalidTakeResult);
  });
});
