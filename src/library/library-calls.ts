import {
  type Assignment,
  deleteAssignment,
  finishAssignment,
  listAssignments,
  setAssignment,
} from './assignments.ts';
import { changeTake, regradeTake } from './change-take.ts';
import { clearUnreferencedAudio } from './delete-audio.ts';
import { deleteTakes } from './delete-takes.ts';
import { filterChoices } from './filter-choices.ts';
import { judgedGuesses, keepGuess, listGuesses } from './guess.ts';
import { keepTake } from './keep-take.ts';
import { lessonOf, lessonsOf } from './lesson.ts';
import type { Library } from './library.ts';
import { listLinePlays } from './line-plays.ts';
import { listSheets } from './list-sheets.ts';
import { countTakes, listTakes } from './list-takes.ts';
import { deletePerson, giveTake, mergePeople } from './move-people.ts';
import type { NewTake } from './new-take.ts';
import { assignmentsPlayed, openAssignments } from './open-assignments.ts';
import { addPerson, changePerson, listPeople, type Person } from './people.ts';
import { nextTempoOf, playerProgress } from './player-progress.ts';
import {
  type DiscomfortNote,
  deleteDiscomfort,
  deletePractice,
  listDiscomfort,
  listPractice,
  type PracticeEntry,
  practiceDays,
  writeDiscomfort,
  writePractice,
} from './practice.ts';
import { practiceOf } from './practice-of.ts';
import { readAudio, readTake } from './read-take.ts';
import { receiveAssignment } from './receive-assignment.ts';
import { deleteRemark, type Remark, writeRemark } from './remarks.ts';
import { keepSetUp, listSetUps, type SetUp } from './set-up.ts';
import { storageUse } from './storage-use.ts';
import { exportTakes, importTakeFile } from './take-files.ts';
import type { TakeFilter } from './take-filter.ts';

type Of<F extends (...all: never[]) => unknown> = Parameters<F>[1];

/**
 * Everything that can be asked of a library from outside, each with one argument: what a page says to the worker or
 * the server that holds one.
 */
export const libraryCalls = {
  keepTake: (library: Library, take: NewTake) => keepTake(library, take),
  listTakes: ({ db }: Library, asked: Of<typeof listTakes>) => listTakes(db, asked),
  countTakes: ({ db }: Library, filter: TakeFilter) => countTakes(db, filter),
  listSheets: ({ db }: Library, limit: number) => listSheets(db, limit),
  filterChoices: ({ db }: Library) => filterChoices(db),
  readTake: ({ db }: Library, id: string) => readTake(db, id),
  readAudio: (library: Library, id: string) => readAudio(library, id),
  changeTake: ({ db }: Library, change: Of<typeof changeTake>) => changeTake(db, change),
  regradeTake: ({ db }: Library, graded: Of<typeof regradeTake>) => regradeTake(db, graded),
  deleteTakes: (library: Library, ids: readonly string[]) => deleteTakes(library, ids),
  clearUnreferencedAudio: (library: Library) => clearUnreferencedAudio(library),
  storageUse: ({ db }: Library) => storageUse(db),
  exportTakes: (library: Library, ids: readonly string[]) => exportTakes(library, ids),
  importTakeFile: (library: Library, file: Of<typeof importTakeFile>) => importTakeFile(library, file),

  listPeople: ({ db }: Library) => listPeople(db),
  addPerson: ({ db }: Library, person: Person) => addPerson(db, person),
  changePerson: ({ db }: Library, change: Of<typeof changePerson>) => changePerson(db, change),
  giveTake: ({ db }: Library, gift: Of<typeof giveTake>) => giveTake(db, gift),
  mergePeople: ({ db }: Library, pair: Of<typeof mergePeople>) => mergePeople(db, pair),
  deletePerson: (library: Library, id: string) => deletePerson(library, id),

  writeRemark: ({ db }: Library, remark: Remark) => writeRemark(db, remark),
  deleteRemark: ({ db }: Library, id: string) => deleteRemark(db, id),
  keepGuess: ({ db }: Library, guess: Of<typeof keepGuess>) => keepGuess(db, guess),
  listGuesses: ({ db }: Library, asked: Of<typeof listGuesses>) => listGuesses(db, asked),
  judgedGuesses: ({ db }: Library, asked: Of<typeof judgedGuesses>) => judgedGuesses(db, asked),
  keepSetUp: ({ db }: Library, setUp: SetUp) => keepSetUp(db, setUp),
  listSetUps: ({ db }: Library, asked: Of<typeof listSetUps>) => listSetUps(db, asked),
  playerProgress: ({ db }: Library, asked: Of<typeof playerProgress>) => playerProgress(db, asked),
  nextTempoOf: ({ db }: Library, asked: Of<typeof nextTempoOf>) => nextTempoOf(db, asked),
  lessonOf: ({ db }: Library, asked: Of<typeof lessonOf>) => lessonOf(db, asked),
  lessonsOf: ({ db }: Library, asked: Of<typeof lessonsOf>) => lessonsOf(db, asked),
  listLinePlays: ({ db }: Library, asked: Of<typeof listLinePlays>) => listLinePlays(db, asked),

  setAssignment: ({ db }: Library, assignment: Assignment) => setAssignment(db, assignment),
  listAssignments: ({ db }: Library, asked: Of<typeof listAssignments>) => listAssignments(db, asked),
  receiveAssignment: ({ db }: Library, sheet: Of<typeof receiveAssignment>) => receiveAssignment(db, sheet),
  openAssignments: ({ db }: Library, personId: string | null) => openAssignments(db, personId),
  assignmentsPlayed: ({ db }: Library) => assignmentsPlayed(db),
  finishAssignment: ({ db }: Library, change: Of<typeof finishAssignment>) => finishAssignment(db, change),
  deleteAssignment: ({ db }: Library, id: string) => deleteAssignment(db, id),

  writePractice: ({ db }: Library, entry: PracticeEntry) => writePractice(db, entry),
  deletePractice: ({ db }: Library, id: string) => deletePractice(db, id),
  listPractice: ({ db }: Library, days: Of<typeof listPractice>) => listPractice(db, days),
  practiceOf: ({ db }: Library, days: Of<typeof practiceOf>) => practiceOf(db, days),
  practiceDays: ({ db }: Library, days: Of<typeof practiceDays>) => practiceDays(db, days),
  writeDiscomfort: ({ db }: Library, note: DiscomfortNote) => writeDiscomfort(db, note),
  listDiscomfort: ({ db }: Library, days: Of<typeof listDiscomfort>) => listDiscomfort(db, days),
  deleteDiscomfort: ({ db }: Library, id: string) => deleteDiscomfort(db, id),
};

type LibraryCalls = typeof libraryCalls;
export type LibraryCallName = keyof LibraryCalls;

/** A library as whoever asks it sees it: the same calls without the library; refusals are `LibraryFault`s. */
export type LibraryClient = {
  readonly [Name in LibraryCallName]: (
    ...argument: Parameters<LibraryCalls[Name]> extends [Library, infer Argument] ? [Argument] : []
  ) => ReturnType<LibraryCalls[Name]>;
};
