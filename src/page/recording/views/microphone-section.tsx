import { useEffect, useRef, useState } from 'preact/hooks';
import { joined } from '../../../core/signal/joined.ts';
import { Choice } from '../../shell/choice.tsx';
import { judgeRoom, type RoomNoise } from '../meter/judge-room.ts';
import type { Microphone } from '../open-microphone.ts';
import { listInputs, type SoundDevice } from '../output-device.ts';
import { MicrophoneMeter } from './microphone-meter.tsx';
import { processingWords, roomWords } from './microphone-words.ts';
import type { MicrophoneInView } from './use-microphone.ts';

/** Opening and choosing the microphone, its level, and how quiet the place is. */
export function MicrophoneSection({ inView }: { readonly inView: MicrophoneInView }) {
  const { microphone, opening, fault, open } = inView;
  const [inputs, setInputs] = useState<readonly SoundDevice[]>([]);
  useEffect(() => {
    const list = () => void listInputs().then(setInputs);
    list();
    navigator.mediaDevices?.addEventListener('devicechange', list);
    return () => navigator.mediaDevices?.removeEventListener('devicechange', list);
  }, [microphone]);
  return (
    <section aria-labelledby="microphone-title">
      <h2 id="microphone-title">1. The microphone</h2>
      {fault !== null && (
        <p class="fault" role="alert">
          {fault.sentence}
        </p>
      )}
      {microphone === null ? (
        <>
          <p>
            Put the phone or microphone an arm's length from the pad. Nothing that is recorded leaves this
            device.
          </p>
          <button type="button" class="main" disabled={opening} onClick={() => void open()}>
            {opening ? 'One moment …' : fault === null ? 'Open the microphone' : 'Try again'}
          </button>
        </>
      ) : (
        <>
          {inputs.length > 1 && (
            <Choice label="Microphone in use" value={microphone.deviceId} set={(id) => void open(id)}>
              {inputs.map(({ id, label }) => (
                <option key={id} value={id}>
                  {label}
                </option>
              ))}
            </Choice>
          )}
          {inputs.length <= 1 && microphone.label !== '' && <p class="quiet">{microphone.label}</p>}
          {processingWords(microphone.settings) !== null && (
            <p class="fault" role="status">
              {processingWords(microphone.settings)}
            </p>
          )}
          <Quiet microphone={microphone} />
        </>
      )}
    </section>
  );
}

/** Listening for so long tells how quiet a place is, s. */
const quietSeconds = 2;

function Quiet({ microphone }: { readonly microphone: Microphone }) {
  const [room, setRoom] = useState<RoomNoise | null>(null);
  const [listening, setListening] = useState(false);
  const { sampleRate } = microphone.context;
  const kept = useRef<Float32Array[]>([]);
  const listen = (samples: Float32Array) => {
    if (!listening) return;
    kept.current.push(samples);
    const all = joined(kept.current);
    if (all.length < quietSeconds * sampleRate) return;
    setRoom(judgeRoom(all, sampleRate));
    setListening(false);
  };
  const begin = () => {
    kept.current = [];
    setRoom(null);
    setListening(true);
  };
  return (
    <>
      <MicrophoneMeter microphone={microphone} listen={listen} />
      <p class="quiet">
        Play a few accents: the bar should reach the marked part and stay short of its right end.
      </p>
      <button type="button" disabled={listening} onClick={begin}>
        {listening ? 'Be still …' : 'Listen to the quiet'}
      </button>
      <p role="status">{room !== null && roomWords(room)}</p>
    </>
  );
}
