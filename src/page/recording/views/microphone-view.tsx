import { useState } from 'preact/hooks';
import { MicrophoneSection } from './microphone-section.tsx';
import { OutputSection } from './output-section.tsx';
import { ProofSection } from './proof-section.tsx';
import './recording.css';
import { ReferenceSection } from './reference-section.tsx';
import { useMicrophone } from './use-microphone.ts';

/** Loud enough for a loudspeaker to reach the microphone; the system's own volume stands behind it. */
const firstVolume = 0.7;

/** Everything that is set up once before takes: microphone, proof, delay, reference. */
export function MicrophoneView() {
  const inView = useMicrophone();
  const [volume, setVolume] = useState(firstVolume);
  const [busy, setBusy] = useState(false);
  const { microphone } = inView;
  return (
    <div class="sound-check">
      <h1>Microphone and sound</h1>
      <p>None of this has to be done before a take. What is done makes more of a take count.</p>
      <MicrophoneSection inView={inView} />
      {microphone !== null && (
        <>
          <label class="field">
            <span>Volume of the ticks below</span>
            <input
              type="range"
              min={0.05}
              max={1}
              step={0.05}
              value={volume}
              aria-describedby="tick-ears"
              onInput={({ currentTarget }) => setVolume(Number(currentTarget.value))}
            />
          </label>
          <p id="tick-ears" class="quiet">
            Not with headphones on your ears: begin soft. Loud clicks and drums can harm hearing for good, and
            the page can't measure how loud it is at your ear.
          </p>
          <ProofSection
            key={`proof ${microphone.deviceId}`}
            microphone={microphone}
            volume={volume}
            busy={busy}
            setBusy={setBusy}
          />
          <OutputSection
            key={`output ${microphone.deviceId}`}
            microphone={microphone}
            volume={volume}
            busy={busy}
            setBusy={setBusy}
          />
          <ReferenceSection
            key={`reference ${microphone.deviceId}`}
            microphone={microphone}
            busy={busy}
            setBusy={setBusy}
          />
        </>
      )}
    </div>
  );
}
