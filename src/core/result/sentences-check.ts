import { rounded, takeTime } from './figures.ts';
import { type Facts, numberOf, type SentenceTable, textOf } from './sentence-table.ts';

const decibels = (facts: Facts, name: string) => `${numberOf(facts, name).toFixed(0)} dB`;
const times = (n: number) => (n === 1 ? 'once' : `${n} times`);

/** What the check of a recording found, and what to do for the next one. */
export const checkSentences: SentenceTable = {
  clipped: (f) =>
    `${textOf(f, 'cut')} of ${textOf(f, 'of')} strokes were louder than the recording could take, the loudest by about ${decibels(f, 'overDb')}, and were cut off flat. Turn the recording level down, or move the phone further from the pad.`,
  gated: () =>
    'The background breaks off between strokes: the phone or the app cuts off what it takes for silence, and soft taps with it. Turn off voice enhancement, noise reduction or "clear voice" in the recording app, or use another app.',
  'gain-control': (f) =>
    `The background sinks by ${decibels(f, 'sinksDb')} after loud strokes: the phone or the app evens out loud and soft by itself. Turn off automatic gain or voice enhancement, or use another app.`,
  limited: () =>
    'Accents are held down as they come: they die away more slowly than taps. Turn off automatic gain, limiter or voice enhancement, or turn the recording level down.',
  'drop-outs': (f) =>
    `Sound is missing ${times(numberOf(f, 'places'))}, first at ${takeTime(numberOf(f, 'at'))}: the device lost some of it. Close other programs, record to the device's own memory, and record again.`,
  'coarse-samples': (f) =>
    `The recording is stored in only ${textOf(f, 'bits')} bits: what is softer than ${numberOf(f, 'stepDb').toFixed(0)} dBFS is lost, and its steps sound like noise. Record in 16 bits or more.`,
  'taps-near-noise': (f) =>
    `Taps stand only ${decibels(f, 'overDb')} above the noise of the place. Put the phone an arm's length from the pad, and switch off what hums or blows.`,
  noisy: (f) =>
    `The place is loud: its noise is at ${numberOf(f, 'noiseDb').toFixed(0)} dBFS, only ${decibels(f, 'overDb')} under the accents. Move nearer to the pad, or to a quieter room.`,
  'others-heard': (f) =>
    `Somebody else seems to play in the room: ${textOf(f, 'strokes')} strokes that don't sound like yours, the first at ${takeTime(numberOf(f, 'at'))}, were left out. Where two strokes meet, figures are less sure. Record while nobody else plays, or put the phone nearer to your pad.`,
  hum: (f) =>
    `The mains hum at ${textOf(f, 'hz')} Hz, ${numberOf(f, 'levelDb').toFixed(0)} dBFS. Keep the microphone and its cable away from power supplies, or record on battery.`,
  'lossy-codec': (f) =>
    `The sound was packed so small that ${
      'echoDb' in f
        ? `a faint echo (${decibels(f, 'echoDb')} over the quiet) comes before each stroke`
        : `its hiss goes up and down in steps (${rounded(numberOf(f, 'hissTimes'))} times as much as hiss does)`
    }. Record as WAV, or choose a higher quality or bit rate; don't send takes through a messenger.`,
  'spectral-holes': () =>
    'The quiet between strokes is full of holes, as noise reduction or strong packing leaves them; soft taps lose some of their loudness there. Turn off voice enhancement or noise reduction in the recording app, or record as WAV or at a higher bit rate.',
  'narrow-band': (f) =>
    `The sound ends at ${rounded(numberOf(f, 'upToHz') / 1000)} kHz, as over a telephone or a wireless headset. Record with the phone's own microphone, at 44.1 kHz or more.`,
  'click-changes': () =>
    "The microphone heard the click, whose tempo changes, and not all of it could be taken off the sound, so it can't be told apart from strokes. With the click in headphones, at a low volume, all of it can be told.",
  'click-loud': (f) =>
    `The click is ${decibels(f, 'overDb')} louder in the recording than the taps. It is taken off before strokes are measured; a softer click, or one in headphones at a low volume, leaves more of them.`,
  'stick-clicks': (f) =>
    `${textOf(f, 'clicks')} clicks of stick on stick were heard, the first at ${takeTime(numberOf(f, 'at'))}, and left out of the take.`,
  'dc-offset': (f) =>
    `The waveform stands ${rounded(Math.abs(numberOf(f, 'percent')))} % off its middle, as from a faulty input. It was put right before measuring.`,
  'short-take': (f) =>
    `${textOf(f, 'strokes')} strokes in ${rounded(numberOf(f, 'seconds'))} s are little to go by: a score takes ${textOf(f, 'needed')}. Record the line with more repeats.`,
};

/** What a finding spoils, in plain words, by a measure that stands for its kind. */
const kinds = [
  ['timing-spread', 'timing'],
  ['accent-spread', 'how loud accents are'],
  ['tap-spread', 'how loud taps are'],
  ['missed', 'how many strokes are missing or too many'],
] as const;

/** What isn't told because of a finding, or nothing. */
export function spoiltSentence(spoils: readonly string[]): string {
  const said = kinds.filter(([id]) => spoils.includes(id)).map(([, words]) => words);
  if (said.length === 0) return '';
  const list = said.length === 1 ? said[0]! : `${said.slice(0, -1).join(', ')} and ${said.at(-1)!}`;
  return `Not told because of it: ${list}.`;
}

/** Why a measure has no figure: the finding that spoils it. */
export const spoiledSentences: SentenceTable = Object.fromEntries(
  Object.entries(checkSentences).map(([code, sentence]) => [`spoiled-${code}`, sentence]),
);
