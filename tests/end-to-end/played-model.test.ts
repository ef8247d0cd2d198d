import { describe, expect, it } from 'vitest';
import { type Player, practisedPlayer } from '../../fixtures/generator/player.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import { plainTake, type TakeSpec } from '../../fixtures/generator/take-spec.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import { modelFromTake, type PlayedModel } from '../../src/core/grading/played-model.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { memorySource } from '../bench/bench-take.ts';
import { coverageBounds } from '../core/measures/coverage.ts';

const bpm = 110;
const partialMs = 60_000 / bpm / 3;
const { sheet, slots } = readSheet(`tempo: ${bpm}\n>RLR >LRL ; times: 16`);
const teacher: Player = { ...practisedPlayer, placementMs: [0, 6, -4] };
/** On top of the teacher's habits, ms on partials 1, 2, 3. */
const added = [0, -9, 15];
const student: Player = { ...teacher, placementMs: teacher.placementMs.map((ms, i) => ms + added[i]!) };

function graded(
  player: Player,
  seed: number,
  change: Partial<TakeSpec> = {},
  model?: PlayedModel,
): TakeResult {
  const { samples, sampleRate } = renderTake({ ...plainTake, slots, bpm, seed, player, ...change });
  return gradeTake(memorySource(samples, sampleRate), sheet, model ? { model } : {});
}

describe("a teacher's recorded take as model", () => {
  const inRoom = { room: rooms[0]! };
  const models = [60, 61, 62, 63, 64].map((seed) => {
    const made = modelFromTake(graded(teacher, seed));
    if (!made.ok) throw new Error(made.reason.code);
    return made.model;
  });

  it('has the deviation of a student in another room found: its intervals hold it', () => {
    const mean = added.reduce((sum, ms) => sum + ms, 0) / 3;
    const measures = models.flatMap((model, i) => graded(student, 70 + i, inRoom, model).model!.measures);
    const places = measures.filter(({ id }) => id === 'model-placement');
    expect(places).toHaveLength(15);
    const held = places.filter(({ scope, outcome }) => {
      const truth = (100 * (added[scope.partial - 1]! - mean)) / partialMs;
      return outcome.state === 'measured' && outcome.low <= truth && truth <= outcome.high;
    });
    expect(held.length / places.length).toBeGreaterThan(coverageBounds(places.length).least);
    for (const { scope, standing } of places) if (scope.partial === 3) expect(standing).toBe('above');
  });

  it('finds the same player alike in another room: 92 % of the figures within the band, none apart', () => {
    const measures = models.flatMap((model, i) => graded(teacher, 80 + i, inRoom, model).model!.measures);
    expect(measures).toHaveLength(30);
    const inside = measures.filter(
      ({ outcome, band }) => outcome.state === 'measured' && Math.abs(outcome.value) <= band,
    );
    expect(inside.length / measures.length).toBeGreaterThanOrEqual(0.92);
    expect(measures.filter(({ standing }) => standing === 'above' || standing === 'below')).toEqual([]);
  });
});
