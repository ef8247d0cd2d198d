import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CompiledQuery } from 'kysely';
import { describe, expect, it } from 'vitest';
import { clearUnreferencedAudio } from '../../src/library/delete-audio.ts';
import { deleteTakes } from '../../src/library/delete-takes.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { LibraryFault } from '../../src/library/library-fault.ts';
import { countTakes, listTakes } from '../../src/library/list-takes.ts';
import { readAudio, readTake } from '../../src/library/read-take.ts';
import { sha256Hex } from '../../src/library/sha256-hex.ts';
import { madeAudio, madeTake, sheetText } from './made-take.ts';
import { withLibrary } from './temporary-library.ts';

describe('keepTake', () => {
  it('keeps a take with all that belongs to it, and gives it back as it was', () =>
    withLibrary(async (library) => {
      const take = madeTake(1, {
        tags: ['Warm-up', 'warm-up '],
        details: { pad: 'old pad' },
        recordingFacts: { gaps: [{ at: 1, frames: 2 }] },
      });
      const { id, outcome } = await keepTake(library, take);
      expect(outcome).toBe('kept');
      const opened = await readTake(library.db, id);
      expect(opened.result).toEqual(take.result);
      expect(opened.sheetText).toBe(sheetText);
      expect(opened.recordingFacts).toEqual({ gaps: [{ at: 1, frames: 2 }] });
      expect(opened.recordingName).toBe('take-1.wav');
      expect(opened.take).toMatchObject({
        title: 'Accents on 1 and 2',
        lines: ['Accent on 1, hand-to-hand', 'Accent on 2, hand-to-hand'],
        tags: ['warm-up'],
        pad: 'old pad',
        technique: '',
        day: '2026-03-10',
        graded: true,
        bpmLow: 100,
        bpmHigh: 100,
        audioBytes: 1000,
        missed: 1,
        timingSpreadMs: 11.6,
      });
      expect(Buffer.from((await readAudio(library, id))!)).toEqual(Buffer.from(madeAudio(1)));
    }));

  it('changes nothing when the same recording comes with the same sheet again', () =>
    withLibrary(async (library) => {
      const first = await keepTake(library, madeTake(1));
      const again = await keepTake(library, madeTake(1, { recordedAt: 5, day: '2020-01-01' }));
      expect(again).toEqual({ id: first.id, outcome: 'already-there' });
      expect(await countTakes(library.db)).toBe(1);
      expect((await readTake(library.db, first.id)).take.day).toBe('2026-03-10');
    }));

  it('keeps one recording for takes that share it, until the last of them goes', () =>
    withLibrary(async (library) => {
      const audio = { name: 'long.wav', bytes: madeAudio(9) };
      const one = await keepTake(library, madeTake(1, { audio, part: { from: 0, to: 20 } }));
      const two = await keepTake(library, madeTake(2, { audio, part: { from: 20, to: 40 } }));
      expect(one.id).not.toBe(two.id);
      const hash = await sha256Hex(madeAudio(9));
      expect(await library.audio.list()).toEqual([hash]);

      expect(await deleteTakes(library, [one.id])).toEqual({ takes: 1, audioBytes: 0 });
      expect(await library.audio.has(hash)).toBe(true);
      expect(await deleteTakes(library, [two.id, two.id, 'nobody'])).toEqual({ takes: 1, audioBytes: 1000 });
      expect(await library.audio.list()).toEqual([]);
    }));

  it('keeps nothing at all when something is wrong', () =>
    withLibrary(async (library) => {
      const good = madeTake(1);
      const wrong = [
        madeTake(1, { personId: 'nobody' }),
        madeTake(1, { day: '2026-02-30' }),
        madeTake(1, { recordedAt: Number.NaN }),
        { ...good, result: { ...good.result, strokes: null } as unknown as typeof good.result },
        { ...good, result: { ...good.result, version: 2 } as unknown as typeof good.result },
        { ...good, result: { ...good.result, recording: { ...good.result.recording, sha256: '0' } } },
      ];
      for (const take of wrong) await expect(keepTake(library, take)).rejects.toBeInstanceOf(LibraryFault);
      expect(await countTakes(library.db)).toBe(0);
      expect(await library.audio.list()).toEqual([]);
      for (const table of ['sheet', 'exercise', 'audio', 'takeLine', 'takeResult'] as const) {
        expect(await library.db.selectFrom(table).selectAll().execute(), table).toEqual([]);
      }
    }));
});

describe('deleteTakes', () => {
  it('leaves nothing of a take in any table, and no text of it in the files', () =>
    withLibrary(async (library) => {
      const secret = 'Zanzibar-Quartett';
      const kept = await keepTake(library, madeTake(1));
      const text = `title: ${secret}\n\n>RLR >LRL\n`;
      const result = madeTake(2, {}, { sheet: { ...madeTake(1).result.sheet, title: secret } }).result;
      const { id } = await keepTake(library, madeTake(2, { result, sheetText: text, tags: [secret] }));
      await library.db.executeQuery(CompiledQuery.raw('pragma wal_checkpoint(truncate)'));
      const holdsSecret = () =>
        readdirSync(library.folder)
          .filter((name) => name.startsWith('takes.sqlite'))
          .some((name) => readFileSync(join(library.folder, name)).includes(secret));
      expect(holdsSecret()).toBe(true);
      await deleteTakes(library, [id]);
      expect(holdsSecret()).toBe(false);
      expect(await library.audio.list()).toHaveLength(1);
      expect((await listTakes(library.db)).takes.map((take) => take.id)).toEqual([kept.id]);
      expect(await library.db.selectFrom('takeTag').selectAll().execute()).toEqual([]);
      expect(await library.db.selectFrom('sheet').select('title').execute()).toHaveLength(1);
    }));

  it('gives the room back', () =>
    withLibrary(async (library) => {
      const ids: string[] = [];
      for (let i = 0; i < 40; i++) ids.push((await keepTake(library, madeTake(i))).id);
      await library.db.executeQuery(CompiledQuery.raw('pragma wal_checkpoint(truncate)'));
      const path = join(library.folder, 'takes.sqlite');
      const full = readFileSync(path).length;
      await deleteTakes(library, ids);
      expect(readFileSync(path).length).toBeLessThan(full / 2);
      const wal = `${path}-wal`;
      expect(existsSync(wal) ? readFileSync(wal).length : 0).toBe(0);
    }));
});

it('clearUnreferencedAudio takes away what no take uses, and only that', () =>
  withLibrary(async (library) => {
    await keepTake(library, madeTake(1));
    const orphan = madeAudio(77);
    await library.audio.put(await sha256Hex(orphan), orphan);
    expect(await library.audio.list()).toHaveLength(2);
    expect(await clearUnreferencedAudio(library)).toBe(1);
    expect(await library.audio.list()).toEqual([await sha256Hex(madeAudio(1))]);
  }));
