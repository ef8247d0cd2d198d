import { describe, expect, it } from 'vitest';
import { joinSound } from '../../../src/formats/coded/join-sound.ts';

function joined(lead: number, work: (join: ReturnType<typeof joinSound>) => void) {
  const samples: number[] = [];
  const join = joinSound(
    ({ channels }) => samples.push(...channels[0]!),
    () => lead,
  );
  work(join);
  return { samples, lost: join.lost };
}
const piece = (...samples: number[]) => ({ channels: [Float32Array.from(samples)], sampleRate: 10 });

describe('joinSound', () => {
  it('leaves out the lead, over pieces, and ends as asked', () => {
    const { samples, lost } = joined(3, (join) => {
      join.sound(piece(1, 2));
      join.sound(piece(3, 4, 5));
      join.sound(piece(6, 7, 8));
      join.end(0.3);
    });
    expect(samples).toEqual([4, 5, 6]);
    expect(lost).toEqual([]);
  });

  it('puts silence where sound is lost and says where', () => {
    const { samples, lost } = joined(1, (join) => {
      join.sound(piece(1, 2));
      join.lose(0.2);
      join.lose(0.1);
      join.sound(piece(3));
      join.end(null);
    });
    expect(samples).toEqual([2, 0, 0, 0, 3]);
    expect(lost).toEqual([{ at: 1, frames: 3 }]);
  });

  it('counts what is lost before the first sound', () => {
    const { samples, lost } = joined(1, (join) => {
      join.lose(0.3);
      join.sound(piece(1));
      join.end(null);
    });
    expect(samples).toEqual([0, 0, 1]);
    expect(lost).toEqual([{ at: 0, frames: 2 }]);
  });

  it('takes a piece of another rate for lost, and lacking channels from the first', () => {
    const { samples, lost } = joined(0, (join) => {
      join.sound(piece(1));
      join.sound({ channels: [Float32Array.of(9, 9)], sampleRate: 20 });
      join.end(null);
    });
    expect(samples).toEqual([1, 0]);
    expect(lost).toEqual([{ at: 1, frames: 1 }]);
  });
});
