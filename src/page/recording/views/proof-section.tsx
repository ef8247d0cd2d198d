import { keepProof, keptProof } from '../proof/kept-proofs.ts';
import { proveDevice } from '../proof/prove-device.ts';
import { dayWords } from './day-words.ts';
import { proofWords } from './proof-words.ts';
import type { SoundingSection } from './sounding-section.ts';
import { TaskBar } from './task-bar.tsx';
import { useTask } from './use-task.ts';

/** Whether the device records what is played to it: ticks at known levels, and what came back. */
export function ProofSection({ microphone, volume, busy, setBusy }: SoundingSection) {
  const { deviceId } = microphone;
  const task = useTask(async (stop, progress) => {
    const proof = await proveDevice(microphone, { volume, stop, progress });
    if (proof !== null) keepProof({ inputId: deviceId, proof, provedAt: new Date().toISOString() });
    return { proof };
  }, setBusy);
  const before = keptProof(deviceId);
  const shown = task.outcome?.proof ?? null;
  const words = shown !== null ? proofWords(shown) : null;
  return (
    <section aria-labelledby="proof-title">
      <h2 id="proof-title">2. Does it record what you play?</h2>
      <p>
        Phones and laptops often press loud sounds, lift soft ones or cut off what follows a silence. The page
        plays ticks at levels it knows and compares what comes back. Let the loudspeaker sound (no
        headphones), at a middling volume, and be still for 16 seconds.
      </p>
      <TaskBar task={task} start="Play the ticks" doing="Ticks are played. Be still …" wait={busy} />
      <div role="status">
        {task.outcome !== null && shown === null && (
          <p class="fault">That was broken off: some of the sound was lost. Try once more.</p>
        )}
        {words !== null && (
          <div class={`verdict ${words.good ? 'good' : 'poor'}`}>
            <p>
              <strong>
                {words.good ? '✓ ' : '! '}
                {words.verdict}
              </strong>
            </p>
            {words.more.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
        )}
      </div>
      {task.outcome === null && !task.running && before !== null && (
        <p class="quiet">
          {dayWords(before.provedAt)}: {proofWords(before.proof).verdict}
        </p>
      )}
    </section>
  );
}
