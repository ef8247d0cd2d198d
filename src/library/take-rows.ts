import type { Insertable } from 'kysely';
import type { TakeResult } from '../core/result/take-result.ts';
import type { LibrarySchema, TakeLineTable, TakeTable } from './library-schema.ts';
import { lineFigures } from './line-figures.ts';
import { lineTempos } from './line-tempos.ts';
import { nameKey, plainName } from './name-key.ts';
import { type NewTake, noDetails } from './new-take.ts';
import type { RecordingFacts } from './recording-facts.ts';
import { packResult } from './stored-result.ts';
import { takeSummary } from './take-summary.ts';

/** Tags of a take as they are kept: plain, each once. */
export function plainTags(tags: readonly string[]): readonly string[] {
  return [...new Set(tags.map((tag) => nameKey(plainName(tag))).filter((tag) => tag !== ''))];
}

/** The row of a take's own table. */
export function takeRow(id: string, sheetId: string, audioHash: string | null, take: NewTake): TakeTable {
  const details = { ...noDetails, ...take.details };
  return {
    id,
    personId: take.personId,
    sheetId,
    audioHash,
    partFrom: take.part?.from ?? null,
    partTo: take.part?.to ?? null,
    recordedAt: take.recordedAt,
    day: take.day,
    keptAt: take.keptAt,
    technique: plainName(details.technique),
    pad: plainName(details.pad),
    sticks: plainName(details.sticks),
    device: plainName(details.device),
    setUpId: take.setUpId ?? null,
    gradedWith: take.gradedWith ?? '',
    ...takeSummary(take.result),
  };
}

/** The rows of a take's lines. */
export function lineRows(
  take: Pick<TakeTable, 'id' | 'personId' | 'recordedAt' | 'day'>,
  result: TakeResult,
): TakeLineTable[] {
  const tempos = lineTempos(result);
  const seen = new Set<string>();
  return result.sheet.lines.map(({ id: exerciseId, bpm, repeats }, place) => {
    const isFirst = seen.has(exerciseId) ? 0 : 1;
    seen.add(exerciseId);
    return {
      takeId: take.id,
      place,
      exerciseId,
      isFirst,
      personId: take.personId,
      recordedAt: take.recordedAt,
      day: take.day,
      bpm,
      bpmPlayed: tempos[place] ?? null,
      repeats,
      figures: JSON.stringify(lineFigures(result, place)),
    };
  });
}

/** The exercises that a take's lines name, each once. */
export function exerciseRows({ sheet }: TakeResult): Insertable<LibrarySchema['exercise']>[] {
  const rows = sheet.lines.map(({ id, label, notation }) => ({ id, label, notation }));
  return [...new Map(rows.map((row) => [row.id, row])).values()];
}

/** The row of a take's result. */
export const resultRow = (
  takeId: string,
  result: TakeResult,
  recordingFacts: RecordingFacts,
): Insertable<LibrarySchema['takeResult']> => ({
  takeId,
  version: result.version,
  json: packResult(result),
  recordingFacts: JSON.stringify(recordingFacts),
});
