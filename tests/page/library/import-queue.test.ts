import { expect, it } from 'vitest';
import type { LibraryClient } from '../../../src/library/library-calls.ts';
import { LibraryFault } from '../../../src/library/library-fault.ts';
import type { NewTake } from '../../../src/library/new-take.ts';
import type { ImportInto } from '../../../src/page/library/import-files.ts';
import { importQueue } from '../../../src/page/library/import-queue.ts';
import { localDay } from '../../../src/page/library/local-day.ts';
import { exampleResult } from '../../support/example-result.ts';

const sheetText = '>RLR >LRL\n';
const file = (name: string, contents = 'sound') =>
  new File([contents], name, { lastModified: 1_772_000_000_000 });

/** A library and an engine that remember what they were asked, and refuse files named `bad`. */
function made() {
  const kept: NewTake[] = [];
  const order: string[] = [];
  const library = {
    async keepTake(take: NewTake) {
      if (take.audio?.name === 'full.wav') throw new LibraryFault('no-room');
      kept.push(take);
      return { id: `id-${kept.length}`, outcome: 'kept' as const };
    },
    async importTakeFile() {
      return {
        ok: true as const,
        takes: [
          { id: 'x', outcome: 'kept' as const, newRemarks: 1 },
          { id: 'y', outcome: 'already-there' as const, newRemarks: 2 },
        ],
        faults: [],
      };
    },
  } as unknown as LibraryClient;
  const engine: ImportInto['engine'] = {
    async grade(_, { name }) {
      order.push(name);
      await Promise.resolve();
      if (name === 'bad.wav') throw new Error('"bad.wav" is no recording.');
      return exampleResult(name === 'silent.wav' ? { grading: notGradable, scores: null } : {});
    },
  };
  return { kept, order, into: { engine, library, sheetText } };
}
const notGradable = { state: 'not-gradable' as const, reason: { code: 'silent', facts: {} } };

const settled = (queue: ReturnType<typeof importQueue>) =>
  new Promise<void>((resolve) => {
    const stop = queue.onChange(() => {
      if (queue.files().some(({ state }) => state === 'waiting' || state === 'working')) return;
      stop();
      resolve();
    });
  });

it('takes files one after the other, each with what became of it, whatever happens to the others', async () => {
  const { kept, order, into } = made();
  const queue = importQueue();
  const names = ['one.wav', 'bad.wav', 'silent.wav', 'full.wav', 'two.wav'];
  queue.add(
    names.map((name) => file(name)),
    into,
  );
  queue.add([file('some.take.zip', 'PK\u0003\u0004')], { ...into, sheetText: null });
  queue.add([file('unsaid.wav')], { ...into, sheetText: null });
  await settled(queue);
  expect(order).toEqual(names);
  expect(queue.files().map(({ file: { name }, state }) => [name, state])).toEqual([
    ['one.wav', 'kept'],
    ['bad.wav', 'failed'],
    ['silent.wav', 'kept'],
    ['full.wav', 'failed'],
    ['two.wav', 'kept'],
    ['some.take.zip', 'kept'],
    ['unsaid.wav', 'failed'],
  ]);
  const sentences = queue.files().map(({ sentence }) => sentence);
  expect(sentences[1]).toBe('"bad.wav" is no recording.');
  expect(sentences[2]).toContain('could not be graded');
  expect(sentences[3]).toContain('no room');
  expect(sentences[5]).toBe('1 take kept. 1 take there already. 3 new remarks.');
  expect(sentences[6]).toContain('what was played');
  expect(kept[0]).toMatchObject({
    sheetText,
    recordedAt: 1_772_000_000_000,
    day: localDay(1_772_000_000_000),
  });
  queue.clear();
  expect(queue.files()).toEqual([]);
});

it('stops after the file that is being graded', async () => {
  const { order, into } = made();
  const queue = importQueue();
  queue.add([file('one.wav'), file('two.wav'), file('three.wav')], into);
  await new Promise<void>((resolve) => {
    const off = queue.onChange(() => {
      if (queue.files()[0]?.state !== 'kept') return;
      off();
      resolve();
    });
  });
  queue.stop();
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(order).not.toContain('three.wav');
  expect(queue.files().every(({ state }) => state === 'kept')).toBe(true);
});
