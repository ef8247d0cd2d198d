import { counted, takeTime } from './figures.ts';
import { numberOf, type SentenceTable } from './sentence-table.ts';

const lost = (seconds: number) =>
  seconds < 1 ? `${(1000 * seconds).toFixed(0)} ms` : `${seconds.toFixed(1)} s`;

/** Why there is no grade, and what to know about a graded take as a whole. */
export const takeSentences: SentenceTable = {
  'silent-take': (f) =>
    f.peakDb === undefined
      ? 'The recording is silent: every sample is zero. Check that the microphone was switched on and allowed, and record again.'
      : `The recording is all but silent: its loudest moment is ${numberOf(f, 'peakDb').toFixed(0)} dBFS. Check the microphone and move it nearer to the pad.`,
  'no-strokes-heard': (f) =>
    `No strokes were found, though the exercise asks for ${numberOf(f, 'wanted')}. Check that this is the right recording and that the microphone was near the pad.`,
  'too-few-strokes-heard': (f) =>
    `Only ${counted(numberOf(f, 'strokes'), 'stroke was', 'strokes were')} found, though the exercise asks for ${numberOf(f, 'wanted')}. Record the whole line, nearer to the pad if it was played.`,
  'too-few-on-exercise': (f) =>
    `Of ${counted(numberOf(f, 'strokes'), 'stroke')} found only ${numberOf(f, 'graded')} could be laid on the exercise. Check that the sheet and the tempo belong to this recording.`,
  'part-not-played': (f) =>
    `The take ends before the exercise does or leaves part of it out: ${numberOf(f, 'notReached')} of ${numberOf(f, 'wanted')} strokes were never reached. They are not counted as missed.`,
  'runs-given-up': (f) =>
    `${numberOf(f, 'runs') === 1 ? 'One run was' : `${numberOf(f, 'runs')} runs were`} given up and played again (from ${takeTime(numberOf(f, 'from'))}): shown, not graded.`,
  'surplus-played': (f) =>
    `${numberOf(f, 'runs') === 1 ? 'One run' : `${numberOf(f, 'runs')} runs`} came on top of what the sheet asks for (from ${takeTime(numberOf(f, 'from'))}): shown, not graded.`,
  'tempo-far-off': (f) =>
    `Asked for was ${numberOf(f, 'asked').toFixed(0)} BPM, played were ${numberOf(f, 'played').toFixed(0)}. If the sheet has the wrong tempo, mend it and grade again; all but the tempo is graded at the tempo played.`,
  'end-missing': (f) =>
    `The recording breaks off${f.missingSeconds === undefined ? '' : `: ${numberOf(f, 'missingSeconds').toFixed(1)} s at its end are missing from the file`}. What is there was graded; copy the file from the recorder again to have the rest.`,
  'notes-of-several-keys': (f) =>
    `The MIDI file has notes of several keys, and all of them were graded: ${f.keys}. If the pad is only some of them, grade again with --keys.`,
  'levels-are-velocities': () =>
    'Levels are what an electronic pad sent, decibels under velocity 127. Pads turn strokes into velocities each in its own way, so they compare with takes of this pad and its setting alone, and never with a recording.',
  'gaps-in-recording': (f) =>
    `Sound was lost while recording: ${numberOf(f, 'gaps') === 1 ? 'a gap' : `${numberOf(f, 'gaps')} gaps, the first`} at ${takeTime(numberOf(f, 'from'))}, ${lost(numberOf(f, 'seconds'))} in all. ${numberOf(f, 'unheard') === 0 ? 'No stroke was due there.' : `${counted(numberOf(f, 'unheard'), 'stroke was', 'strokes were')} due there and not counted as missed.`}`,
  'cut-inside-exercise': (f) =>
    `The recording begins or ends inside the exercise: ${counted(numberOf(f, 'unheard'), 'stroke was', 'strokes were')} due outside it and not counted as missed.`,
  'click-delay-unknown': () =>
    'Ahead or behind the click is not told: the delay of this output was not measured, or it is a wireless one. Measure the delay before the next take, or let a loudspeaker sound the click so that it is in the recording.',
  'click-delay-changed': (f) =>
    `The click in the recording lies ${Math.abs(numberOf(f, 'differenceMs')).toFixed(0)} ms from where the measured delay puts it, so the delay is no longer right. Strokes are held against the click as it was heard. Measure the delay again.`,
  'click-in-part': (f) =>
    `The click is heard from ${takeTime(numberOf(f, 'from'))} to ${takeTime(numberOf(f, 'to'))} only, and ${numberOf(f, 'alone')} of ${numberOf(f, 'strokes')} strokes were played without it. ${2 * numberOf(f, 'alone') > numberOf(f, 'strokes') ? "So the take isn't held against it." : 'Strokes are held against it where it is heard.'}`,
  'recording-cut-short': (f) =>
    `The recording ended by itself at ${takeTime(numberOf(f, 'at'))}: the microphone or the sound was taken away. What was played until then was graded.`,
  'recording-fell-behind': (f) =>
    `The device was too busy near ${takeTime(numberOf(f, 'at'))} and lost about ${lost(numberOf(f, 'seconds'))} of sound. Strokes near there may seem missed or early; close other programs and record again.`,
  'microphone-gating': () =>
    'The check of the microphone found that it cuts off soft sounds after silence. Taps may be missing here that were played; switch voice processing off or use another microphone.',
  'microphone-noise-suppression': () =>
    'The check of the microphone found that it takes steady sound for noise and lowers it. Soft taps may be too low here; switch voice processing off or use another microphone.',
  'microphone-gain-control': () =>
    'The check of the microphone found that it evens out loud and soft. Accents and taps lie further apart than this take shows; switch automatic gain off or use another microphone.',
  'model-not-graded': () =>
    'The model is the result of a take without a grade, so there is nothing to hold this take against. Choose the result of a graded take.',
  'model-too-short': () =>
    'The model repeats its lines too little to show a habit. Record each of its lines at least four times in a row.',
  'model-of-other-exercise': () =>
    'The model is of another exercise: none of its lines is in this take. Choose a model of the same line, written the same way.',
  'too-few-repeats-for-model': () =>
    'The line was repeated too little to hold it against the model. Record it at least four times in a row.',
  'length-not-written': () =>
    "The recorder didn't write down how long the recording is; it was read to the end of the file.",
};
