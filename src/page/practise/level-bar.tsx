import { useEffect, useRef, useState } from 'preact/hooks';
import type { Levels } from '../recording/meter/level-meter.ts';

/** dBFS at the bar's left end. */
const floor = -60;

/** Nothing louder than this in a while: hardly a stroke. Our judgement. */
const faint = -45;

const share = (db: number) => Math.min(1, Math.max(0, (db - floor) / -floor));

/** How loud it comes in, big enough to be read from behind the pad; too much and too little are said in words. */
export function LevelBar({ levels }: { readonly levels: () => Levels }) {
  const fill = useRef<HTMLDivElement>(null);
  const held = useRef<HTMLDivElement>(null);
  const [word, setWord] = useState('');
  useEffect(() => {
    let quietFrom = performance.now();
    let frame = requestAnimationFrame(function tick(time) {
      const { peakDb, heldDb, clipped } = levels();
      if (fill.current !== null) fill.current.style.width = `${100 * share(peakDb)}%`;
      if (held.current !== null) held.current.style.left = `${100 * share(heldDb)}%`;
      if (heldDb > faint) quietFrom = time;
      const faintly = time - quietFrom > 4000;
      setWord(clipped ? 'Too loud: tops are cut off' : faintly ? 'Hardly anything is heard' : 'Level');
      frame = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(frame);
  }, []);
  return (
    <div class="meter">
      <p class="quiet" role="status">
        {word}
      </p>
      <div class="meter-track" aria-hidden="true">
        <div class="meter-fill" ref={fill} />
        <div class="meter-held" ref={held} />
      </div>
    </div>
  );
}
