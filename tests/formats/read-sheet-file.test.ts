import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { writeMusicXml } from '../../src/formats/music-xml/write-music-xml.ts';
import { readSheetFile } from '../../src/formats/read-sheet-file.ts';

const parsed = parseSheet('>RLR >LRL ; times: 4 ; tempo: 90');
if (!parsed.ok) throw new Error('a plain sheet');
const { sheet } = parsed;
const xml = writeMusicXml(sheet);
const container =
  '<?xml version="1.0"?><container><rootfiles><rootfile full-path="a/score.xml"/></rootfiles></container>';
const notationOf = (bytes: Uint8Array) => {
  const read = readSheetFile(bytes);
  return read.ok ? read.sheet.lines.map(({ notation }) => notation) : read.faults;
};

describe('readSheetFile', () => {
  it('reads text, a score, a compressed score and a score in UTF-16', () => {
    const zipped = zipSync({ 'META-INF/container.xml': strToU8(container), 'a/score.xml': strToU8(xml) });
    const wide = new Uint8Array([
      0xff,
      0xfe,
      ...new Uint8Array(Uint16Array.from(xml, (sign) => sign.charCodeAt(0)).buffer),
    ]);
    for (const bytes of [
      strToU8('>RLR >LRL ; times: 4'),
      strToU8(xml),
      zipped,
      wide,
      strToU8(`\uFEFF${xml}`),
    ])
      expect(notationOf(bytes)).toEqual(['>RLR >LRL']);
  });

  it("answers in sentences to what it can't read", () => {
    const zip = (files: Record<string, string>) =>
      zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));
    expect(notationOf(zip({ 'other.txt': 'a' }))[0]).toContain('holds no score');
    expect(notationOf(zip({ 'META-INF/container.xml': container }))[0]).toContain('holds no score');
    expect(
      notationOf(zip({ 'META-INF/container.xml': container, 'a/score.xml': xml }).subarray(0, 90))[0],
    ).toContain('damaged');
    expect(notationOf(new Uint8Array([0xc3, 0x28]))[0]).toContain('no text');
    expect(notationOf(strToU8('RXL'))[0]).toContain('X');
    expect(notationOf(strToU8('<score-partwise><part>'))[0]).toMatch(/[^.]\. Save it again as MusicXML\.$/);
  });

  it("doesn't unpack what would grow too large", () => {
    const huge = zipSync({
      'META-INF/container.xml': strToU8(container),
      'a/score.xml': new Uint8Array(20_000_000),
    });
    expect(huge.length).toBeLessThan(100_000);
    expect(notationOf(huge)[0]).toContain('holds no score');
  });
});
