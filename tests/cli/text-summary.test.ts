import { describe, expect, it } from 'vitest';
import { textSummary } from '../../src/cli/text-summary.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { exampleResult } from '../support/example-result.ts';

const plain = (result: TakeResult, width = 80) => textSummary(result, { color: false, width });
// biome-ignore lint/suspicious/noControlCharactersInRegex: the sequences of ECMA-48 begin with one
const withoutStyles = (text: string) => text.replace(/\u001b\[\d+m/g, '');

describe('textSummary', () => {
  it('says what was heard and against what it was held', () => {
    const text = plain(exampleResult());
    expect(text).toContain('72 strokes heard for 72 written, 1 missed, 1 extra.');
    expect(text).toContain('At 100.6 BPM, held against the tempo asked for.');
  });

  it('shows every score with its word', () => {
    const result = exampleResult();
    const text = plain(result);
    expect(text).toMatch(/Overall +79 .*nearly there +72 to 83/);
    expect(text).toMatch(/Accents and taps +88 .*secure/);
    const low = { score: 20, low: 10, high: 30, word: 'not-yet' as const };
    expect(plain({ ...result, scores: { ...result.scores!, overall: low } })).toMatch(
      /Overall +20 +■■·+ +not yet +10 to 30/,
    );
  });

  it('shows measures with interval and unit, parts below the whole', () => {
    const text = plain(exampleResult());
    expect(text).toMatch(/Timing spread +11\.6 ms +9\.8 to 14\.1 /);
    expect(text).toMatch(/5\.8 % of a partial/);
    expect(text).toMatch(/partial 2 +−7\.3 ms +−11\.2 to −3\.4/);
    expect(text).toMatch(/Accent beats tap +98\.5 % +95\.2 to 99\.6/);
    expect(text).toMatch(/Accents above taps .*\n +right hand +10\.8 dB/);
  });

  it('gives the things to work on with their times in the take', () => {
    const result = exampleResult();
    const text = plain(result);
    const time = result.strokes.time[18]!;
    expect(text).toContain(`Listen at 0:0${time.toFixed(1)}`);
    expect(text.indexOf('1. ')).toBeLessThan(text.indexOf('2. '));
    expect(text).toContain('Stay at 100 BPM');
  });

  it('gives a single thing without a number', () => {
    const advice = [{ code: 'nothing-to-mend', facts: {}, strokes: [] }];
    expect(plain(exampleResult({ advice }))).toContain('\n  Everything that could be measured is secure.');
  });

  it('shows one tempo for runs that are alike and a range for others', () => {
    const result = exampleResult();
    const runs = (bpm: number) => [result.segments[0]!, { ...result.segments[0]!, bpm }];
    expect(plain({ ...result, segments: runs(100.8) })).toContain('At 100.7 BPM,');
    expect(plain({ ...result, segments: runs(80) })).toContain('At 80.0 to 100.6 BPM,');
  });

  it('says what the take cannot tell, and where the cautions stand', () => {
    const text = plain(exampleResult());
    expect(text).toContain("This take can't tell");
    expect(text).toContain('sound says nothing about technique');
    expect(text).toContain('Stop at pain, tingling or numbness');
  });

  it.each([56, 80, 120])('keeps within %i columns', (width) => {
    for (const line of plain(exampleResult(), width).split('\n'))
      expect([...line].length).toBeLessThanOrEqual(width);
  });

  it('says the same with colour as without', () => {
    const colored = textSummary(exampleResult(), { color: true, width: 80 });
    expect(colored).not.toBe(plain(exampleResult()));
    expect(withoutStyles(colored)).toBe(plain(exampleResult()));
  });

  it('gives the reason and the next step when there is no grade', () => {
    const result = exampleResult({
      grading: {
        state: 'not-gradable',
        reason: { code: 'many-unmatched', facts: { matched: 20, slots: 72 } },
      },
      scores: null,
      measures: [],
      advice: [],
    });
    const text = plain(validateTakeResult(result));
    expect(text).toContain('No grade');
    expect(text).toContain('Only 20 of 72 written strokes were found.');
    expect(text.replaceAll(/\s+/g, ' ')).toContain('put the phone nearer to the pad');
    expect(text).not.toMatch(/Scores|Measures/);
  });

  it('names what was not measured instead of leaving it out', () => {
    const result = exampleResult();
    const measures = result.measures.map((m): typeof m =>
      m.id === 'tempo-error'
        ? { ...m, outcome: { state: 'not-applicable', reason: { code: 'no-tempo-asked', facts: {} } } }
        : m.id === 'tap-spread'
          ? { ...m, outcome: { state: 'not-measurable', reason: { code: 'gated', facts: {} } } }
          : m,
    );
    const text = plain({ ...result, measures });
    expect(text).toContain("Doesn't apply here: tempo against asked.");
    expect(text).toMatch(/Spread of the taps +– +couldn't be measured/);
  });

  it('lets no control character of a file through', () => {
    const result = exampleResult();
    const recording = { ...result.recording, name: 'take\u001b]0;x\u0007.wav' };
    const text = plain({ ...result, recording, sheet: { ...result.sheet, title: '\u001b[2Jgone' } });
    expect(text).not.toContain('\u001b');
    expect(text).toContain('[2Jgone');
  });
});
