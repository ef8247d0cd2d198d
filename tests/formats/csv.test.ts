import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv } from '../../src/formats/csv.ts';

describe('csv', () => {
  it('runs the example of its comment', () => {
    expect(
      csv([
        ['name', 'ms'],
        ['Ada "R"', -1.5],
      ]),
    ).toBe('name,ms\r\n"Ada ""R""",-1.5\r\n');
  });

  // RFC 4180, section 2, the examples of rules 1, 6 and 7 (fields that need no quotes are written without).
  it.each([
    [
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    ],
    [
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
      'aaa,"b\r\nbb",ccc\r\nzzz,yyy,xxx\r\n',
    ],
    [[['aaa', 'b"bb', 'ccc']], 'aaa,"b""bb",ccc\r\n'],
    [[[' a ', '', null, 'ü,']], ' a ,,,"ü,"\r\n'],
  ])('writes %j', (records, text) => {
    expect(csv(records)).toBe(text);
  });

  it('refuses what is no number', () => {
    expect(() => csv([[Number.NaN]])).toThrow(RangeError);
    expect(() => csv([[Number.POSITIVE_INFINITY]])).toThrow(RangeError);
  });

  // The grammar of RFC 4180, section 2, with every character but , " CR LF allowed outside quotes.
  const field = /(?:"(?:[^"]|"")*"|[^",\r\n]*)/y;
  function parse(text: string): string[][] {
    const records: string[][] = [];
    for (let at = 0; at < text.length; at += 2) {
      const record: string[] = [];
      for (;;) {
        field.lastIndex = at;
        const raw = field.exec(text)![0];
        record.push(raw.startsWith('"') ? raw.slice(1, -1).replaceAll('""', '"') : raw);
        at += raw.length;
        if (text[at] !== ',') break;
        at += 1;
      }
      expect(text.slice(at, at + 2)).toBe('\r\n');
      records.push(record);
    }
    return records;
  }

  it('writes what the grammar reads back', () => {
    const text = fc.string({ unit: fc.constantFrom('a', ',', '"', '\r', '\n', ' ', 'é'), maxLength: 6 });
    fc.assert(
      fc.property(fc.array(fc.array(text, { minLength: 1, maxLength: 4 }), { maxLength: 5 }), (records) => {
        expect(parse(csv(records))).toEqual(records);
      }),
    );
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(Number(parse(csv([[value]]))[0]![0])).toBe(value === 0 ? 0 : value);
      }),
    );
  });
});
