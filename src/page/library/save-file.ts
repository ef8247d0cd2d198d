/** Hands a file to the browser for saving. */
export function saveFile(name: string, contents: Blob): void {
  const address = URL.createObjectURL(contents);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers read the file only after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
