import { practisedPlayer } from '../../../fixtures/generator/player.ts';
import { readSheet } from '../../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { plainTake, type TakeSpec } from '../../../fixtures/generator/take-spec.ts';
import type { Sheet } from '../../../src/core/exercise/sheet.ts';

/** One thing after another in a session. */
export interface SessionPart {
  /** Line of the sheet's text, from 0, and how often it is played in a row; neither for talk or noodling alone. */
  readonly line?: number;
  readonly times?: number;
  readonly change?: Partial<TakeSpec>;
  /** Silence after it, s. */
  readonly pause: number;
}

export interface RenderedSession {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly sheet: Sheet;
  /** Onset of each part's first and last stroke of the exercise, s; null without one. */
  readonly parts: readonly (null | { readonly from: number; readonly to: number })[];
}

/** Renders the parts of a session and puts them into one recording, over a steady soft noise. */
export function renderSession(
  lines: readonly string[],
  bpm: number,
  parts: readonly SessionPart[],
): RenderedSession {
  const sampleRate = 22050;
  const text = (line: number, times: number) => `tempo: ${bpm}\n${lines[line]} ; times: ${times}\n`;
  const { sheet } = readSheet(
    `title: A session\ntempo: ${bpm}\n${lines.map((l) => `${l} ; times: 2`).join('\n')}\n`,
  );
  const pieces: Float32Array[] = [];
  const truth: (null | { from: number; to: number })[] = [];
  let at = 0;
  parts.forEach(({ line, times = 1, change = {}, pause }, i) => {
    const { slots } = readSheet(text(line ?? 0, times));
    const take = renderTake({
      ...plainTake,
      player: practisedPlayer,
      sampleRate,
      bpm,
      seed: 500 + i,
      slots: line === undefined ? [] : slots,
      tailSeconds: 0.6 + pause,
      ...change,
    });
    const own = take.truth.strokes.filter(({ role, slot }) => role === 'take' && slot !== null);
    truth.push(own.length > 0 ? { from: at + own[0]!.time, to: at + own.at(-1)!.time } : null);
    pieces.push(take.samples);
    at += take.samples.length / sampleRate;
  });
  const samples = new Float32Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let offset = 0;
  for (const piece of pieces) {
    samples.set(piece, offset);
    offset += piece.length;
  }
  return { samples, sampleRate, sheet, parts: truth };
}
