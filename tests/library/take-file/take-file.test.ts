import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readTakeFile } from '../../../src/library/take-file/read-take-file.ts';
import type { TakeFileFaultCode } from '../../../src/library/take-file/take-file-fault.ts';
import { takeFileFaultSentence } from '../../../src/library/take-file/take-file-fault-sentence.ts';
import { writeTakeFile } from '../../../src/library/take-file/write-take-file.ts';
import { describePython } from '../../python-module.ts';
import { madeAudio } from '../made-take.ts';
import { madeParcel } from './made-parcel.ts';
import { changed, folder, json, text } from './packed-anew.ts';

describe('a take file', () => {
  it('gives back the takes that were written, several at once', async () => {
    const parcels = [madeParcel(1), madeParcel(2, { player: null, audio: null, guess: null, remarks: [] })];
    const outcome = await readTakeFile(await writeTakeFile(parcels));
    expect(outcome).toEqual({ ok: true, takes: parcels, faults: [] });
  });

  it('holds the recording, the sheet, the result and the remarks under names that people can read', async () => {
    const files = unzipSync(await writeTakeFile([madeParcel(1)]));
    expect(Object.keys(files).sort()).toEqual([
      `${folder}/exercise.sheet`,
      `${folder}/recording.wav`,
      `${folder}/remarks.json`,
      `${folder}/result.json`,
      'manifest.json',
    ]);
    expect(files[`${folder}/recording.wav`]).toEqual(madeAudio(1));
    expect(text(files[`${folder}/exercise.sheet`])).toBe(madeParcel(1).sheetText);
  });

  it('writes a recording that several takes share once, and the same bytes each time', async () => {
    const audio = { name: 'long.wav', bytes: madeAudio(3, 50_000) };
    const parcels = [
      madeParcel(1, { audio, part: { from: 0, to: 9 } }),
      madeParcel(2, { audio, part: { from: 9, to: 20 } }),
    ];
    const bytes = await writeTakeFile(parcels);
    expect(Object.keys(unzipSync(bytes)).filter((name) => name.endsWith('.wav'))).toHaveLength(1);
    const outcome = await readTakeFile(bytes);
    expect(outcome.ok && outcome.takes.map((take) => take.audio?.bytes.length)).toEqual([50_000, 50_000]);
    expect(await writeTakeFile(parcels)).toEqual(bytes);
  });

  it('survives any texts, numbers and bytes', async () => {
    const name = fc.string({ unit: 'binary', maxLength: 30 });
    await fc.assert(
      fc.asyncProperty(
        name,
        name,
        fc.uint8Array({ maxLength: 200 }),
        fc.nat(40_000),
        async (a, b, bytes, day) => {
          const recordedAt = day * 86_400_000;
          const parcel = madeParcel(1, {
            player: { id: 'p', name: a },
            details: { technique: b, pad: a, sticks: b, device: '' },
            tags: [a, b],
            audio: { name: b, bytes },
            recordedAt,
            day: new Date(recordedAt).toISOString().slice(0, 10),
          });
          expect(await readTakeFile(await writeTakeFile([parcel]))).toEqual({
            ok: true,
            takes: [JSON.parse(JSON.stringify(parcel), (k, v) => (k === 'bytes' ? bytes : v))],
            faults: [],
          });
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is read as well when another program packed it anew, with files of its own beside', async () => {
    const bytes = await changed((files) => {
      files['.DS_Store'] = json('of a Mac');
    });
    const outcome = await readTakeFile(bytes);
    expect(outcome.ok && outcome.takes).toEqual([madeParcel(1)]);
  });
});

it('every fault has a sentence that names the file and shows its facts', () => {
  const codes: TakeFileFaultCode[] = [
    'not-a-zip',
    'archive-too-large',
    'archive-damaged',
    'too-many-files',
    'locked',
    'packed-unusually',
    'unsafe-name',
    'name-twice',
    'no-manifest',
    'manifest-unreadable',
    'manifest-newer',
    'file-missing',
    'file-too-large',
    'file-damaged',
    'hash-wrong',
    'sheet-unreadable',
    'result-unreadable',
    'result-newer',
    'remarks-unreadable',
  ];
  const facts = { bytes: 3e9, limit: 1e9, files: 3, name: 'x\u202e', method: 12, reason: 'why', take: 2 };
  for (const code of codes) {
    const sentence = takeFileFaultSentence('lesson.take.zip', { code, facts });
    expect(sentence, code).toMatch(/^("lesson|Take 2 in "lesson).*\.$/);
    expect(sentence, code).not.toMatch(/undefined|NaN|\u202e/);
  }
});

describePython('zipfile', 'take files in Python', (run) => {
  it("Python's zipfile opens one, finds every byte right and reads the manifest", async () => {
    const bytes = await writeTakeFile([madeParcel(1), madeParcel(2)]);
    const script = `
import sys, io, json, base64, zipfile, hashlib
archive = zipfile.ZipFile(io.BytesIO(base64.b64decode(sys.stdin.read())))
assert archive.testzip() is None
manifest = json.loads(archive.read('manifest.json'))
for take in manifest['takes']:
    for file in take['files'].values():
        contents = archive.read(file['path'])
        assert len(contents) == file['bytes']
        assert hashlib.sha256(contents).hexdigest() == file['sha256']
print(json.dumps([manifest['format'], len(manifest['takes']), archive.getinfo('manifest.json').date_time[:3]]))`;
    expect(JSON.parse(run(script, Buffer.from(bytes).toString('base64')))).toEqual([
      'evenhand-take-file',
      2,
      [2026, 3, 11],
    ]);
  });

  it("what Python's zipfile packs is read", async () => {
    const bytes = await writeTakeFile([madeParcel(1)]);
    const script = `
import sys, io, base64, zipfile
old = zipfile.ZipFile(io.BytesIO(base64.b64decode(sys.stdin.read())))
out = io.BytesIO()
with zipfile.ZipFile(out, 'w', zipfile.ZIP_DEFLATED) as new:
    for name in old.namelist():
        new.writestr(name, old.read(name))
print(base64.b64encode(out.getvalue()).decode())`;
    const anew = Buffer.from(run(script, Buffer.from(bytes).toString('base64')), 'base64');
    const outcome = await readTakeFile(new Uint8Array(anew));
    expect(outcome.ok && outcome.takes.map(({ remarks }) => remarks)).toEqual([madeParcel(1).remarks]);
  });
});
