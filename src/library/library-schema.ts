/**
 * The library's tables as queries see them. Ids are text: those of takes and sheets follow from their contents, the
 * others are UUIDs, so that nothing collides when takes travel. Moments are milliseconds since 1970 (UTC); a `day` is
 * the player's own calendar day, `2026-03-09`. Flags are 0 or 1.
 */
export interface LibrarySchema {
  person: PersonTable;
  personAlias: { aliasId: string; personId: string };
  sheet: SheetTable;
  exercise: { id: string; label: string; notation: string };
  audio: AudioTable;
  setUp: SetUpTable;
  take: TakeTable;
  takeResult: TakeResultTable;
  takeLine: TakeLineTable;
  takeTag: { takeId: string; tag: string; recordedAt: number };
  remark: RemarkTable;
  guess: { takeId: string; guessedAt: number; answers: string };
  assignment: AssignmentTable;
  practice: PracticeTable;
  discomfort: DiscomfortTable;
}

export interface PersonTable {
  id: string;
  name: string;
  /** The name as it is compared and sorted: see `nameKey`. */
  nameKey: string;
  role: 'player' | 'student';
  note: string;
  createdAt: number;
}

interface SheetTable {
  id: string;
  /** Untrusted text, as are all titles, labels and names here. */
  title: string;
  titleKey: string;
  text: string;
  lines: number;
}

interface AudioTable {
  /** SHA-256 of the file's bytes; its name in the audio store. */
  hash: string;
  bytes: number;
  /** The recording's own file name. */
  name: string;
}

/** Eight strokes a hand at one height, played before takes whose levels are to be compared. */
interface SetUpTable {
  id: string;
  personId: string | null;
  recordedAt: number;
  day: string;
  pad: string;
  sticks: string;
  device: string;
  /** `SetUpLevels` as JSON. */
  levels: string;
}

export interface TakeTable {
  id: string;
  personId: string | null;
  sheetId: string;
  audioHash: string | null;
  /** Part of the recording that the take is, s; null for the whole. */
  partFrom: number | null;
  partTo: number | null;
  recordedAt: number;
  day: string;
  keptAt: number;
  /** s. */
  duration: number;
  /** Slowest and fastest tempo asked for; null where it was left open. */
  bpmLow: number | null;
  bpmHigh: number | null;
  bpmPlayed: number | null;
  graded: 0 | 1;
  rubric: string | null;
  score: number | null;
  scoreLow: number | null;
  scoreHigh: number | null;
  scoreWord: 'secure' | 'nearly' | 'not-yet' | null;
  /** Scores of the dimensions as JSON: `[{ id, score, word }]`. */
  dimensions: string;
  timingSpreadMs: number | null;
  timingSpreadShare: number | null;
  ratioDb: number | null;
  strokesRight: number;
  strokesLeft: number;
  /** Strokes whose hand isn't told. */
  strokesOther: number;
  missed: number;
  technique: string;
  pad: string;
  sticks: string;
  device: string;
  setUpId: string | null;
  /** Version of the program that graded it, and the digest of what grades in it (`grader-version.ts`). */
  gradedWith: string;
  /** Whether its advice says that the end gave way; null where a program wrote it that didn't put it down here. */
  endGaveWay: 0 | 1 | null;
}

interface TakeResultTable {
  takeId: string;
  version: number;
  /** The `TakeResult` as JSON, deflated. */
  json: Uint8Array;
  /** `RecordingFacts` as JSON. */
  recordingFacts: string;
}

/** One line of a take: what is compared over days and weeks. */
export interface TakeLineTable {
  takeId: string;
  /** Its place on the sheet. */
  place: number;
  exerciseId: string;
  /** 1 for the first line of the take with this exercise. */
  isFirst: 0 | 1;
  personId: string | null;
  recordedAt: number;
  day: string;
  bpm: number | null;
  bpmPlayed: number | null;
  repeats: number;
  /** `LineFigures` as JSON. */
  figures: string;
}

export interface RemarkTable {
  id: string;
  takeId: string;
  /** The moment it speaks of, s from the start of the recording; null for the whole take. */
  moment: number | null;
  text: string;
  author: string;
  writtenAt: number;
  changedAt: number;
}

export interface AssignmentTable {
  id: string;
  personId: string | null;
  sheetId: string;
  bpm: number | null;
  dueDay: string | null;
  note: string;
  setAt: number;
  doneAt: number | null;
}

/** Practice that wasn't recorded, written down by hand. */
export interface PracticeTable {
  id: string;
  personId: string | null;
  day: string;
  minutes: number;
  strokesRight: number | null;
  strokesLeft: number | null;
  note: string;
}

/** Private: never leaves the library with a take. */
export interface DiscomfortTable {
  id: string;
  personId: string | null;
  day: string;
  text: string;
}
