/** Seconds of the take that are heard before a moment. */
const before = 1;

/** Lets the buttons of the report play the take from just before the moment they name. */
export function playMoments(): void {
  const sound = document.querySelector<HTMLAudioElement>('#sound');
  if (sound === null) return;
  for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-moment]')) {
    button.addEventListener('click', () => {
      sound.currentTime = Math.max(0, Number(button.dataset.moment) - before);
      void sound.play();
    });
  }
}
