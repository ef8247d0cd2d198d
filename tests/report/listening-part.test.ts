import { describe, expect, it } from 'vitest';
import { listening, listeningData, type ReportSound } from '../../src/report/parts/listening.ts';
import { smallTake } from '../charts/small-take.ts';
import { exampleResult } from '../support/example-result.ts';

const inside: ReportSound = {
  place: 'inside',
  uri: 'data:audio/mpeg;base64,AA',
  sampleRate: 44100,
  print: null,
};

describe('listening', () => {
  it('warns of loud sound and begins at a low volume', () => {
    const html = listening(smallTake(4), inside);
    expect(html).toContain('loud sound over a long time harms hearing');
    expect(html).toMatch(/id="listen-volume" min="0" max="100" value="30"/);
  });

  it("shows the tools only once the script is there, and the browser's own player till then", () => {
    expect(listening(smallTake(4), inside)).toMatch(
      /<audio id="sound" controls[^>]*>.*id="listening" hidden/s,
    );
  });

  it('offers only what the take has beats and places for', () => {
    const plain = smallTake(4, { segments: [] });
    const unplaced = { ...plain.strokes, deviationMs: plain.strokes.deviationMs.map(() => null) };
    const html = listening({ ...plain, strokes: unplaced }, inside);
    expect(html).not.toMatch(/listen-round|listen-back|listen-click|name="version"/);
    expect(html).toContain('id="listen-half"');
    expect(listening(smallTake(4), inside).match(/name="version"/g)).toHaveLength(3);
  });

  it('tells what becomes of a metronome in the recording where there is one', () => {
    const heard = exampleResult({ reference: { kind: 'heard-click' } });
    expect(listening(heard, inside)).toContain('The metronome in the recording');
    expect(listening(exampleResult({ reference: { kind: 'fitted-tempo' } }), inside)).not.toContain(
      'The metronome in the recording',
    );
  });

  it('points to the file beside the report, whatever its name', () => {
    const html = listening(smallTake(4), { place: 'beside', file: '"><script>é?.mp3' });
    expect(html).toContain('src="./%22%3E%3Cscript%3E%C3%A9%3F.mp3"');
    expect(html).not.toContain('<script');
    expect(html).toContain('keep both in the same folder');
    expect(html).not.toMatch(/listen-play|listen-half/);
  });
});

describe('listeningData', () => {
  it('holds strokes and beats of the take', () => {
    const text = listeningData(smallTake(2), inside);
    const data = JSON.parse(/>(.*)<\/script>/s.exec(text)![1]!);
    expect(data.decoding).toEqual({ sampleRate: 44100, print: null });
    expect(data.take.strokes.time).toHaveLength(6);
    expect(data.take.beats.from).toEqual([1, 1.6]);
  });
});
