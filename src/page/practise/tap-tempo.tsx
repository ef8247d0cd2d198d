import { useRef, useState } from 'preact/hooks';
import { tempoOfBeats } from '../../core/click-track/tempo-of-beats.ts';

interface Props {
  readonly set: (bpm: number) => void;
}

/** A button to beat the tempo on; it counts when it is pressed down, by finger, mouse or key. */
export function TapTempo({ set }: Props) {
  const times = useRef<number[]>([]);
  const [count, setCount] = useState(0);
  const beat = (stamp: number) => {
    times.current = [...times.current.slice(-16), stamp / 1000];
    setCount((old) => old + 1);
    const bpm = tempoOfBeats(times.current);
    if (bpm !== null) set(Math.round(bpm));
  };
  return (
    <button
      type="button"
      class="tap"
      // The press is the beat; a click comes when the finger leaves.
      onPointerDown={({ timeStamp }) => beat(timeStamp)}
      onKeyDown={(event) => {
        if (event.repeat || (event.key !== ' ' && event.key !== 'Enter')) return;
        event.preventDefault();
        event.stopPropagation();
        beat(event.timeStamp);
      }}
    >
      {count === 0 ? 'Beat it in' : 'Go on beating'}
    </button>
  );
}
