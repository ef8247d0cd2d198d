import type { Migration } from './migration.ts';

const people = [
  `create table person (
    id text primary key, name text not null, nameKey text not null,
    role text not null check (role in ('player', 'student')),
    note text not null, createdAt integer not null) strict`,
  'create index personByName on person (nameKey, id)',
  `create table personAlias (
    aliasId text primary key, personId text not null references person on delete cascade
  ) strict, without rowid`,
  'create index personAliasByPerson on personAlias (personId)',
];

const written = [
  `create table sheet (
    id text primary key, title text not null, titleKey text not null, text text not null,
    lines integer not null) strict`,
  `create table exercise (id text primary key, label text not null, notation text not null) strict, without rowid`,
  `create table audio (hash text primary key, bytes integer not null, name text not null) strict, without rowid`,
  `create table setUp (
    id text primary key, personId text references person on delete cascade, recordedAt integer not null,
    day text not null, pad text not null, sticks text not null, device text not null, levels text not null) strict`,
  'create index setUpByPerson on setUp (personId, recordedAt)',
];

const takes = [
  `create table take (
    id text primary key, personId text references person, sheetId text not null references sheet,
    audioHash text references audio, partFrom real, partTo real,
    recordedAt integer not null, day text not null, keptAt integer not null, duration real not null,
    bpmLow real, bpmHigh real, bpmPlayed real, graded integer not null check (graded in (0, 1)),
    rubric text, score real, scoreLow real, scoreHigh real,
    scoreWord text check (scoreWord in ('secure', 'nearly', 'not-yet')), dimensions text not null,
    timingSpreadMs real, timingSpreadShare real, ratioDb real,
    strokesRight integer not null, strokesLeft integer not null, strokesOther integer not null,
    missed integer not null, technique text not null, pad text not null, sticks text not null,
    device text not null, setUpId text references setUp on delete set null, gradedWith text not null) strict`,
  // With the tempos beside the keys, a search for a tempo reads the index alone.
  'create index takeByTime on take (recordedAt, id, bpmLow, bpmHigh, score)',
  'create index takeByPerson on take (personId, recordedAt, id)',
  'create index takeByScore on take (score, recordedAt, id)',
  'create index takeByDay on take (day, personId, duration, strokesRight, strokesLeft, strokesOther)',
  'create index takeByTechnique on take (technique, recordedAt, id)',
  'create index takeBySheet on take (sheetId, recordedAt)',
  'create index takeByAudio on take (audioHash)',
  'create index takeBySetUp on take (setUpId)',
  `create table takeResult (
    takeId text primary key references take on delete cascade, version integer not null, json blob not null,
    recordingFacts text not null) strict`,
  `create table takeLine (
    takeId text not null references take on delete cascade, place integer not null,
    exerciseId text not null references exercise, isFirst integer not null check (isFirst in (0, 1)),
    personId text references person, recordedAt integer not null, day text not null,
    bpm real, bpmPlayed real, repeats integer not null, figures text not null,
    primary key (takeId, place)) strict`,
  'create index takeLineByExercise on takeLine (exerciseId, recordedAt, takeId) where isFirst = 1',
  'create index takeLineByPerson on takeLine (personId, exerciseId, recordedAt, takeId)',
  `create table takeTag (
    takeId text not null references take on delete cascade, tag text not null, recordedAt integer not null,
    primary key (takeId, tag)) strict, without rowid`,
  'create index takeTagByTag on takeTag (tag, recordedAt, takeId)',
];

const notes = [
  `create table remark (
    id text primary key, takeId text not null references take on delete cascade, moment real,
    text text not null, author text not null, writtenAt integer not null, changedAt integer not null) strict`,
  'create index remarkByTake on remark (takeId, moment)',
  `create table guess (
    takeId text primary key references take on delete cascade, guessedAt integer not null,
    answers text not null) strict, without rowid`,
  `create table assignment (
    id text primary key, personId text references person on delete cascade,
    sheetId text not null references sheet, bpm real, dueDay text, note text not null,
    setAt integer not null, doneAt integer) strict`,
  'create index assignmentByPerson on assignment (personId, setAt)',
  'create index assignmentBySheet on assignment (sheetId)',
  `create table practice (
    id text primary key, personId text references person on delete cascade, day text not null,
    minutes real not null check (minutes >= 0), strokesRight integer, strokesLeft integer,
    note text not null) strict`,
  'create index practiceByDay on practice (personId, day)',
  `create table discomfort (
    id text primary key, personId text references person on delete cascade, day text not null,
    text text not null) strict`,
  'create index discomfortByDay on discomfort (personId, day)',
];

export const firstSchema: Migration = {
  title: 'people, takes and what is written about them',
  statements: [...people, ...written, ...takes, ...notes],
};
