import { expect, it } from 'vitest';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { placeAt } from '../../../src/page/practise/place-at.ts';

it('placeAt tells where a sheet is', () => {
  const parsed = parseSheet('>RLR >LRL ; tempo: 120 ; times: 3 ; rest: 2\nRL RL ; tempo: 60\n');
  if (!parsed.ok) throw new Error('no sheet');
  const { sheet } = parsed;
  const plan = planClicks(sheet, { ...plainClick, silence: { heard: 1, lengths: [1] } });
  const at = (time: number) => placeAt(sheet, plan, time);
  expect(at(-0.1)).toEqual({ phase: 'count-in', beat: 0, of: 4 });
  expect(at(0)).toEqual({ phase: 'count-in', beat: 1, of: 4 });
  expect(at(1.9)).toEqual({ phase: 'count-in', beat: 4, of: 4 });
  expect(at(2)).toEqual({ phase: 'play', line: 1, repeat: 1, beat: 1, silent: false });
  expect(at(4.6)).toEqual({ phase: 'play', line: 1, repeat: 3, beat: 2, silent: true });
  expect(at(5.1)).toEqual({ phase: 'rest', line: 1, beatsLeft: 2 });
  expect(at(5.9)).toEqual({ phase: 'rest', line: 1, beatsLeft: 1 });
  expect(at(6)).toMatchObject({ phase: 'play', line: 2, repeat: 1, beat: 1 });
  expect(at(7.99)).toMatchObject({ phase: 'play', line: 2, beat: 2 });
  expect(at(8)).toEqual({ phase: 'over' });
});
