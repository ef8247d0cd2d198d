import { faultText } from '../../../core/exercise/fault-text.ts';
import { parseSheet } from '../../../core/exercise/parse-sheet.ts';
import { gradeRecorded } from '../../practise/grade-recorded.ts';
import { showTake } from '../../result/shown-take.ts';
import type { RecoveredSound, UnfinishedTake } from '../kept/recover-takes.ts';
import { recoveredAsRecorded } from '../kept/recovered-take.ts';
import { RecoveredTakes } from './recovered-takes.tsx';

/** Recovered recordings with their grading. */
export function GradeRecovered() {
  return <RecoveredTakes grade={grade} />;
}

async function grade(take: UnfinishedTake, sound: RecoveredSound): Promise<void> {
  const parsed = parseSheet(take.sheetText);
  if (!parsed.ok) {
    const reasons = parsed.faults.map((fault) => faultText(take.sheetText, fault)).join(' ');
    throw new Error(`Its sheet can't be read any more (${reasons}). Save the recording as a file.`);
  }
  const facts = {
    sheet: parsed.sheet,
    name: take.name,
    guessFirst: false,
    discomfort: false,
    recordedAt: Date.parse(take.startedAt),
  };
  showTake(await gradeRecorded(recoveredAsRecorded(take, sound), facts));
}
