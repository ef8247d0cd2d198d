import type { DecodingMeans } from '../../formats/coded/open-coded.ts';
import { aacByBrowser } from './aac-by-browser.ts';

/** How recordings are decoded in the page. */
export const decodingMeans: DecodingMeans = {
  aac: aacByBrowser,
  // Phones have a few GB; half an hour of two channels takes 690 MB.
  inMemory: 180_000_000,
};
