import { describe, expect, it } from 'vitest';
import { shownScore } from '../../../src/core/scoring/score-curve.ts';
import { countsInWords } from '../../../src/report/folder/counts-in-words.ts';
import { folderHtml } from '../../../src/report/folder/folder-html.ts';
import type { FolderResult, FolderTake } from '../../../src/report/folder/folder-result.ts';
import { takeFigures } from '../../../src/report/folder/take-figures.ts';
import { exampleResult } from '../../support/example-result.ts';

const example = exampleResult();
const figures = takeFigures(example);
const graded: FolderTake = {
  recording: 'anna/take 2.wav',
  ...{ state: 'graded', earlier: false, figures, fault: null },
  ...{ report: 'anna/take 2.html', result: 'anna/take 2.json' },
};
const unread: FolderTake = {
  recording: 'bad.wav',
  ...{ state: 'unreadable', earlier: false, figures: null, report: null, result: null },
  fault: '"bad.wav" is a text file.',
};
const counts = { graded: 1, notGradable: 0, unreadable: 1, failed: 0, earlier: 0 };
const page = (takes: readonly FolderTake[], title = 'Tuesday') => {
  const result: FolderResult = {
    ...{ schema: 'evenhand-folder-result', version: 1, program: '1.0.0', takes: [...takes], counts },
  };
  return folderHtml(result, { title, fontFaces: '', sha256: () => 'digest' });
};

describe('the page before the reports of a folder', () => {
  it('leads to each report and tells score, words and faults', () => {
    const html = page([graded, unread]);
    expect(html).toContain('href="anna/take%202.html"');
    expect(html).toContain(`${shownScore(figures.overall!.score)} <span>nearly there`);
    expect(html).toContain("<h2>What couldn't be graded</h2>");
    expect(html).toContain('&quot;bad.wav&quot; is a text file.');
    expect(html).toContain('script-src &#39;none&#39;');
  });

  it.each(['</script><script>alert(1)</script>', '"><img src=x onerror=alert(1)>', '\u202Egnp.exe'])(
    'shows a name from outside as text: %s',
    (hostile) => {
      const take = { ...graded, recording: hostile, figures: { ...figures, exercise: hostile } };
      const html = page([take, { ...unread, recording: hostile, fault: hostile }], hostile);
      expect(html).not.toContain('<script>alert');
      expect(html).not.toContain('<img');
      expect(html).not.toContain('\u202E');
    },
  );
});

it('takeFigures names the exercise by the title, else by the first lines', () => {
  const { sheet } = example;
  const line = sheet.lines[0]!;
  const of = (title: string, labels: string[]) =>
    takeFigures({ ...example, sheet: { title, lines: labels.map((label) => ({ ...line, label })) } })
      .exercise;
  expect(of('Week 7', ['a', 'b'])).toBe('Week 7');
  expect(of(' ', ['a', 'b'])).toBe('a, b');
  expect(of('', ['a', 'b', 'c', 'd'])).toBe('a, b and 2 more');
});

it('countsInWords tells only what there is', () => {
  const none = { graded: 0, notGradable: 0, unreadable: 0, failed: 0, earlier: 0 };
  expect(countsInWords({ ...none, graded: 1 })).toBe('1 recording: 1 graded.');
  expect(countsInWords({ ...none, graded: 3, unreadable: 1, earlier: 2 })).toBe(
    '4 recordings: 3 graded, 1 could not be read. 2 of them as before, since nothing has changed.',
  );
});
