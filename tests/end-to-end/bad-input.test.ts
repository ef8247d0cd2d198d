import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeWav } from '../../src/formats/write-wav.ts';
import { runProgram, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';

/** A folder with everything that can be named by mistake. */
function desk(): string {
  const folder = temporaryFolder();
  const put = (name: string, contents: Uint8Array | string) => writeFileSync(join(folder, name), contents);
  put('take.wav', readFileSync(sampleTakePath('accent-one')));
  put('empty.wav', '');
  put('picture.wav', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'));
  put('words.wav', 'Monday: accents on two, four times.\n');
  put(
    'noise.wav',
    Uint8Array.from({ length: 999 }, (_, i) => (i * 77) % 256),
  );
  put('header-only.wav', writeWav({ channels: [new Float32Array(0)], sampleRate: 22050, depth: 'int16' }));
  mkdirSync(join(folder, 'folder'));
  put('good.sheet', 'tempo: 144\n>RLR >LRL ; times: 9\n');
  put('faulty.sheet', 'title: Week 7\ntempo: 144\n>RLR >LXL ; times: 9\n');
  put('two-faults.sheet', '>RLR >LRL ; tims: 9\n>RLR ; tempo: fast\n');
  put('empty.sheet', '# nothing yet\n');
  put('broken.json', '{ "basedOn": "steady", ');
  put('wrong.json', '{ "basedOn": "steady", "measures": { "tap-spread": { "secure": -1 } } }');
  return folder;
}

const asked = ['--exercise', '>RLR >LRL', '--bpm', '144', '--times', '9'];
const usage = 2;
const unreadable = 3;

/** Arguments after `grade`, exit code, and what the sentence on stderr must say. */
const refusals: readonly (readonly [string, readonly string[], number, RegExp])[] = [
  ['a missing file', ['none.wav', ...asked], unreadable, /no file "none\.wav"/],
  ['a folder', ['folder', ...asked], unreadable, /"folder" is a folder/],
  ['an empty file', ['empty.wav', ...asked], unreadable, /"empty\.wav" is empty/],
  ['a picture', ['picture.wav', ...asked], unreadable, /"picture\.wav" is a PNG picture/],
  ['a text', ['words.wav', ...asked], unreadable, /"words\.wav" is a text file/],
  ['bytes of no kind', ['noise.wav', ...asked], unreadable, /"noise\.wav" is no kind of recording/],
  ['a recording of length 0', ['header-only.wav', ...asked], unreadable, /holds no sound/],
  ['a missing sheet', ['take.wav', '--sheet', 'none.sheet'], unreadable, /no sheet "none\.sheet"/],
  ['a folder as sheet', ['take.wav', '--sheet', 'folder'], unreadable, /"folder" is a folder/],
  ['a recording as sheet', ['take.wav', '--sheet', 'take.wav'], unreadable, /not a text file/],
  ['a sheet without lines', ['take.wav', '--sheet', 'empty.sheet'], unreadable, /no exercise in it/],
  ['a missing rubric', ['take.wav', ...asked, '--rubric', 'no.json'], unreadable, /no rubric "no\.json"/],
  [
    'a rubric that is no JSON',
    ['take.wav', ...asked, '--rubric', 'broken.json'],
    unreadable,
    /not valid JSON/,
  ],
  [
    'a rubric with a wrong entry',
    ['take.wav', ...asked, '--rubric', 'wrong.json'],
    unreadable,
    /"wrong\.json".*\/measures\/tap-spread\/secure is -1/,
  ],
  ['an unknown rubric', ['take.wav', ...asked, '--rubric', 'stedy'], usage, /"stedy".*first-years, steady/],
  ['no recording', [...asked], usage, /no recording/],
  ['nothing to hold it against', ['take.wav'], usage, /--exercise/],
  ['exercise and sheet at once', ['take.wav', ...asked, '--sheet', 'good.sheet'], usage, /not both/],
  ['a tempo beside a sheet', ['take.wav', '--sheet', 'good.sheet', '--bpm', '90'], usage, /--bpm/],
  ['an unknown option', ['take.wav', ...asked, '--colour'], usage, /'--colour'.*--help/],
  ['a misspelt option', ['take.wav', ...asked, '--bmp', '90'], usage, /'--bmp'.*--bpm/],
  [
    'an option without its value',
    ['take.wav', '--exercise'],
    usage,
    /--exercise has nothing behind it.*--exercise <text>/,
  ],
  [
    'two recordings',
    ['take.wav', 'take.wav', ...asked],
    usage,
    /2 names stand behind the command, which takes 1/,
  ],
  ['a tempo in words', ['take.wav', '--exercise', '>RLR', '--bpm', 'fast'], usage, /--bpm fast.*--bpm 110/],
  ['a tempo of 0', ['take.wav', '--exercise', '>RLR', '--bpm', '0'], usage, /--bpm 0.*from 10 to 500/],
  ['half a time', ['take.wav', '--exercise', '>RLR', '--times', '1.5'], usage, /--times 1\.5.*whole/],
  ['a band upside down', ['take.wav', '--exercise', '>RLR', '--ratio', '16..8'], usage, /--ratio 16\.\.8/],
  ['a name that is nearly right', ['take.wav', '--exercise', 'triplet-1-dubles'], usage, /triplet-1-doubles/],
  ['a report in no folder', ['take.wav', ...asked, '--report', 'no/r.html'], usage, /no folder/],
  ['a report inside a file', ['take.wav', ...asked, '--report', 'take.wav/r.html'], usage, /is a file/],
  ['a report over a folder', ['take.wav', ...asked, '--report', 'folder'], usage, /"folder" is a folder/],
  ['a table in no folder', ['take.wav', ...asked, '--csv', 'no/t.csv'], usage, /no folder/],
  ['pictures over a file', ['take.wav', ...asked, '--pictures', 'take.wav'], usage, /"take\.wav" is a file/],
];

describe('what cannot be graded for a fault outside the take', () => {
  it.each(refusals)('%s: one sentence, the exit code, nothing written', (_, args, code, sentence) => {
    const folder = desk();
    const before = readdirSync(folder, { recursive: true });
    const outputs = args.includes('--report') || args.includes('--csv') ? [] : ['--csv', 'out.csv'];
    const { status, stdout, stderr } = runProgram(['grade', ...outputs, ...args], { folder });
    expect(stderr).toMatch(sentence);
    // One line, and the place of the fault below it where there is one.
    expect(stderr).toMatch(/^[^\n ][^\n]+\n( {2}[^\n]*\n {2} *\^\n)?$/);
    expect(stderr).not.toMatch(/Error|undefined|NaN|node:|\bat \S+:\d+/);
    expect(status).toBe(code);
    expect(stdout).toBe('');
    expect(readdirSync(folder, { recursive: true })).toEqual(before);
  });

  it('shows the place of a fault in the notation', () => {
    const { status, stdout, stderr } = runProgram(['grade', 'take.wav', '--exercise', '>RLR >LXL'], {
      folder: desk(),
    });
    expect([status, stdout]).toEqual([usage, '']);
    expect(stderr).toMatch(
      /^--exercise: Character 8: "X" means nothing here\. [^\n]+\n {2}>RLR >LXL\n {9}\^\n$/,
    );
  });

  it('shows line and column of a fault in a sheet', () => {
    const { status, stdout, stderr } = runProgram(['grade', 'take.wav', '--sheet', 'faulty.sheet'], {
      folder: desk(),
    });
    expect([status, stdout]).toEqual([unreadable, '']);
    expect(stderr).toMatch(
      /^faulty\.sheet: Line 3, character 8: "X" [^\n]+\n {2}>RLR >LXL ; times: 9\n {9}\^\n$/,
    );
  });

  it('shows every fault of a sheet at once', () => {
    const { stderr } = runProgram(['grade', 'take.wav', '--sheet', 'two-faults.sheet'], { folder: desk() });
    expect(stderr.match(/^two-faults\.sheet: Line (\d), character \d+: /gm)).toHaveLength(2);
    expect(stderr).toContain('Did you mean "times"?');
  });
});
