import { describe, expect, it } from 'vitest';
import { progressLine, toldOpening } from '../../src/cli/progress-line.ts';

function listened(isTTY: boolean) {
  const written: string[] = [];
  let now = 0;
  const line = progressLine({ isTTY, write: (text) => written.push(text) }, () => now);
  return { written, line, at: (ms: number) => (now = ms) };
}

describe('progressLine', () => {
  it('tells nothing in the first second, then how far it has come, five times a second', () => {
    const { written, line, at } = listened(true);
    for (let ms = 0; ms <= 2000; ms += 10) {
      at(ms);
      line.tell('listening', ms / 4000);
    }
    expect(written).toEqual([25, 30, 35, 40, 45, 50].map((percent) => `\r\u001b[2KListening ${percent} %`));
  });

  it('takes itself away at the end and stays away', () => {
    const { written, line, at } = listened(true);
    at(1500);
    line.tell('measuring', 0.5);
    line.end();
    at(9000);
    line.tell('measuring', 0.9);
    expect(written).toEqual(['\r\u001b[2KMeasuring 50 %', '\r\u001b[2K']);
  });

  it('writes nothing where nothing took long', () => {
    const { written, line } = listened(true);
    line.tell('laying', 1);
    line.end();
    expect(written).toEqual([]);
  });

  it('writes nothing into a file or a pipe', () => {
    const { written, line, at } = listened(false);
    at(60_000);
    line.tell('listening', 0.5);
    line.end();
    expect(written).toEqual([]);
  });

  it("tells how far a recording is decoded, and goes when it can't be", async () => {
    const { written, line, at } = listened(true);
    at(1500);
    const opening = toldOpening(line, async (told) => {
      told(0.25);
      throw new Error('cut off');
    });
    await expect(opening).rejects.toThrow('cut off');
    expect(written).toEqual(['\r\u001b[2KReading the recording 25 %', '\r\u001b[2K']);
  });
});
