/** What the page asks of the writing worker, in order. */
export type WriterWish =
  | { readonly wish: 'begin'; readonly file: string; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly wish: 'add'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly wish: 'end' };

/** `full`: no room for more; what was written before stays. `fault`: it couldn't be written for another reason. */
export type WriterAnswer =
  | { readonly answer: 'begun' }
  | { readonly answer: 'ended' }
  | { readonly answer: 'full' }
  | { readonly answer: 'fault'; readonly reason: string };

/** The folder of the browser's private files in which recordings stand while they come. */
export const unfinishedFolder = 'unfinished-takes';
/** Held by the tab that records, so that another tab doesn't offer the take as a lost one. */
export const lockOf = (file: string): string => `evenhand-recording-${file}`;
