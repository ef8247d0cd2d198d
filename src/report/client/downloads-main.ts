import { printWhenAsked } from './print-when-asked.ts';
import { unpacked } from './unpacked.ts';

for (const button of document.querySelectorAll<HTMLButtonElement>('button[data-file]')) {
  const { file = '', type = '' } = button.dataset;
  button.addEventListener('click', async () => {
    const packed = document.querySelector(`script[data-packed="${file}"]`)?.textContent ?? '';
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([await unpacked(packed)], { type }));
    link.download = file;
    link.click();
    // The browser has taken the file by then.
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  });
}

printWhenAsked();
