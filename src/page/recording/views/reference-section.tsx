import { useState } from 'preact/hooks';
import { LibraryFault } from '../../../library/library-fault.ts';
import { faultInWords } from '../../library/fault-words.ts';
import { type HandsOfReference, handsBefore, handWanted, noHands } from '../set-up/hands-of-reference.ts';
import { hearHand } from '../set-up/hear-hand.ts';
import { type KeptReference, keepReference } from '../set-up/keep-reference.ts';
import { dayWords } from './day-words.ts';
import { comparisonWords, handWords } from './reference-words.ts';
import type { SoundingSection } from './sounding-section.ts';
import { useHandTask } from './use-hand-task.ts';

/** Eight strokes of each hand at one height, and whether levels compare with last time. */
export function ReferenceSection({ microphone, busy, setBusy }: Omit<SoundingSection, 'volume'>) {
  const [hands, setHands] = useState(noHands);
  const [kept, setKept] = useState<KeptReference | string | null>(null);
  const task = useHandTask(async (hand, stop) => {
    const at = Date.now();
    const before = handsBefore(hands, hand, at);
    setHands(before);
    setKept(null);
    const heard = await hearHand(microphone, stop);
    const next = { ...before, [hand]: heard && { ...heard, at } };
    setHands(next);
    setKept(await keptOf(next, microphone.label));
  }, setBusy);
  const button = (hand: 'right' | 'left') => {
    const heard = hands[hand]?.heard ?? null;
    const isRunning = task.running === hand;
    const name = hand === 'right' ? 'Right hand' : 'Left hand';
    return (
      <div>
        <button
          type="button"
          class={isRunning ? 'main' : ''}
          disabled={busy && !isRunning}
          onClick={() => (isRunning ? task.stop() : task.start(hand))}
        >
          {isRunning ? `■ Stop: ${name.toLowerCase()} done` : heard === null ? name : `${name} once more`}
        </button>
        <p role="status">
          {isRunning
            ? 'Play eight strokes now.'
            : heard?.state === 'heard'
              ? `✓ ${heard.levels.n} strokes heard.`
              : heard !== null && `! ${handWords(heard)}`}
        </p>
      </div>
    );
  };
  const wanted = task.running === null ? handWanted(hands) : null;
  const words =
    kept !== null && typeof kept !== 'string' && kept.comparison !== null && kept.before !== null
      ? comparisonWords(kept.comparison, dayWords(new Date(kept.before).toISOString()))
      : null;
  return (
    <section aria-labelledby="reference-title">
      <h2 id="reference-title">4. As loud as last time?</h2>
      <p>
        How loud takes of two weeks are compares only if the microphone stands where it stood. Before you
        practise, play eight strokes with each hand, all from the same height, as last time: one a second,
        then press Stop.
      </p>
      <div class="hands">
        {button('right')}
        {button('left')}
      </div>
      <div role="status">
        {wanted !== null && <p>Now the {wanted} hand: the two are compared together.</p>}
        {typeof kept === 'string' && <p class="fault">{kept}</p>}
        {words !== null && (
          <div class={`verdict ${words.good ? 'good' : 'poor'}`}>
            <p>
              <strong>{words.good ? '✓ ' : '! '}</strong>
              {words.text}
            </p>
          </div>
        )}
        {kept !== null && typeof kept !== 'string' && kept.comparison === null && (
          <p>✓ Noted. The next time you play them here, the page says whether levels compare.</p>
        )}
      </div>
    </section>
  );
}

async function keptOf(
  { right, left }: HandsOfReference,
  device: string,
): Promise<KeptReference | string | null> {
  if (right?.heard.state !== 'heard' || left?.heard.state !== 'heard') return null;
  const reference = { right: right.heard.levels, left: left.heard.levels };
  const noiseFloorDb = Math.max(right.noiseFloorDb, left.noiseFloorDb);
  try {
    return await keepReference(reference, { device, noiseFloorDb, now: Date.now() });
  } catch (error) {
    if (error instanceof LibraryFault) return `Not kept: ${faultInWords(error)}`;
    throw error;
  }
}
