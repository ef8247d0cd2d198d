import { chartList } from '../charts/chart-list.ts';
import { plainLook } from '../charts/look.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { imageFontFamily, loadChartImage } from './chart-image.ts';
import type { ReportImages } from './parts/picture.ts';

/** CSS pixels of a picture: readable when it fills a phone's width, and when it fills a column's. */
const size = { width: 440, height: 340 };

/** Strokes that a small picture shows at most. */
const strokesOfSmall = 220;

/** How sharp pictures are and how many colours they keep. */
interface ImageQuality {
  readonly density: number;
  readonly colours: number;
}

/** For a file that holds all pictures and shall stay small, and for pictures that stand alone. */
const smallImages: ImageQuality = { density: 1.25, colours: 16 };
export const sharpImages: ImageQuality = { density: 2, colours: 256 };

/** Strokes from which marks are so many that small pictures are drawn a little coarser, to stay small. */
const manyStrokes = 250;
const coarseImages: ImageQuality = { density: 1, colours: 16 };

/** PNG pictures of everything a graded take has to show, as data URIs by chart id. */
export async function reportImages(
  result: TakeResult,
  quality = result.strokes.time.length > manyStrokes ? coarseImages : smallImages,
): Promise<ReportImages> {
  if (result.grading.state !== 'graded') return {};
  const drawImage = await loadChartImage();
  const titled = quality === sharpImages;
  const look = {
    ...plainLook,
    fontFamily: imageFontFamily,
    fontSize: titled ? 13 : 15,
    titled,
    mostStrokes: titled ? plainLook.mostStrokes : strokesOfSmall,
  };
  const images: Record<string, string> = {};
  for (const { id, draw, wide = false } of chartList) {
    const chart = draw(result, look);
    if (chart === null) continue;
    const own = titled ? { width: wide ? 1000 : 600, height: 400 } : size;
    const png = drawImage(chart, { ...own, ...quality, paper: look.palette.paper });
    images[id] = `data:image/png;base64,${Buffer.from(png).toString('base64')}`;
  }
  return images;
}
