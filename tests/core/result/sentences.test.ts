import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hasSentence, sentence } from '../../../src/core/result/sentences.ts';
import { adviceSentences } from '../../../src/core/result/sentences-advice.ts';
import { alignmentSentences } from '../../../src/core/result/sentences-alignment.ts';
import { cannotTellSentences } from '../../../src/core/result/sentences-cannot-tell.ts';
import { measureSentences } from '../../../src/core/result/sentences-measures.ts';
import { takeSentences } from '../../../src/core/result/sentences-take.ts';
import { exampleResult } from '../../support/example-result.ts';
import { anyFacts } from './any-facts.ts';

const root = join(import.meta.dirname, '../../..');

/** Codes in the sources of a folder: `code: 'x'`, both arms of `code: a ? 'x' : 'y'`, `notMeasurable('x')` and its like. */
function codesIn(folder: string): string[] {
  const files = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).filter((f) =>
    f.endsWith('.ts'),
  );
  const texts = files.map((file) => readFileSync(join(root, folder, file), 'utf8'));
  const all = (pattern: RegExp, text: string) => [...text.matchAll(pattern)].map((m) => m[1]!);
  const statements = texts.flatMap((text) => all(/\bcode(?::| =)([^,;}]*)/g, text));
  const written = statements.flatMap((s) => all(/(?:^|[?:])\s*'([a-z]+(?:-[a-z]+)*)'/g, s));
  const outcomes = texts.flatMap((text) => all(/\bnot(?:Measurable|Applicable)\(\s*'([a-z-]+)'/g, text));
  return [...new Set([...written, ...outcomes])];
}

const tables = {
  ...measureSentences,
  ...adviceSentences,
  ...cannotTellSentences,
  ...alignmentSentences,
  ...takeSentences,
};

describe('sentence', () => {
  it.each(['scoring', 'alignment', 'measures', 'grading'].map((part) => `src/core/${part}`))(
    'has one for every code in %s',
    (folder) => {
      const codes = codesIn(folder);
      expect(codes.length).toBeGreaterThan(3);
      expect(codes.filter((code) => !hasSentence(code))).toEqual([]);
    },
  );

  it.each(Object.keys(tables))('fills %s in with its facts', (code) => {
    const text = sentence({ code, facts: anyFacts });
    expect(text).toMatch(/^["A-Z0-9].*\.$/);
    expect(text).not.toMatch(/NaN|undefined|\?\)|null/);
    for (const number of text.match(/\d+\.\d+/g) ?? []) expect(number).toMatch(/^\d+\.\d$/);
  });

  it.each(Object.keys(tables))('pushes neither force nor grip, and claims no technique, in %s', (code) => {
    const text = sentence({ code, facts: anyFacts });
    expect(text).not.toMatch(/harder|louder accents|force|firm|tight|squeez|hold the stick|clench/i);
    if (code !== 'never-from-sound') expect(text).not.toMatch(/grip|tension|height|wrist|finger|technique/i);
  });

  it('speaks of ahead or behind a click only to say that it cannot', () => {
    const speaking = Object.keys(tables).filter((code) =>
      /ahead|behind/.test(sentence({ code, facts: anyFacts })),
    );
    expect(speaking).toEqual(['no-click', 'no-click-no-tempo-asked', 'click-delay-unknown']);
  });

  it('marks every remedy for the playing as common practice', () => {
    const remedies = [
      'accents-uneven',
      'taps-uneven',
      'partial-off-place',
      'bend-at-accent',
      'hands-apart-in-time',
      'timing-uneven',
      'moving-tempo',
      'accents-turned-round',
      'accents-off-from-start',
      'taps-after-accents-loud',
      'accents-lost',
    ];
    for (const code of remedies) expect(sentence({ code, facts: anyFacts })).toMatch(/common practice/i);
  });

  it('sends pain to licensed practice and gives no tempo', () => {
    const text = sentence({ code: 'tempo-waits-for-discomfort', facts: {} });
    expect(text).toMatch(/physician or physiotherapist/);
    expect(text).not.toMatch(/BPM/);
  });

  it('tells each bend by place and direction', () => {
    const texts = ['before', 'on', 'after'].flatMap((place) =>
      ['early', 'late'].map((direction) =>
        sentence({ code: 'bend-at-accent', facts: { ...anyFacts, place, direction } }),
      ),
    );
    expect(new Set(texts).size).toBe(6);
    for (const text of texts) expect(text).not.toContain('The rhythm bends');
  });

  it('sends nobody into a take of more than 288 strokes', () => {
    const open = (strokes: number) =>
      sentence({ code: 'too-wide-to-tell', facts: { measures: 'tap-spread', has: 72, strokes } });
    expect(open(205)).toContain('A take of about 216 strokes would tell.');
    expect(open(300)).toContain('Takes on several days');
    expect(open(300)).not.toMatch(/300|312/);
  });

  it('leaves out the half of missed and extra that did not happen', () => {
    const missed = sentence({ code: 'strokes-missed', facts: { ...anyFacts, extra: 0 } });
    expect(missed).toMatch(/^2\.0 % of the strokes written weren't heard \(3\.0 to 5\.5\)\. Listen/);
    expect(sentence({ code: 'strokes-extra', facts: { ...anyFacts, missed: 0 } })).toMatch(
      /^1\.0 % more strokes were heard/,
    );
  });

  it('shows refused measures with the reason they share', () => {
    const facts = {
      measures: 'timing-spread,timing-spread-share,tap-spread',
      reason: 'nothing-fits',
      slots: 72,
    };
    expect(sentence({ code: 'not-measured', facts })).toMatch(
      /^Timing spread, spread of the taps: What was heard/,
    );
  });

  it('shows an unknown code with its facts rather than nothing', () => {
    expect(hasSentence('from-the-future')).toBe(false);
    expect(hasSentence('toString')).toBe(false);
    expect(sentence({ code: 'from-the-future', facts: { share: 0.4 } })).toBe('from the future, share 0.4');
  });

  it('gives the worked example', () => {
    expect(sentence({ code: 'tempo-down', facts: { bpm: 120, toBpm: 108 } })).toBe(
      'Timing and dynamics both need room at 120 BPM: try 108 BPM, about 10 % slower.',
    );
  });

  it('fills in everything that the example result says', () => {
    const { advice, cannotTell } = exampleResult();
    for (const item of [...advice, ...cannotTell]) expect(sentence(item)).not.toMatch(/NaN|undefined|\?\)/);
  });
});
