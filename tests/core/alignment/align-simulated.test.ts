import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { alignTake } from '../../../src/core/alignment/align-take.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { type Judgement, judge, slotF } from './judge-alignment.ts';
import { padStrokes } from './made-sheet.ts';
import { realities } from './realities.ts';
import { simulateTake } from './simulated-take.ts';

const seeds = [101, 102, 103, 104, 105];
const sum = (judgements: readonly Judgement[], of: (judgement: Judgement) => number): number =>
  judgements.reduce((total, judgement) => total + of(judgement), 0);

describe('simulated takes with known truth', () => {
  const all: Judgement[] = [];
  for (const [name, reality] of Object.entries(realities)) {
    it(name, () => {
      const judgements = seeds.map((seed) => {
        const take = simulateTake(reality(seed));
        return judge(take, alignTake(take));
      });
      all.push(...judgements);
      const total = {
        right: sum(judgements, ({ right }) => right),
        found: sum(judgements, ({ found }) => found),
        wanted: sum(judgements, ({ wanted }) => wanted),
      };
      // strokes put in just where another was missed can't be told from an early or late one
      expect(slotF(total)).toBeGreaterThan(0.995);
      expect(sum(judgements, ({ wronglyGraded }) => wronglyGraded)).toBe(0);
      expect(judgements.filter(({ segmentsRight }) => segmentsRight).length).toBeGreaterThanOrEqual(4);
    });
  }

  it('segments are right in 95 % of all of them', () => {
    expect(all).toHaveLength(seeds.length * Object.keys(realities).length);
    const right = all.filter(({ segmentsRight }) => segmentsRight).length;
    expect(right / all.length).toBeGreaterThan(0.95);
  });
});

describe('sample takes of the renderer, whose truth comes from another program part', () => {
  const folder = join(import.meta.dirname, '../../../fixtures/takes');
  interface Truth {
    readonly strokes: readonly {
      time: number;
      levelDb: number;
      slot: number | null;
      segment: number | null;
      role: string;
    }[];
    readonly segments: readonly { state: string }[];
  }
  it.each([
    'sloppy',
    'restart-from-bar-5',
    'third-repeat',
    'talk-and-noodling-first',
    'missed-and-extra',
    'tempo-error',
  ])('%s', (name) => {
    const parsed = parseSheet(readFileSync(join(folder, `${name}.sheet`), 'utf8'));
    if (!parsed.ok) throw new Error(name);
    const truth = JSON.parse(readFileSync(join(folder, `${name}.truth.json`), 'utf8')) as Truth;
    const played = [...truth.strokes].sort((a, b) => a.time - b.time);
    const strokes = padStrokes(
      played.map(({ time }) => time),
      played.map(({ levelDb }) => levelDb),
    );
    const slots = layOut(parsed.sheet);
    const alignment = alignTake({ slots, sheet: parsed.sheet, strokes, click: null });
    const wanted = played.flatMap(({ slot, segment, role }, stroke) =>
      slot !== null && segment !== null && role === 'take' && truth.segments[segment]!.state === 'graded'
        ? [`${stroke} on ${slot}`]
        : [],
    );
    expect(
      alignment.matches
        .filter(({ segment }) => alignment.segments[segment]!.state === 'graded')
        .map(({ stroke, slot }) => `${stroke} on ${slot}`),
    ).toEqual(wanted);
  });
});
