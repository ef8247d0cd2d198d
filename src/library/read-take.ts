import type { TakeResult } from '../core/result/take-result.ts';
import { type Guess, readGuess } from './guess.ts';
import type { Library, LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import { type ListedTake, listedTakes } from './listed-takes.ts';
import type { RecordingFacts } from './recording-facts.ts';
import { listRemarks, type Remark } from './remarks.ts';
import { unpackResult } from './stored-result.ts';

/** A take opened. */
export interface OpenedTake {
  readonly take: ListedTake;
  readonly result: TakeResult;
  readonly sheetText: string;
  /** What was known of the recording besides its sound; grading it again needs it. */
  readonly recordingFacts: RecordingFacts;
  readonly recordingName: string | null;
  readonly remarks: readonly Remark[];
  readonly guess: Guess | null;
}

/**
 * Everything kept of a take but its recording; results of earlier versions come back in this program's. Throws
 * `LibraryFault` when it isn't there or its result can't be read.
 */
export async function readTake(db: LibraryDb, id: string): Promise<OpenedTake> {
  const [take] = await listedTakes(db, [id]);
  const kept = await db
    .selectFrom('take')
    .innerJoin('takeResult', 'takeResult.takeId', 'take.id')
    .innerJoin('sheet', 'sheet.id', 'take.sheetId')
    .leftJoin('audio', 'audio.hash', 'take.audioHash')
    .select(['takeResult.json', 'takeResult.recordingFacts', 'sheet.text', 'audio.name'])
    .where('take.id', '=', id)
    .executeTakeFirst();
  if (take === undefined || kept === undefined) throw new LibraryFault('no-such-take');
  return {
    take,
    result: unpackResult(kept.json),
    sheetText: kept.text,
    recordingFacts: JSON.parse(kept.recordingFacts),
    recordingName: kept.name,
    remarks: await listRemarks(db, id),
    guess: await readGuess(db, id),
  };
}

/** A take's recording, or null when it was kept without; throws `LibraryFault` when it should be there and isn't. */
export async function readAudio({ db, audio }: Library, id: string): Promise<Uint8Array | null> {
  const take = await db.selectFrom('take').select('audioHash').where('id', '=', id).executeTakeFirst();
  if (take === undefined) throw new LibraryFault('no-such-take');
  if (take.audioHash === null) return null;
  const bytes = await audio.get(take.audioHash);
  if (bytes === null) throw new LibraryFault('audio-missing');
  return bytes;
}
