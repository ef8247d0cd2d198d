/**
 * Time and memory of grading a practice session of about forty minutes, and whether its takes are found.
 * `tsx tests/bench/session.ts [minutes]` prints them.
 */
import { gradeSession } from '../../src/core/session/grade-session.ts';
import { renderSession, type SessionPart } from '../core/session/rendered-session.ts';
import { floatSource } from '../support/float-source.ts';

const minutes = Number(process.argv[2] ?? 40);
const lines = [
  '>RLR >LRL >RLR >LRL',
  'R>LR L>RL R>LR L>RL',
  'RL>R LR>L RL>R LR>L',
  '>R>LR >L>RL >R>LR >L>RL',
];
const bpm = 110;
const times = 20;
/** Four beats a repeat, and about eight seconds of silence and talk between takes. */
const takeSeconds = (times * 4 * 60) / bpm + 10;
const parts = Array.from({ length: Math.ceil((60 * minutes) / takeSeconds) }, (_, i): SessionPart => {
  const talk = i % 3 === 0 ? [{ kind: 'talk', seconds: 4, levelDb: -22 } as const] : [];
  return { line: (i * 3) % lines.length, times, pause: 6, change: { before: talk } };
});

const { samples, sampleRate, sheet } = renderSession(lines, bpm, parts);
const source = floatSource(sampleRate, samples);
const before = process.memoryUsage().rss;
const from = process.cpuUsage();
const started = process.hrtime.bigint();
const { takes } = gradeSession(source, sheet);
const wall = Number(process.hrtime.bigint() - started) / 1e9;
const { user } = process.cpuUsage(from);
const right = takes.filter(({ line, repeats }, i) => line === parts[i]?.line && repeats === times).length;
const most = process.resourceUsage().maxRSS / 1024;
console.log(
  `${(samples.length / sampleRate / 60).toFixed(1)} minutes at ${sampleRate} Hz, ${parts.length} takes`,
);
console.log(`${right} of them found in order with line and repeats, ${takes.length} takes in all`);
console.log(`${wall.toFixed(1)} s, ${(user / 1e6).toFixed(1)} s of processor time`);
console.log(
  `${(before / 2 ** 20).toFixed(0)} MB before, ${most.toFixed(0)} MB at most, the recording included`,
);
