import { likeMoment, type PairSound, pairVolumes } from '../weeks/pair-sound.ts';

/** Lets two takes be heard against each other from the same place: only one sounds, and switching keeps the beat. */
export function hearPair(): void {
  const held = document.getElementById('pair-sound')?.textContent;
  const controls = document.getElementById('pair-controls');
  const takes = ['first-sound', 'second-sound'].map((id) => document.getElementById(id));
  const [first, second] = takes;
  if (!held || !controls || !(first instanceof HTMLAudioElement) || !(second instanceof HTMLAudioElement))
    return;
  const sound = JSON.parse(held) as PairSound;
  const both = [first, second] as const;
  const matched = document.getElementById('pair-matched') as HTMLInputElement;
  const said = document.getElementById('pair-said')!;
  controls.hidden = false;
  for (const [side, audio] of both.entries()) audio.addEventListener('play', () => both[1 - side]!.pause());

  const level = () => {
    const volumes = matched.checked ? pairVolumes(sound) : [1, 1];
    for (const [side, audio] of both.entries()) audio.volume = volumes[side]!;
    // Some phones keep the volume to themselves.
    const heeded = both.every(({ volume }, side) => Math.abs(volume - volumes[side]!) < 0.01);
    if (matched.checked && !heeded) {
      matched.checked = false;
      matched.disabled = true;
      said.textContent =
        "This device doesn't let a page set the volume: both are heard as they were recorded.";
    }
  };
  matched.addEventListener('change', level);
  document.getElementById('pair-switch')!.addEventListener('click', () => {
    const from = first.paused && !second.paused ? 1 : 0;
    const to = (1 - from) as 0 | 1;
    both[to].currentTime = likeMoment(sound, from, both[from].currentTime);
    both[from].pause();
    void both[to].play();
    said.textContent = `You hear the ${to === 0 ? 'first' : 'second'} take, from the same place.`;
  });
}
