/**
 * Strokes told while a take is played against those that its end finds. `tsx tests/bench/live.ts [seeds]` writes
 * reports/live.md.
 */
import { writeFileSync } from 'node:fs';
import { median } from '../../src/core/stats/median.ts';
import { quantile } from '../../src/core/stats/quantile.ts';
import { type LiveScore, scoreLive, type ToldStroke } from './live-scores.ts';
import { liveTakes } from './live-takes.ts';
import { figure, markdownTable } from './markdown-table.ts';

const seeds = Number(process.argv[2] ?? 2);
const everything: ToldStroke[] = [];
const byKind = new Map<string, ReturnType<typeof scoreLive>[]>();
for (let i = 0; i < seeds; i++) {
  for (const { kind, samples, sampleRate } of liveTakes(4101 + i)) {
    const score = scoreLive(samples, sampleRate);
    byKind.set(kind, [...(byKind.get(kind) ?? []), score]);
    everything.push(...score.told);
  }
}

const sum = (scores: readonly LiveScore[]): LiveScore =>
  scores.reduce((a, b) => ({
    found: a.found + b.found,
    told: a.told + b.told,
    met: a.met + b.met,
    real: a.real + b.real,
  }));
const rows = [...byKind].map(([kind, scores]) => {
  const delays = scores.flatMap(({ told }) => told.map(({ delay }) => 1000 * delay));
  const program = sum(scores.map((score) => score.program));
  const powerAlone = sum(scores.map((score) => score.powerAlone));
  return [
    kind,
    `${scores.length}`,
    `${program.found}`,
    figure(program.met / program.found, 3),
    figure(program.met / program.told, 3),
    figure(program.real / program.told, 3),
    figure(median(delays), 0),
    figure(quantile(delays, 0.99), 0),
    figure(powerAlone.met / powerAlone.found, 3),
    figure(powerAlone.met / powerAlone.told, 3),
  ];
});

const steps = [0, 0.9, 0.95, 0.98, 0.99, 0.995, 1.001];
const byConfidence = steps.slice(1).flatMap((to, i) => {
  const from = steps[i]!;
  const some = everything.filter(({ confidence }) => confidence >= from && confidence < to);
  if (some.length === 0) return [];
  const found = some.filter((one) => one.found).length;
  return [
    [
      `${from} … ${Math.min(1, to)}`,
      `${some.length}`,
      figure(some.reduce((all, { confidence }) => all + confidence, 0) / some.length, 3),
      figure(found / some.length, 3),
    ],
  ];
});

const head = [
  'kind',
  'takes',
  'strokes',
  'recall',
  'precision',
  'with clicks',
  'delay, ms',
  '99 %',
  'recall',
  'precision',
];
writeFileSync(
  'reports/live.md',
  `# Strokes told while one plays

Rendered takes of ${seeds} seeds: a model of a practised player for half a minute through several chains, and every scenario of the
generator by its group, heard block by block (1024 frames) as the page hears them. What is told live is held against what the end of the same take finds with
all of it known (\`hearStrokes\`): a stroke told within 10 ms of one found is met, each once. A metronome in the
recording is told as strokes, too: "with clicks" counts those as right. Delay is from the stroke to the end of the block with
which it is told; a worker's and a screen's time comes on top. The last two columns are a follower of power alone (20 ms
allowed), to see what the search for strokes is worth. Written by \`tsx tests/bench/live.ts\`.

${markdownTable(head, rows)}

What is told with which confidence, and how much of it the end of the take finds, as a stroke or a click:

${markdownTable(['confidence', 'told', 'mean', 'found'], byConfidence)}
`,
);
