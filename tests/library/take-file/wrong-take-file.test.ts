import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readTakeFile } from '../../../src/library/take-file/read-take-file.ts';
import type { TakeFileFaultCode } from '../../../src/library/take-file/take-file-fault.ts';
import { writeTakeFile } from '../../../src/library/take-file/write-take-file.ts';
import { madeAudio } from '../made-take.ts';
import { madeParcel } from './made-parcel.ts';

import { changed, type Files, faultsOf, folder, json, text } from './packed-anew.ts';

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
