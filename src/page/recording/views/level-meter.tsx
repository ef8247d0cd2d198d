import { useEffect, useRef, useState } from 'preact/hooks';
import type { Levels } from '../meter/level-meter.ts';
import './recording.css';

/** The bar's left end, dBFS. */
const lowestDb = -70;
/** Where strokes are loud enough and never cut off, dBFS. Common practice. */
const good = { from: -24, to: -6 };

const place = (db: number) => Math.min(1, Math.max(0, 1 - db / lowestDb));
const percent = (db: number) => `${(100 * place(db)).toFixed(1)}%`;
const words = (db: number) => (db < lowestDb ? 'silent' : `${`${Math.round(db) || 0}`.replace('-', '−')} dB`);

/** How loud the microphone is: a bar, a mark that stays at the loudest moment lately, and the same in words. */
export function LevelMeter({ read }: { readonly read: () => Levels }) {
  const fill = useRef<HTMLDivElement>(null);
  const mean = useRef<HTMLDivElement>(null);
  const held = useRef<HTMLDivElement>(null);
  const [said, setSaid] = useState(read);
  useEffect(() => {
    let frame = requestAnimationFrame(function draw() {
      const { peakDb, rmsDb, heldDb } = read();
      fill.current?.style.setProperty('width', percent(peakDb));
      mean.current?.style.setProperty('width', percent(rmsDb));
      held.current?.style.setProperty('left', percent(heldDb));
      frame = requestAnimationFrame(draw);
    });
    const speak = setInterval(() => setSaid(read()), 500);
    return () => {
      cancelAnimationFrame(frame);
      clearInterval(speak);
    };
  }, [read]);
  const { heldDb, rmsDb, clipped } = said;
  return (
    <div class="meter">
      <div class="meter-track" aria-hidden="true">
        <div class="meter-good" />
        <div class="meter-fill" ref={fill} />
        <div class="meter-mean" ref={mean} />
        <div class="meter-held" ref={held} />
      </div>
      <p class="meter-words">
        Loudest lately: <strong>{words(heldDb)}</strong>. On average: {words(rmsDb)}.
      </p>
      {clipped && (
        <p class="fault" role="alert">
          Too loud: the tops of the sound are cut off. Move the microphone away or turn its level down.
        </p>
      )}
      {!clipped && heldDb > good.to && heldDb <= 0 && (
        <p class="quiet">Nearly too loud. Move the microphone a little away.</p>
      )}
    </div>
  );
}
