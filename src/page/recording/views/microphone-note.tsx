import { keptDevice } from '../kept-devices.ts';
import { keptProof } from '../proof/kept-proofs.ts';

/** What is known of the microphone that was used last, in a line with the way to its view. */
export function MicrophoneNote() {
  const device = keptDevice('input');
  const verdict = device === null ? null : (keptProof(device)?.proof.verdict ?? null);
  const meddles = verdict === 'gating' || verdict === 'noise-suppression' || verdict === 'gain-control';
  return (
    <p class="quiet">
      {verdict === 'obeyed'
        ? 'Your microphone was checked: it records what is there. '
        : meddles
          ? 'Your microphone was checked: it changes how loud strokes are, and takes will say so. '
          : "Whether your microphone records what you play hasn't been checked yet. "}
      <a href="#/microphone">{verdict === null ? 'Check it' : 'Microphone and sound'}</a>
    </p>
  );
}
