import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { aacByPackage } from '../../src/formats/aac-by-package.ts';
import { alacByPackage } from '../../src/formats/alac-by-package.ts';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { openSound } from '../../src/formats/open-sound.ts';
import { recordingFaultSentence } from '../../src/formats/recording-fault-sentences.ts';
import { cafOfAac } from '../formats/coded/caf-of-aac.ts';
import { codedForms } from '../formats/coded/coded-forms.ts';
import { encoded, shortTake } from '../formats/coded/coded-take.ts';

/** Half a second of a take in every kind of file, by ffmpeg; AAC in CAF is put together here. */
export async function codedCorpus(ffmpeg: string): Promise<{ name: string; bytes: Uint8Array }[]> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-'));
  try {
    const files = codedForms.map((form) => {
      const short = { ...form, options: [...form.options, '-t', '0.5'] };
      return {
        name: form.name,
        bytes: Uint8Array.from(readFileSync(encoded(ffmpeg, folder, short, shortTake))),
      };
    });
    const m4a = files.find(({ name }) => name === 'AAC in M4A')!;
    const amr = join(folder, 'a.amr');
    const frames = Array.from({ length: 25 }, () => [0x3c, ...Array(31).fill(0x55)]).flat();
    writeFileSync(amr, Uint8Array.from([...new TextEncoder().encode('#!AMR\n'), ...frames]));
    const in3gp = join(folder, 'a.3gp');
    execFileSync(ffmpeg, ['-v', 'error', '-i', amr, '-c', 'copy', in3gp]);
    return [
      ...files,
      { name: 'AAC in CAF', bytes: await cafOfAac(m4a.bytes) },
      { name: 'AMR in 3GP', bytes: Uint8Array.from(readFileSync(in3gp)) },
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * Opens a file and reads all of it. Gives its seconds of sound, 0 where two sentences say why there is none. Throws what is
 * wrong: a sentence that isn't whole, samples that are no numbers, or what opening threw.
 */
export async function secondsRead(file: Uint8Array): Promise<number> {
  const opened = await openSound(memoryBytes(file), { aac: aacByPackage, alac: alacByPackage });
  if (!opened.ok) {
    const said = recordingFaultSentence('take.m4a', opened.fault);
    if (!/^"take\.m4a" [^\n]*\. [^\n]*\.$/.test(said)) throw new Error(`not two sentences: ${said}`);
    return 0;
  }
  try {
    const { source } = opened;
    for (let channel = 0; channel < source.channels; channel++)
      for (let from = 0; from < source.length; from += 65_536)
        if (!source.read(channel, from, from + 65_536).every(Number.isFinite))
          throw new Error('samples that are no numbers');
    return source.length / source.sampleRate;
  } finally {
    opened.close();
  }
}
