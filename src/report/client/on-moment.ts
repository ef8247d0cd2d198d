/** Calls back with the moment of the take, s, that a button of the report names when it is pressed. */
export function onMoment(play: (time: number) => void): void {
  document.addEventListener('click', ({ target }) => {
    const button = (target as Element).closest<HTMLElement>('button[data-moment]');
    if (button !== null) play(Number(button.dataset.moment));
  });
}
