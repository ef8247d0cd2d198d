/** What can happen to a recording while it runs. */
export type TroubleCode =
  | 'microphone-ended'
  | 'interrupted'
  | 'microphone-muted'
  | 'page-hidden'
  | 'gap'
  | 'busy'
  | 'storage-full'
  | 'not-kept'
  | 'clipped'
  | 'noisy'
  | 'output-changed';

export interface Trouble {
  readonly code: TroubleCode;
  /** s of the recording. */
  readonly at: number;
  readonly sentence: string;
}

const sentences: Readonly<Record<TroubleCode, string>> = {
  'microphone-ended':
    'The microphone went away, so the recording ended there. What was played until then is kept.',
  interrupted:
    'The device took the sound away (a call, perhaps), so the recording ended there. What was played until then is kept.',
  'microphone-muted': 'The device muted the microphone for a while; that stretch is silent and marked.',
  'page-hidden': 'The page was out of sight for a while. Some devices stop recording then: keep it in sight.',
  gap: "A little of the sound was lost. The place is marked, and strokes there don't count as missed.",
  busy: 'The device was too busy for a moment, so some sound may be missing there. Close other programs.',
  'storage-full':
    'This device has no room left for a safe copy while recording. The recording goes on in memory: keep it or save it as a file before you close this page.',
  'not-kept':
    "This browser keeps no safe copy while recording. Don't close this page before the take is kept or saved.",
  clipped: 'Too loud: the tops of the sound are cut off. Move the microphone away or turn its level down.',
  noisy:
    'It is loud here: soft taps may drown in the noise. Close the window, switch off what hums, or move the microphone nearer to the pad.',
  'output-changed':
    'The sound went to another output during the take, so nothing will be said of ahead or behind the click.',
};

export const troubleAt = (code: TroubleCode, at: number): Trouble => ({
  code,
  at,
  sentence: sentences[code],
});
