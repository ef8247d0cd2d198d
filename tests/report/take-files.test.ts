import { gunzipSync, gzipSync } from 'node:zlib';
import MIDIFile from 'midifile';
import { describe, expect, it } from 'vitest';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { notationPicture } from '../../src/report/notation-picture.ts';
import { downloads } from '../../src/report/parts/downloads.ts';
import { takeFiles } from '../../src/report/take-files.ts';
import { smallTake } from '../charts/small-take.ts';
import { exampleResult } from '../support/example-result.ts';

const pack = (contents: string | Uint8Array) => gzipSync(contents).toString('base64');

describe('takeFiles', () => {
  const { measures } = exampleResult();
  // Of the example's two lines the small take has one, and fewer strokes to point at.
  const result = smallTake(8, {
    measures: measures
      .filter(({ scope }) => (scope.line ?? 0) === 0)
      .map(({ outcome, ...one }) =>
        outcome.state === 'measured'
          ? { ...one, outcome: { ...outcome, pointsAt: [0] } }
          : { ...one, outcome },
      ),
    advice: [],
  });
  const files = takeFiles(result);
  const file = (name: string) => files.find((one) => one.name === name)!.contents;

  it('are the four of the comment', () => {
    expect(files.map(({ name }) => name)).toEqual([
      'strokes.csv',
      'strokes.mid',
      'exercise.svg',
      'result.json',
    ]);
  });

  it('hold the result whole, and every stroke', () => {
    expect(validateTakeResult(JSON.parse(String(file('result.json'))))).toEqual(result);
    expect(String(file('strokes.csv')).split('\r\n')).toHaveLength(result.strokes.time.length + 2);
    const midi = new MIDIFile((file('strokes.mid') as Uint8Array).buffer as ArrayBuffer);
    expect(midi.getMidiEvents().filter(({ subtype }) => subtype === 0x9)).toHaveLength(24);
  });
});

describe('downloads', () => {
  it('holds the files packed, or names those without room', () => {
    const files = takeFiles(smallTake(8));
    const html = downloads(files, pack, 60_000);
    const packed = html.match(/data-packed="result.json">([^<]*)</)![1]!;
    expect(gunzipSync(Buffer.from(packed, 'base64')).toString()).toBe(files.at(-1)!.contents);
    const noise = {
      ...files[0]!,
      contents: Array.from({ length: 90_000 }, (_, i) => Math.sin(i * i)).join(),
    };
    const tight = downloads([noise], pack, 0);
    expect(tight).toContain('Too large');
    expect(tight).not.toContain('data-packed');
  });
});

describe('notationPicture', () => {
  it('stands by itself, with every note, hand and accent of each line', () => {
    const svg = notationPicture(exampleResult())!;
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/);
    // Two lines of four triplets, one accent a beat.
    expect(svg.match(/<ellipse /g)).toHaveLength(24);
    expect(svg.match(/class="accent"/g)).toHaveLength(8);
    expect(svg.match(/class="label"/g)).toHaveLength(2);
  });

  it('escapes labels', () => {
    const result = exampleResult();
    const lines = result.sheet.lines.map((line) => ({ ...line, label: '</text><script>' }));
    expect(notationPicture({ ...result, sheet: { title: '', lines } })).not.toContain('<script');
  });
});
