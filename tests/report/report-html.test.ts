import { createHash } from 'node:crypto';
import { gunzipSync, gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { type PackedPart, unpackPart } from '../../src/report/packed-part.ts';
import {
  type ReportParts,
  reportHtml,
  strokesEmbedded,
  strokesPacked,
} from '../../src/report/report-html.ts';
import { smallTake } from '../charts/small-take.ts';
import { walkingTake } from '../charts/walking-take.ts';
import { exampleResult } from '../support/example-result.ts';

const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
const images = Object.fromEntries(chartList.map(({ id }) => [id, 'data:image/png;base64,AAAA']));
const parts: ReportParts = { images, clientScript: 'console.log(1)', fontFaces: '', sha256 };

const sounds = {
  inside: { place: 'inside', uri: 'data:audio/mpeg;base64,UklGRg==', sampleRate: 44100, print: null },
  beside: { place: 'beside', file: 'a "b" é.mp3' },
} as const;

describe('reportHtml', () => {
  const html = reportHtml(exampleResult(), parts);

  it('names the digests of the style and the script that are in it', () => {
    const policy = html
      .match(/http-equiv="Content-Security-Policy" content="([^"]*)"/)![1]!
      .replaceAll('&#39;', "'");
    const style = html.match(/<style>(.*?)<\/style>/s)![1]!;
    const script = html.match(/<script>(.*?)<\/script>/s)![1]!;
    expect(policy).toContain(`style-src 'sha256-${sha256(style)}'`);
    expect(policy).toContain(`script-src 'sha256-${sha256(script)}'`);
    expect(html.match(/<script(?! type="application\/json")/g)).toHaveLength(1);
    expect(html).not.toMatch(/ style=| on[a-z]+=/);
  });

  it('points to nothing outside', () => {
    expect(html.match(/(src|href|action|url\()[=(]?"?(?!data:)[a-z]+:/gi)).toBeNull();
    expect(html).not.toContain('<link');
  });

  it.each(chartList)('has question, image, words and figures for $id', ({ id, question, text, table }) => {
    const result = walkingTake();
    const page = reportHtml(result, parts);
    const figure = page.match(new RegExp(`<figure[^>]*data-chart="${id}">.*?</figure>`, 's'))![0];
    expect(figure).toContain(question);
    expect(figure).toMatch(/<img src="data:image\/png;base64,[^"]+" alt="[^"]{30,}"/);
    expect(figure).toMatch(/<canvas role="img" aria-label="[^"]{30,}"/);
    expect(figure).toContain(text(result).slice(0, 30));
    expect(figure.match(/<tr>/g)).toHaveLength(table(result).rows.length + 1);
  });

  it('names the questions that a take leaves open, and what it lacked', () => {
    const page = reportHtml(walkingTake({ hands: 'not-told' }), parts);
    const open = page.match(/<div class="open-questions">(.*?)<\/div>/s)![1]!;
    const { question, needs } = chartList.find(({ id }) => id === 'hand-clouds')!;
    expect(open.match(/<li>/g)).toHaveLength(1);
    expect(open).toContain(question);
    expect(open).toContain(needs);
    expect(reportHtml(walkingTake(), parts)).not.toContain('open-questions">');
  });

  it('shows every measure, measured or not', () => {
    const result = exampleResult();
    const rows = html.match(/<table class="figures">.*<\/table>/s)![0].match(/data-name="value"/g);
    expect(rows).toHaveLength(result.measures.filter((m) => m.outcome.state === 'measured').length);
  });

  it('says with the figures what it cannot tell, and the cautions', () => {
    expect(html).toContain("What this take can't tell");
    expect(html).toContain('no medical advice');
    expect(html).toContain('physician or physiotherapist');
    expect(html).not.toMatch(/hit harder|grip tighter|press/i);
  });

  it('packs the columns of a long take', () => {
    const long = smallTake(Math.ceil(strokesEmbedded / 3) + 1);
    const packed = (text: string | Uint8Array) => gzipSync(text).toString('base64');
    const page = reportHtml(long, { ...parts, clientScript: '1', files: { script: '2', pack: packed } });
    const held = /<script type="text\/plain" id="drawn-part" data-coding="gzip">([^<]+)<\/script>/.exec(
      page,
    )![1]!;
    const part = JSON.parse(gunzipSync(Buffer.from(held, 'base64')).toString()) as PackedPart;
    expect(unpackPart(part).strokes.time).toHaveLength(long.strokes.time.length);
    expect(reportHtml(long, { ...parts, clientScript: '1' })).not.toContain('id="drawn-part"');
  });

  it('embeds no data of a very long take and keeps its images', () => {
    const beats = Math.ceil(strokesPacked / 3) + 1;
    const long = smallTake(beats);
    const page = reportHtml(long, parts);
    expect(page).not.toContain('id="drawn-part"');
    expect(page.match(/<script/g)).toBeNull();
    expect(page.match(/<img /g)).toHaveLength(
      chartList.filter(({ draw }) => draw(long, plainLook) !== null).length,
    );
    expect(page.length).toBeLessThan(120_000);
  });

  it('offers the moments and strokes as buttons only with the sound', () => {
    const advice = [{ code: 'taps-uneven', facts: { value: 2, low: 1, high: 3 }, strokes: [3, 4] }];
    const result = exampleResult({ advice });
    const silent = reportHtml(result, parts);
    expect(silent).not.toMatch(/<button|<audio|id="listening-data"/);
    const sounding = reportHtml(result, { ...parts, sound: sounds.inside });
    const buttons = sounding.match(/<button type="button" class="moment" data-moment="[\d.]+"/g);
    expect(buttons).toHaveLength(2 + result.strokes.time.length);
    expect(sounding).toContain('<audio id="sound" controls');
    expect(sounding).toContain('media-src data:;');
  });
});

describe('reportHtml of a take without a grade', () => {
  const html = reportHtml(
    exampleResult({
      grading: {
        state: 'not-gradable',
        reason: { code: 'too-few-strokes-to-score', facts: { strokes: 9, needed: 24 } },
      },
      scores: null,
    }),
    parts,
  );

  it('gives the reason and what to do, no score, no figure, no picture', () => {
    expect(html).toContain('could not be graded');
    expect(html).toContain('9 strokes were graded and 24 are needed');
    expect(html).toContain('What helps most often');
    expect(html).not.toMatch(/<figure|<table|<script|All together/);
    expect(html).toContain('no medical advice');
  });

  it('says that marks are full where the hands can\u2019t be told, and what hollow ones stand for where they can', () => {
    const words = (hands: TakeResult['hands']) => reportHtml({ ...exampleResult(), hands }, parts);
    expect(words('not-told')).toContain('all marks are full');
    expect(words('not-told')).not.toContain('hollow ones the left');
    expect(words('as-written')).toContain('hollow ones the left');
  });
});
