import { keepGuess } from './guess.ts';
import { keepTake } from './keep-take.ts';
import type { Library, LibraryDb } from './library.ts';
import { nameKey, plainName } from './name-key.ts';
import { personFor } from './people.ts';
import { readAudio, readTake } from './read-take.ts';
import { writeRemark } from './remarks.ts';
import { keepSetUp, readSetUp } from './set-up.ts';
import type { TakeParcel } from './take-file/take-parcel.ts';

/** A kept take made ready to travel. */
export async function takeParcel(library: Library, id: string): Promise<TakeParcel> {
  const { take, result, sheetText, recordingName, remarks, guess, recordingFacts } = await readTake(
    library.db,
    id,
  );
  const bytes = await readAudio(library, id);
  const { personId, personName, recordedAt, day, partFrom, partTo, tags, gradedWith, setUpId } = take;
  const { technique, pad, sticks, device } = take;
  const setUp = setUpId === null ? null : await readSetUp(library.db, setUpId);
  return {
    player: personId === null || personName === null ? null : { id: personId, name: personName },
    recordedAt,
    day,
    part: partFrom === null || partTo === null ? null : { from: partFrom, to: partTo },
    details: { technique, pad, sticks, device },
    tags,
    gradedWith,
    setUp: setUp === null ? null : withoutPerson(setUp),
    guess,
    recordingFacts,
    audio: bytes === null ? null : { name: recordingName ?? result.recording.name, bytes },
    sheetText,
    result,
    remarks: remarks.map(({ takeId: _, ...remark }) => remark),
  };
}

const withoutPerson = <T extends { readonly personId: unknown }>({
  personId: _,
  ...rest
}: T): Omit<T, 'personId'> => rest;

export interface ReceivedTake {
  readonly id: string;
  readonly outcome: 'kept' | 'already-there';
  /** Remarks that weren't there, or not in their newest words. */
  readonly newRemarks: number;
}

/**
 * Keeps a take that came from another library, whole or not at all, with its player and remarks. One that is there
 * already stays as it is and only gets the remarks that are new, so that receiving twice changes nothing.
 */
export async function receiveTake(
  library: Library,
  parcel: TakeParcel,
  keptAt: number,
): Promise<ReceivedTake> {
  const { player, setUp, remarks, guess, ...take } = parcel;
  let newRemarks = 0;
  const before = async (transaction: LibraryDb) => {
    const named = player !== null && nameKey(plainName(player.name)) !== '';
    const personId = !named ? null : await personFor(transaction, player, keptAt);
    if (setUp !== null) await keepSetUp(transaction, { ...setUp, personId });
    return { personId, setUpId: setUp?.id ?? null };
  };
  const after = async (transaction: LibraryDb, takeId: string) => {
    for (const remark of remarks) {
      if (remark.text.trim() === '') continue;
      if (await writeRemark(transaction, { ...remark, takeId })) newRemarks++;
    }
    if (guess !== null) await keepGuess(transaction, { takeId, guess });
  };
  const { id, outcome } = await keepTake(library, { ...take, personId: null, keptAt }, { before, after });
  return { id, outcome, newRemarks };
}
