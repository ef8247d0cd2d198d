import { seeded } from '../../fixtures/generator/random.ts';
import { plainClick } from '../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../src/core/click-track/plan-clicks.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import { firstToBreak } from '../../src/core/result/breaking-words.ts';
import { growingSource } from '../../src/core/signal/growing-source.ts';
import { recordRising, risingTake, surroundings } from './breakdown-takes.ts';
import { markdownTable } from './markdown-table.ts';

/**
 * Where a graded take of a rising tempo is said to break first, by how loud the microphone hears the click: players whose
 * strokes scatter by a quarter of a step from the sixth tempo on. `tsx tests/bench/breaking-points.ts [takes]` prints a
 * table of reports/breakdown.md.
 */
const takes = Number(process.argv[2] ?? 12);
const from = 5;

function brokeFirst(i: number, clickDb: number | null) {
  const random = seeded(`rise ${i}`);
  const sheet = risingTake(random);
  const player = {
    scatter: 0.05,
    missed: 0.01,
    stumbles: 0,
    fall: { kind: 'scatter', share: 0.25 },
    from,
  } as const;
  const around = { ...surroundings(random), clickDb, noiseDb: -65 };
  const { samples, sampleRate, trackAt } = recordRising(sheet, player, around, `rise ${i}`);
  const recording = growingSource(sampleRate);
  recording.add(0, samples);
  const times = planClicks(sheet, plainClick).clicks.map(({ time }) => time + trackAt);
  const playedClick = { times, calibrated: false, uncertaintyMs: 0 };
  const [breaking] = gradeTake(recording.source(), sheet, { playedClick }).breaking ?? [];
  if (breaking === undefined || breaking.dimensions.length === 0) return 'too little';
  const first = firstToBreak(breaking);
  if (first === null) return 'nothing broke';
  if (first.bpm < sheet.lines[from - 1]!.bpm!) return 'too early';
  return first.bpm > sheet.lines[from + 1]!.bpm! ? 'too late' : 'there';
}

const outcomes = ['there', 'too early', 'too late', 'nothing broke', 'too little'] as const;
const rows = [null, -30, -20, -12].map((clickDb) => {
  const all = Array.from({ length: takes }, (_, i) => brokeFirst(i, clickDb));
  const counts = outcomes.map((outcome) => `${all.filter((one) => one === outcome).length}`);
  return [clickDb === null ? 'not heard' : `${clickDb} dBFS`, `${takes}`, ...counts];
});
console.log(markdownTable(['click', 'takes', ...outcomes], rows));
