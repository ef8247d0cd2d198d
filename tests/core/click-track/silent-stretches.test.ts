import { expect, it } from 'vitest';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { silentStretches } from '../../../src/core/click-track/silent-stretches.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';

it('silent stretches are the bars left to the player', () => {
  const parsed = parseSheet('>RLR >LRL >RLR >LRL ; tempo: 120 ; times: 11\n');
  if (!parsed.ok) throw new Error('no sheet');
  const plan = planClicks(parsed.sheet, { ...plainClick, silence: { heard: 2, lengths: [1, 2] } });
  expect(silentStretches(plan)).toEqual([
    { from: 6, to: 8 },
    { from: 12, to: 16 },
    { from: 20, to: 24 },
  ]);
});
