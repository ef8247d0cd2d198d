import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import { gradeTake } from '../../core/grade-take.ts';
import { sourceOfSamples } from './source-of-samples.ts';

const sampleRate = 48_000;
const times = 10;
const sheetText = `>RLR >LRL ; tempo: 120 ; times: ${times}`;
const step = 1 / 6;

/**
 * Grades a few seconds that nobody played: a browser compiles a program as it runs, and the first take would wait for
 * it, as long again as it is graded.
 */
export function warmUp(): void {
  const parsed = parseSheet(sheetText);
  if (!parsed.ok) return;
  const samples = new Float32Array(Math.round((1 + 6 * times * step) * sampleRate));
  let state = 1;
  const noise = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 1_073_741_824 - 1;
  };
  for (let i = 0; i < samples.length; i++) samples[i] = 1e-4 * noise();
  for (let stroke = 0; stroke < 6 * times; stroke++) {
    const start = Math.round((0.5 + (stroke + 0.02 * noise()) * step) * sampleRate);
    const size = (stroke % 3 === 0 ? 0.4 : 0.08) * (1 + 0.1 * noise());
    for (let i = 0; i < 0.1 * sampleRate; i++) samples[start + i]! += size * Math.exp(-i / 500) * noise();
  }
  gradeTake(sourceOfSamples([samples], sampleRate), parsed.sheet);
}
