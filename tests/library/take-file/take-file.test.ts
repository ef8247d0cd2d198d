import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readTakeFile } from '../../../src/library/take-file/read-take-file.ts';
import type { TakeFileFaultCode } from '../../../src/library/take-file/take-file-fault.ts';
import { takeFileFaultSentence } from '../../../src/library/take-file/take-file-fault-sentence.ts';
import { writeTakeFile } from '../../../src/library/take-file/write-take-file.ts';
import { describePython } from '../../python-module.ts';
import { madeAudio } from '../made-take.ts';
import { madeParcel } from './made-parcel.ts';

type Files = Record<string, Uint8Array>;
const json = (value: unknown) => new TextEncoder().encode(JSON.stringify(value));
const text = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

/** A take file of one take with something changed in it, packed anew. */
async function changed(change: (files: Files) => void): Promise<Uint8Array> {
  const files = unzipSync(await writeTakeFile([madeParcel(1)]));
  change(files);
  return zipSync(files);
}

async function faultsOf(bytes: Uint8Array): Promise<TakeFileFaultCode[]> {
  const outcome = await readTakeFile(bytes);
  return outcome.ok ? outcome.faults.map(({ code }) => code) : [outcome.fault.code];
}

const folder = '01-2026-03-10-accents-on-1-and-2';

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

describe('a take file that is wrong', () => {
  const rewrite = (path: string, change: (value: string) => string) => (files: Files) => {
    files[path] = new TextEncoder().encode(change(text(files[path])));
  };
  const list = (change: (take: Record<string, never>, manifest: Record<string, unknown>) => void) =>
    rewrite('manifest.json', (value) => {
      const manifest = JSON.parse(value);
      change(manifest.takes[0], manifest);
      return JSON.stringify(manifest);
    });

  it.each<[TakeFileFaultCode, (files: Files) => void]>([
    ['no-manifest', (files) => delete files['manifest.json']],
    ['manifest-unreadable', rewrite('manifest.json', (value) => value.slice(1))],
    ['manifest-unreadable', rewrite('manifest.json', () => '[]')],
    ['manifest-unreadable', list((_, manifest) => Object.assign(manifest, { takes: [] }))],
    ['manifest-unreadable', list((take) => Object.assign(take, { day: '2026-02-31' }))],
    ['manifest-unreadable', list((take) => Object.assign(take, { recordedAt: 'monday' }))],
    ['manifest-newer', list((_, manifest) => Object.assign(manifest, { version: 2 }))],
    ['manifest-unreadable', list((take, manifest) => Object.assign(manifest, { takes: [take, take] }))],
    ['file-missing', (files) => delete files[`${folder}/recording.wav`]],
    ['hash-wrong', rewrite(`${folder}/exercise.sheet`, (value) => value.replace('100', '180'))],
    ['hash-wrong', (files) => (files[`${folder}/recording.wav`] = madeAudio(2))],
    ['hash-wrong', rewrite(`${folder}/result.json`, (value) => value.replace('"score":', '"score": '))],
    ['hash-wrong', rewrite(`${folder}/remarks.json`, () => '[]')],
    ['unsafe-name', (files) => (files['../outside.txt'] = json(1))],
    ['unsafe-name', (files) => (files['/etc/passwd'] = json(1))],
    ['unsafe-name', (files) => (files['a/../../b'] = json(1))],
    ['unsafe-name', (files) => (files['C:\\Windows\\x'] = json(1))],
    ['name-twice', (files) => (files['Manifest.JSON'] = json(1))],
  ])('says %s', async (code, change) => {
    expect(await faultsOf(await changed(change))).toEqual([code]);
  });

  it.each<[TakeFileFaultCode, Partial<ReturnType<typeof madeParcel>>]>([
    ['sheet-unreadable', { sheetText: 'hello' }],
    ['result-unreadable', { result: { sheet: madeParcel(1).result.sheet } as never }],
    ['result-unreadable', { result: { ...madeParcel(1).result, strokes: 3 } as never }],
    ['result-newer', { result: { ...madeParcel(1).result, version: 7 } as never }],
    ['remarks-unreadable', { remarks: [{ id: 'x' }] as never }],
  ])('says %s', async (code, wrong) => {
    const bytes = await writeTakeFile([madeParcel(1, wrong), madeParcel(2)]);
    const outcome = await readTakeFile(bytes);
    expect(outcome.ok && outcome.faults.map((fault) => [fault.code, fault.facts.take])).toEqual([[code, 1]]);
    expect(outcome.ok && outcome.takes).toEqual([madeParcel(2)]);
  });

  it('refuses a recording that the result was not made from', async () => {
    const { result } = madeParcel(1);
    const other = { ...result, recording: { ...result.recording, sha256: 'ab'.repeat(32) } };
    expect(await faultsOf(await writeTakeFile([madeParcel(1, { result: other })]))).toEqual(['hash-wrong']);
  });

  it('refuses what is no archive, cut short or empty', async () => {
    const bytes = await writeTakeFile([madeParcel(1)]);
    expect(await faultsOf(new Uint8Array())).toEqual(['not-a-zip']);
    expect(await faultsOf(madeAudio(1))).toEqual(['not-a-zip']);
    expect(await faultsOf(bytes.subarray(0, bytes.length - 1))).toEqual(['not-a-zip']);
    expect(await faultsOf(bytes.subarray(100))).toEqual(['archive-damaged']);
  });

  it('finds every changed byte of a recording and never throws for any change', async () => {
    const bytes = await writeTakeFile([madeParcel(1)]);
    const intact = [madeParcel(1)];
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), async (at, flip) => {
        const damaged = bytes.slice();
        damaged[at]! ^= flip;
        const outcome = await readTakeFile(damaged);
        // Dates, versions and the like of the archive itself may change without harm; contents never may.
        if (outcome.ok && outcome.faults.length === 0) expect(outcome.takes).toEqual(intact);
      }),
      { numRuns: 400 },
    );
  });

  it('refuses an archive that unpacks to far more than it says, or to more than is sensible', async () => {
    const zeros = new Uint8Array(40 * 1024 * 1024);
    const big = zipSync({ ...unzipSync(await writeTakeFile([madeParcel(1)])), 'manifest.json': zeros });
    expect(big.length).toBeLessThan(100_000);
    expect(await faultsOf(big)).toEqual(['file-too-large']);
    // The directory claims a kilobyte where forty megabytes come out.
    const view = new DataView(big.buffer, big.byteOffset);
    for (let at = 0; at < big.length - 4; at++) {
      if (view.getUint32(at, true) === zeros.length) view.setUint32(at, 1024, true);
    }
    expect(await faultsOf(big)).toEqual(['file-damaged']);
  });

  it('refuses files that share their bytes, locked files and unusual packing', async () => {
    const bytes = await writeTakeFile([madeParcel(1)]);
    const view = (copy: Uint8Array) => new DataView(copy.buffer);
    const firstDirectoryEntry = (copy: Uint8Array) => {
      const end = copy.length - 22;
      return view(copy).getUint32(end + 16, true);
    };
    const patched = (patch: (copy: DataView, entry: number) => void) => {
      const copy = bytes.slice();
      patch(view(copy), firstDirectoryEntry(copy));
      return copy;
    };
    expect(await faultsOf(patched((copy, at) => copy.setUint16(at + 8, 1, true)))).toEqual(['locked']);
    expect(await faultsOf(patched((copy, at) => copy.setUint16(at + 10, 12, true)))).toEqual([
      'packed-unusually',
    ]);
    const shared = patched((copy, at) => {
      const second = at + 46 + copy.getUint16(at + 28, true);
      copy.setUint32(second + 42, copy.getUint32(at + 42, true), true);
    });
    expect(await faultsOf(shared)).toEqual(['archive-damaged']);
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
