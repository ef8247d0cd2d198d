import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { runProgram, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';

const sampleRate = 22050;
const wav = (samples: Float32Array) => writeWav({ channels: [samples], sampleRate, depth: 'int16' });

/** Strikes that die away within some hundredths of a second, at the times given. */
function strikes(times: readonly number[], seconds: number): Float32Array {
  const samples = new Float32Array(seconds * sampleRate);
  for (const time of times) {
    for (let i = 0; i < 2000; i++) {
      const at = Math.round(time * sampleRate) + i;
      if (at < samples.length)
        samples[at]! += 0.4 * Math.exp(-i / 150) * Math.sin((2 * Math.PI * 900 * i) / sampleRate);
    }
  }
  return samples;
}

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
  put('header-only.wav', wav(new Float32Array(0)));
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
  ['an option without its value', ['take.wav', '--exercise'], usage, /'--exercise <text>'/],
  ['two recordings', ['take.wav', 'take.wav', ...asked], usage, /[Tt]oo many/],
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

/** Takes that can be read but not graded. */
const ungradable: readonly (readonly [string, Float32Array, RegExp])[] = [
  ['a silent take', new Float32Array(3 * sampleRate), /The recording is silent/],
  ['a single stroke', strikes([1.2], 3), /Only 1 stroke was found, though the exercise asks for 54/],
];

describe('takes that cannot be graded', () => {
  it.each(ungradable)('%s: exit code 4, and every form says why', (_, samples, reason) => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'take.wav'), wav(samples));
    const { status, stdout, stderr } = runProgram(
      ['grade', 'take.wav', ...asked, '--json', 'r.json', '--report', 'r.html', '--csv', 'r.csv'],
      { folder },
    );
    expect(status).toBe(4);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(reason);
    expect(stdout).not.toContain('Scores');
    expect(stderr.trimEnd().split('\n')).toHaveLength(3);
    const result = validateTakeResult(JSON.parse(readFileSync(join(folder, 'r.json'), 'utf8')));
    expect(result).toMatchObject({ grading: { state: 'not-gradable' }, scores: null, measures: [] });
    expect(readFileSync(join(folder, 'r.html'), 'utf8')).toMatch(reason);
    const lines = readFileSync(join(folder, 'r.csv'), 'utf8').trimEnd().split('\r\n');
    expect(lines).toHaveLength(1 + result.strokes.time.length);
  });

  it('draws no pictures of them, and says so', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'take.wav'), wav(new Float32Array(sampleRate)));
    const { status, stderr } = runProgram(['grade', 'take.wav', ...asked, '--pictures', 'drawn'], { folder });
    expect([status, stderr]).toEqual([4, 'No pictures were drawn, as the take has no grade.\n']);
    expect(readdirSync(folder)).toEqual(['take.wav']);
  });
});

describe('takes that are not what was asked for', () => {
  const gradeSample = (...args: string[]) => {
    const ending = runProgram(['grade', sampleTakePath('accent-one'), ...args, '--json']);
    return { ...ending, result: validateTakeResult(JSON.parse(ending.stdout)) };
  };

  it('counts what a shorter take never reached as not reached, not as missed', () => {
    const { status, result } = gradeSample('--exercise', '>RLR >LRL', '--bpm', '144', '--times', '16');
    expect(status).toBe(0);
    expect(result.slots.state.filter((state) => state === 'missed')).toEqual([]);
    expect(result.slots.state.filter((state) => state === 'not-reached')).toHaveLength((16 - 9) * 6);
    expect(result.warnings).toContainEqual({
      code: 'part-not-played',
      facts: { notReached: (16 - 9) * 6, wanted: 16 * 6 },
    });
  });

  // Played at 144 BPM.
  it.each([78, 110, 262])('never invents a grade when %i BPM were asked for', (bpm) => {
    const { status, result } = gradeSample('--exercise', '>RLR >LRL', '--bpm', `${bpm}`, '--times', '9');
    if (status === 4) {
      expect(result).toMatchObject({ grading: { state: 'not-gradable' }, scores: null });
      return;
    }
    expect(status).toBe(0);
    for (const segment of result.segments) expect(Math.abs(segment.bpm / 144 - 1)).toBeLessThan(0.02);
    const told = result.warnings.find(({ code }) => code === 'tempo-far-off');
    expect(told?.facts.asked).toBe(bpm);
    const steadiness = result.scores?.dimensions.find(({ id }) => id === 'steadiness');
    expect(steadiness?.score.word).toBe('not-yet');
  });
});
