import { printWhenAsked } from './print-when-asked.ts';

/** Base64 of a gzip file back to the file's bytes. */
async function unpacked(base64: string): Promise<ArrayBuffer> {
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).arrayBuffer();
}

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
