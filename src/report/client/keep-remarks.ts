/** Saves and copies what is typed into a remark's field; nothing leaves the page by itself. */
export function keepRemarks(): void {
  for (const part of document.querySelectorAll<HTMLElement>('.remark')) {
    const field = part.querySelector('textarea');
    const said = part.querySelector('[role=status]');
    if (!field || !said) continue;
    for (const button of part.querySelectorAll<HTMLButtonElement>('button')) {
      button.hidden = false;
      button.addEventListener('click', async () => {
        if (button.dataset.do === 'copy') {
          field.select();
          const copied = await navigator.clipboard?.writeText(field.value).then(
            () => true,
            () => false,
          );
          said.textContent = copied
            ? 'Copied.'
            : 'It is marked: copy it with your device’s own copy command.';
          return;
        }
        const link = document.createElement('a');
        link.href = URL.createObjectURL(new Blob([field.value], { type: 'text/plain' }));
        link.download = field.dataset.file ?? 'remark.txt';
        link.click();
        setTimeout(() => URL.revokeObjectURL(link.href), 1000);
        said.textContent = 'Saved as a text file.';
      });
    }
  }
}
