import { chartList } from '../charts/chart-list.ts';
import { plainLook } from '../charts/look.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { imageFontFamily, loadChartImage } from './chart-image.ts';
import type { ReportImages } from './parts/picture.ts';

/** Size of a report's picture, CSS pixels: readable when it fills a phone's width, sharp when it fills a column's. */
const size = { width: 440, height: 340, density: 2 };

/** PNG pictures of everything a graded take has to show, as data URIs by chart id. */
export async function reportImages(result: TakeResult): Promise<ReportImages> {
  if (result.grading.state !== 'graded') return {};
  const drawImage = await loadChartImage();
  const look = { ...plainLook, fontFamily: imageFontFamily, fontSize: 15 };
  const images: Record<string, string> = {};
  for (const { id, draw } of chartList) {
    const chart = draw(result, look);
    if (chart === null) continue;
    const png = drawImage(chart, { ...size, paper: look.palette.paper });
    images[id] = `data:image/png;base64,${Buffer.from(png).toString('base64')}`;
  }
  return images;
}
