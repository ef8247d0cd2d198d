import { score, utf8 } from './good-files.ts';
import type { HostileFile } from './hostile-files.ts';

const xml = (change: (text: string) => string) => async () => utf8(change(score('>RLR >LRL ; times: 4')));
const text = (parser: string, name: string, make: () => string): HostileFile => ({
  parser,
  name,
  bytes: async () => utf8(make()),
});

/** Ten entities, each ten times the one before. */
const entities = `<!DOCTYPE a [<!ENTITY e0 "ha">${Array.from({ length: 10 }, (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`).join('')}]>`;

/** Scores made to fill memory, to take for ever or to read other files. */
export const hostileScores: readonly HostileFile[] = [
  {
    parser: 'scores (MusicXML)',
    name: 'entities that grow tenfold, ten times',
    bytes: xml((t) =>
      t.replace(/<!DOCTYPE[^>]*>|(?<=\?>)/, entities).replace('</part-name>', '&e10;</part-name>'),
    ),
  },
  {
    parser: 'scores (MusicXML)',
    name: 'an entity that names a file',
    bytes: xml((t) =>
      t
        .replace(/<!DOCTYPE[^>]*>|(?<=\?>)/, '<!DOCTYPE a [<!ENTITY f SYSTEM "file:///etc/passwd">]>')
        .replace('</part-name>', '&f;</part-name>'),
    ),
  },
  text(
    'scores (MusicXML)',
    '100,000 elements in each other',
    () => `${'<a>'.repeat(100_000)}${'</a>'.repeat(100_000)}`,
  ),
  text(
    'scores (MusicXML)',
    '980,000 elements beside each other',
    () => `<score-partwise>${'<a/>'.repeat(980_000)}</score-partwise>`,
  ),
  text(
    'scores (MusicXML)',
    'an attribute of 3.5 million signs',
    () => `<score-partwise a="${'x'.repeat(3_500_000)}"/>`,
  ),
  {
    parser: 'scores (MusicXML)',
    name: '7000 notes in a bar',
    bytes: xml((t) => t.replace(/<note[\s\S]*?<\/note>/, (one) => one.repeat(7000))),
  },
  {
    parser: 'scores (MusicXML)',
    name: 'a bar 1000 times',
    bytes: xml((t) => t.replace(/<measure[\s\S]*?<\/measure>/, (one) => one.repeat(1000))),
  },
  {
    parser: 'scores (MusicXML)',
    name: 'a note as long as numbers go',
    bytes: xml((t) => t.replace(/<duration>\d+/, '<duration>1e300')),
  },
  {
    parser: 'scores (MusicXML)',
    name: 'a quarter of 10^15 parts',
    bytes: xml((t) => t.replace(/<divisions>\d+/, '<divisions>1000000000000000')),
  },
  {
    parser: 'scores (MusicXML)',
    name: 'a beat of 10^9',
    harmless: true,
    bytes: xml((t) => t.replace(/<beats>\d+/, '<beats>1000000000')),
  },
];
