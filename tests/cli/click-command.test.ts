import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import wavDecoder from 'wav-decoder';
import { clickCommand } from '../../src/cli/click-command.ts';
import { CommandFault } from '../../src/cli/command-fault.ts';
import type { ClickPlan } from '../../src/core/click-track/click-plan.ts';
import { aubioOnsets, aubioPath } from '../bench/aubio.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { describeProgram } from '../programs.ts';

async function run(...args: string[]) {
  const said = { stdout: '', stderr: '', bytes: [] as number[] };
  const command = clickCommand({
    stdout: (text) => {
      said.stdout += text;
    },
    stderr: (text) => {
      said.stderr += text;
    },
    bytes: (bytes) => {
      for (const byte of bytes) said.bytes.push(byte);
    },
  });
  await command.parseAsync(args, { from: 'user' });
  return said;
}

const exercise = (bpm: number, times = 8) => [
  ...['--exercise', '>RLR >LRL', '--bpm', `${bpm}`],
  ...['--times', `${times}`],
];

/** Samples at which a sound begins after at least a millisecond of digital silence. */
function beginnings(samples: Float32Array, sampleRate: number): number[] {
  const found: number[] = [];
  let silent = sampleRate;
  samples.forEach((sample, i) => {
    if (sample !== 0 && silent >= sampleRate / 1000) found.push(i);
    silent = sample === 0 ? silent + 1 : 0;
  });
  return found;
}

async function written(...args: string[]) {
  const wav = join(temporaryFolder(), 'click.wav');
  const { stdout, stderr } = await run(...args, '--wav', wav, '--json');
  const plan = JSON.parse(stdout) as ClickPlan;
  return { wav, plan, stderr };
}

describe('evenhand click', () => {
  it.each([
    [40, '44100', '16'],
    [97.3, '48000', '24'],
    [97.3, '44100', '24'],
    [220, '48000', '16'],
  ])(
    'at %s BPM, %s Hz, %s bits: another reader finds each click at its planned sample',
    async (bpm, rate, bits) => {
      const { wav, plan } = await written(
        ...exercise(bpm),
        '--sound',
        'tick',
        '--rate',
        rate,
        '--bits',
        bits,
      );
      const { buffer, byteOffset, byteLength } = readFileSync(wav);
      const file = buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer;
      const { sampleRate, numberOfChannels, channelData, length } = wavDecoder.decode.sync(file);
      expect([sampleRate, numberOfChannels]).toEqual([Number(rate), 1]);
      expect(length).toBe(Math.ceil(plan.duration * sampleRate));
      expect(plan.clicks).toHaveLength(20);
      expect(beginnings(channelData[0]!, sampleRate)).toEqual(
        plan.clicks.map(({ time }) => Math.round(time * sampleRate)),
      );
      // Worked out here: the first beat after a bar of four, the last of sixteen.
      expect(plan.clicks[4]!.time).toBeCloseTo(240 / bpm, 9);
      expect(plan.clicks[19]!.time).toBeCloseTo((19 * 60) / bpm, 9);
    },
  );

  it('leaves out of the sound what the plan leaves silent', async () => {
    const { wav, plan } = await written(...exercise(120, 16), '--silent', '1,2', '--sound', 'tick');
    const { channelData, sampleRate } = wavDecoder.decode.sync(
      Uint8Array.from(readFileSync(wav)).buffer as ArrayBuffer,
    );
    const bars = plan.clicks.filter(({ kind }) => kind === 'bar').map(({ audible }) => audible);
    expect(bars).toEqual([true, true, false, true, true, false, false, true]);
    expect(beginnings(channelData[0]!, sampleRate)).toEqual(
      plan.clicks.flatMap(({ time, audible }) => (audible ? [Math.round(time * sampleRate)] : [])),
    );
  });

  it('writes the same to a pipe, and a plan alone', async () => {
    const { wav } = await written(...exercise(300, 1));
    const { bytes, stderr } = await run(...exercise(300, 1), '--wav', '-');
    expect(Uint8Array.from(bytes)).toEqual(Uint8Array.from(readFileSync(wav)));
    expect(stderr).toBe('');
    expect((await run(...exercise(90), '--json', '--wav', '-').catch((fault) => fault)).message).toMatch(
      /screen/i,
    );
  });

  it('takes a sheet, and a tempo that rises line by line', async () => {
    const sheet = join(temporaryFolder(), 'a.sheet');
    writeFileSync(
      sheet,
      'tempo: 60\n>RLR >LRL ; times: 2 ; rest: 2\n>RLR ; tempo: 120 ; bar: 3 ; times: 3\n',
    );
    const plan = JSON.parse((await run('--sheet', sheet, '--json')).stdout) as ClickPlan;
    expect(plan.duration).toBeCloseTo(4 + 6 + 1.5, 9);
    const rising = JSON.parse(
      (await run(...exercise(60, 2), '--to', '120', '--step', '60', '--json')).stdout,
    ) as ClickPlan;
    expect(rising.clicks.map(({ time }) => time)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 8.5, 9, 9.5]);
  });

  it.each([
    [['--exercise', '>RLR', '--wav', 'a.wav'], /--bpm/],
    [[...exercise(90)], /--wav click\.wav/],
    [[...exercise(90), '--wav', 'no/such/a.wav'], /no\/such/],
    [[...exercise(90), '--json', '--divide', '5'], /2, 3, 4 and 6/],
    [[...exercise(90), '--json', '--sound', 'gong'], /wood, tick, beep/],
    [[...exercise(90), '--json', '--rate', '8000'], /44100 or 48000/],
    [[...exercise(90), '--json', '--bits', '8'], /16 or 24/],
    [[...exercise(90), '--json', '--silent', '1,x'], /whole number from 1/],
    [[...exercise(90), '--json', '--heard', '2'], /--silent/],
    [[...exercise(90), '--json', '--count-in', '-1'], /--count-in/],
    [[...exercise(90), '--json', '--to', '80'], /faster/],
    [[...exercise(90), '--json', '--step', '5'], /--to/],
  ])('%j is refused before anything is written', async (args, sentence) => {
    const fault = await run(...args).catch((error) => error);
    expect(fault).toBeInstanceOf(CommandFault);
    expect(fault.exitCode).toBe(2);
    expect(fault.message).toMatch(sentence);
    expect(existsSync('a.wav')).toBe(false);
  });

  it('does not write over the sheet', async () => {
    const sheet = join(temporaryFolder(), 'a.sheet');
    writeFileSync(sheet, '>RLR ; tempo: 90');
    await expect(run('--sheet', sheet, '--wav', sheet)).rejects.toThrow(CommandFault);
    expect(readFileSync(sheet, 'utf8')).toBe('>RLR ; tempo: 90');
  });
});

describeProgram('sox', 'a click of an hour, read by sox', (sox) => {
  it('has its last clicks where they were planned', { timeout: 120_000 }, async () => {
    const wav = join(temporaryFolder(), 'hour.wav');
    const line = ['--exercise', 'RLR RLR RLR RLR RLR RLR', '--times', '999', '--bpm', '97.3'];
    await run(...line, '--sound', 'tick', '--rate', '44100', '--wav', wav);
    const frames = Math.ceil(((4 + 5994) * 60 * 44_100) / 97.3);
    expect(frames).toBeGreaterThan(3600 * 44_100);
    expect(statSync(wav).size).toBe(44 + 2 * frames);
    const from = frames - 10 * 44_100;
    const raw = execFileSync(sox, [wav, '-t', 'f32', '-', 'trim', `${from}s`], {
      stdio: ['ignore', 'pipe', 'pipe'],
      maxBuffer: 1 << 26,
    });
    const samples = new Float32Array(Uint8Array.from(raw).buffer);
    const found = beginnings(samples, 44_100).map((at) => from + at);
    const beats = Array.from({ length: 16 }, (_, i) => Math.round(((5997 - 15 + i) * 60 * 44_100) / 97.3));
    expect(found.slice(-16)).toEqual(beats);
  });
});

describeProgram('aubioonset', 'clicks found by aubio', () => {
  it.each(['wood', 'tick', 'beep'])(
    '%s with a bell: each within three hops (8 ms) of its plan',
    async (sound) => {
      const { wav, plan } = await written(...exercise(97.3), '--bell', '--sound', sound);
      const found = await aubioOnsets(aubioPath()!, wav, { method: 'hfc', threshold: 0.15 });
      const late = plan.clicks.slice(1).map(({ time }) => {
        const nearest = found.reduce((best, one) =>
          Math.abs(one.time - time) < Math.abs(best.time - time) ? one : best,
        );
        return nearest.time - time;
      });
      expect(Math.max(...late.map(Math.abs))).toBeLessThan((3 * 128) / 48_000);
    },
  );
});
