import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { type ReportParts, reportHtml } from '../../src/report/report-html.ts';
import { exampleResult } from '../support/example-result.ts';

const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
const images = Object.fromEntries(chartList.map(({ id }) => [id, 'data:image/png;base64,AAAA']));
const parts: ReportParts = { images, clientScript: 'console.log(1)', fontFaces: '', sha256 };

/** A take in which every text from outside is an attack. */
function hostile(text: string): TakeResult {
  const result = exampleResult();
  const lines = result.sheet.lines.map((line) => ({ ...line, id: text, label: text, notation: text }));
  const facts = { measure: text, dimension: text, hand: text, value: text };
  return {
    ...result,
    recording: { ...result.recording, name: text },
    sheet: { title: text, lines },
    advice: [{ code: text, facts, strokes: [1] }],
    warnings: [{ code: text, facts }],
    cannotTell: [{ code: 'dimension-not-scored', facts }],
    measures: [
      ...result.measures,
      {
        id: text,
        unit: text,
        scope: {},
        outcome: { state: 'measured', value: 1, low: 0, high: 2, strokes: 3, pointsAt: [] },
      },
      {
        id: 'missed',
        unit: '%',
        scope: { line: 7 },
        outcome: { state: 'not-measurable', reason: { code: text, facts } },
      },
    ],
    scores: {
      rubric: text,
      overall: { score: 50, low: 40, high: 60, word: 'not-yet' },
      dimensions: [{ id: text, score: { score: 50, low: 40, high: 60, word: 'not-yet' }, measures: [] }],
    },
  };
}

const attacks = {
  'a closing script': '</script><script>alert(1)</script>',
  'an event attribute': '"><img src=x onerror=alert(1)>',
  'a single quote': "' onmouseover='alert(1)",
  'a comment': '<!--<script>',
  'an entity': '&lt;script&gt;&#x3c;svg/onload=alert(1)>',
  'a turned direction': 'take\u202Egpj.exe\u2066',
  emoji: '🥁👩🏽‍🎤'.repeat(30),
  'half an emoji': 'x\ud83e',
  'ten thousand characters': 'W'.repeat(10_000),
};

describe('reportHtml with hostile text', () => {
  const plain = reportHtml(hostile('x'), { ...parts, caption: { player: 'x', recordedOn: 'x' } });
  const tags = (html: string) =>
    (html.match(/<[a-z/!][^>]*/gi) ?? []).map((tag) => tag.split(/[\s>]/)[0]!).join(' ');

  it.each(Object.entries(attacks))('has the same elements as with a harmless one: %s', (_, text) => {
    const html = reportHtml(hostile(text), { ...parts, caption: { player: text, recordedOn: text } });
    expect(tags(html)).toBe(tags(plain));
    expect(html.match(/[\u202a-\u202e\u2066-\u2069]/g)).toBeNull();
    const json = html.match(/<script type="application\/json" id="drawn-part">(.*?)<\/script>/s)![1]!;
    expect(JSON.parse(json).sheet.title).toBe(text);
  });

  it('shows long texts short', () => {
    const html = reportHtml(hostile(attacks['ten thousand characters']), { ...parts, clientScript: null });
    expect(html).not.toMatch(/<(h1|dd|p|strong)[^>]*><bdi>W{201}/);
  });
});
