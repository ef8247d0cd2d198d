import { expect, it } from 'vitest';
import { folderHtml } from '../../src/report/folder/folder-html.ts';
import type { FolderResult } from '../../src/report/folder/folder-result.ts';
import { takeFigures } from '../../src/report/folder/take-figures.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { sessionHtml } from '../../src/report/session-html.ts';
import { weekPage } from '../../src/report/weeks/week-page.ts';
import { wholeFiguresHtml } from '../../src/report/whole-figures-html.ts';
import { exampleResult } from '../support/example-result.ts';

const space = '\u00a0';

it('wholeFiguresHtml touches text alone', () => {
  const kept =
    '<style>p{margin:5 ms}</style><a title="5 ms" href="a?5 ms">x</a><script>"5 ms"</script><code>5 ms</code>';
  expect(wholeFiguresHtml(`${kept}5 ms<b>92</b> 5 dB`)).toBe(`${kept}5${space}ms<b>92</b> 5${space}dB`);
  expect(wholeFiguresHtml('')).toBe('');
});

const result = exampleResult();
const sha256 = () => 'digest';
const parts = { fontFaces: '', sha256, script: null, images: {} };
const counts = { graded: 1, notGradable: 0, unreadable: 0, failed: 0, earlier: 0 };
const attention = [{ code: 'a', sentence: 'Taps spread by 1.9 dB.' }];
const state = { state: 'graded', earlier: false, fault: null, report: null, result: null } as const;
const folder: FolderResult = {
  ...{ schema: 'evenhand-folder-result', version: 1, program: '1.0.0', counts },
  takes: [{ ...state, recording: 'a.wav', figures: { ...takeFigures(result), attention } }],
};
const lines = result.sheet.lines.map((line) => ({ ...line, bpm: 50 }));
const slow = { ...result, sheet: { ...result.sheet, lines } };
const pages = {
  report: reportHtml(result, { ...parts, clientScript: null }),
  folder: folderHtml(folder, { ...parts, title: 'Tuesday' }),
  session: sessionHtml(
    {
      ...{ schema: 'evenhand-session-result', version: 1, sheet: result.sheet, unrecognised: [] },
      recording: { name: 'a.wav', sha256: null, duration: 20 },
      takes: [{ line: 0, repeats: 3, from: 1, to: 9, result: slow }],
      summary: { lines: [], weakest: null },
    },
    { ...parts, reports: ['a.html'] },
  ),
  weeks: weekPage(
    { kind: 'Weeks', title: 'A', lead: '', body: '<p>2.8 % of a partial</p>', data: '' },
    parts,
  ),
};

it.each(Object.entries(pages))('no line of a page breaks between a figure and its unit: %s', (_, html) => {
  const text = html.replace(/<style>[\s\S]*?<\/style>|<[^>]*>/g, '|');
  expect(text).toMatch(/\d\u00a0(%|ms|dB|BPM)/);
  expect(text.match(/.{0,20}\d (%|ms|dB|BPM)/g)).toBeNull();
});
