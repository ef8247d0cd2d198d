let context: AudioContext | undefined;

/** The page's one audio context. Browsers let it sound only after a press of the user's, from which this is called. */
export async function pageAudio(): Promise<AudioContext> {
  context ??= new AudioContext({ latencyHint: 'interactive' });
  if (context.state !== 'running') await context.resume();
  return context;
}
