import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { strokeContexts } from '../../../src/core/measures/stroke-context.ts';

const initial = { before: 'b', on: '>', after: 'a', other: '.' };

function read(text: string) {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const slots = layOut(parsed.sheet);
  const contexts = [...strokeContexts(slots, parsed.sheet).values()];
  return {
    places: contexts.map((c) => initial[c.place]).join(''),
    changes: contexts.map((c) => (c.handChange === null ? '?' : c.handChange ? 'x' : '=')).join(''),
  };
}

describe('strokeContexts', () => {
  it('reads places from the order of the sheet', () => {
    expect(read('tempo: 100\nR>LRL RLRL; x1').places).toBe('b>a.....');
    expect(read('tempo: 100\n>RLR >LRL').places).toBe('>ab>ab');
  });
  it('counts a tap between two accents as after the first', () => {
    expect(read('tempo: 100\n>RL >RL').places).toBe('>a>a');
  });
  it('reads a line as going round, and lines apart', () => {
    expect(read('tempo: 100\nRLRL RLR>L; x2').places).toBe('a.....b>a.....b>');
    expect(read('tempo: 100\nRLR\n>LRL').places).toBe('...>ab');
  });
  it('sees no neighbour over a rest', () => {
    expect(read('tempo: 100\n>R-R').places).toBe('>b');
    expect(read('tempo: 100\n>R-R').changes).toBe('=?');
  });
  it('measures a rest in the wider partials, at the ends of a line too', () => {
    expect(read('tempo: 100\nRL >RLRL').places).toBe('.b>a..');
    expect(read('tempo: 100\n-RL RL>R').places).toBe('...b>');
    // One and a half triplets from the third sixteenth to the next beat: still next to each other.
    expect(read('tempo: 100\nRLR- >LRL').places).toBe('..b>a.');
    expect(read('tempo: 100\nRL-').places).toBe('..');
  });
  it('passes over grace notes', () => {
    expect(read('tempo: 100\n>RlRL R-L').places).toBe(read('tempo: 100\n>RRL R-L').places);
  });
  it('finds changes of hands', () => {
    expect(read('tempo: 100\nRRR LLL; x2').changes).toBe('x==x==x==x==');
    expect(read('tempo: 100\nRLR LRL').changes).toBe('xxxxxx');
  });
});
