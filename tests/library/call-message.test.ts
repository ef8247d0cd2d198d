import fc from 'fast-check';
import { expect, it } from 'vitest';
import { answerCall } from '../../src/library/answer-call.ts';
import { packMessage, unpackMessage } from '../../src/library/call-message.ts';
import { madeTake } from './made-take.ts';
import { withLibrary } from './temporary-library.ts';

const joined = (parts: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));

it('values come back from a message as they were, with bytes wherever they stand', () => {
  const part = fc.oneof(
    fc.string(),
    fc.double({ noNaN: true, noDefaultInfinity: true }).filter((x) => !Object.is(x, -0)),
    fc.uint8Array(),
    fc.boolean(),
  );
  fc.assert(
    fc.property(fc.array(fc.record({ a: part, b: fc.array(part) })), (value) => {
      expect(unpackMessage(joined(packMessage(value)))).toEqual(value);
    }),
    { numRuns: 100 },
  );
});

it('a message that is cut off or damaged gives no value', () => {
  const message = joined(packMessage({ name: 'a', bytes: new Uint8Array(10) }));
  for (let length = 0; length < message.length; length++)
    expect(() => unpackMessage(message.subarray(0, length))).toThrow();
  expect(() => unpackMessage(joined(packMessage({ 'bytes-behind': [-1, 4] })))).toThrow();
});

it('a library is asked by messages, and refuses what it has no call for', () =>
  withLibrary(async (library) => {
    const ask = async (name: string, argument?: unknown) =>
      unpackMessage(joined(await answerCall(library, joined(packMessage({ name, argument }))))) as {
        value: never;
      };
    const take = madeTake(1);
    const { id } = (await ask('keepTake', take)).value as { id: string };
    expect(await ask('readAudio', id)).toEqual({ ok: true, value: take.audio!.bytes });
    expect((await ask('exportTakes', [id])).value).toBeInstanceOf(Uint8Array);
    expect(await ask('readTake', 'nobody')).toEqual({ ok: false, code: 'no-such-take', facts: {} });
    for (const name of ['constructor', '__proto__', 'toString', 'close'])
      expect(await ask(name)).toMatchObject({ ok: false, code: 'library-failed' });
  }));
