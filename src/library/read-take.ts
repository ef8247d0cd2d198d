import type { TakeResult } from '../core/result/take-result.ts';
import { type Guess, readGuess } from './guess.ts';
import { keptJson } from './kept-json.ts';
import type { Library, LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import { type ListedTake, listedTakes } from './listed-takes.ts';
import type { RecordingFacts } from './recording-facts.ts';
import { listRemarks, type Remark } from './remarks.ts';
import { sha256Hex } from './sha256-hex.ts';
import { unpackResult } from './stored-result.ts';

/** What is kept of a take besides its recording; its result as it lies in the tables. */
interface TakeParts {
  readonly take: ListedTake;
  readonly json: Uint8Array;
  readonly sheetText: string;
  /** What was known of the recording besides its sound; grading it again needs it. */
  readonly recordingFacts: RecordingFacts;
  readonly recordingName: string | null;
  readonly remarks: readonly Remark[];
  readonly guess: Guess | null;
}

/** A take opened. */
export interface OpenedTake extends Omit<TakeParts, 'json'> {
  readonly result: TakeResult;
}

/**
 * Everything kept of a take but its recording; results of earlier versions come back in this program's. Throws
 * `LibraryFault` when it isn't there or its result can't be read.
 */
export async function readTake(db: LibraryDb, id: string): Promise<OpenedTake> {
  const { json, ...kept } = await readKeptTake(db, id);
  return { ...kept, result: unpackResult(json) };
}

/** The same of a take whose result needn't be readable; throws `LibraryFault` when it isn't there. */
export async function readKeptTake(db: LibraryDb, id: string): Promise<TakeParts> {
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
    json: kept.json,
    sheetText: kept.text,
    recordingFacts: keptJson(kept.recordingFacts),
    recordingName: kept.name,
    remarks: await listRemarks(db, id),
    guess: await readGuess(db, id),
  };
}

/**
 * A take's recording, or null when it was kept without; throws `LibraryFault` when it should be there and isn't, or has
 * other bytes than it was kept with.
 */
export async function readAudio({ db, audio }: Library, id: string): Promise<Uint8Array | null> {
  const take = await db.selectFrom('take').select('audioHash').where('id', '=', id).executeTakeFirst();
  if (take === undefined) throw new LibraryFault('no-such-take');
  if (take.audioHash === null) return null;
  const bytes = await audio.get(take.audioHash);
  if (bytes === null) throw new LibraryFault('audio-missing');
  if ((await sha256Hex(bytes)) !== take.audioHash) throw new LibraryFault('audio-damaged');
  return bytes;
}
