import { plainLook } from '../../charts/look.ts';
import { type WeekPicture, weekChart } from '../../charts/weeks/week-picture.ts';
import { imageFontFamily, loadChartImage } from '../chart-image.ts';

const size = { width: 440, height: 340 };

/** Still pictures by id, as data URIs. Throws `PicturesUnavailable`. */
export async function weekImages(
  pictures: readonly WeekPicture[],
): Promise<Readonly<Record<string, string>>> {
  const drawImage = await loadChartImage();
  const look = { ...plainLook, fontFamily: imageFontFamily, fontSize: 14 };
  return Object.fromEntries(
    pictures.map((data) => {
      const png = drawImage(weekChart(data, look), {
        ...size,
        density: 1.5,
        colours: 32,
        paper: look.palette.paper,
      });
      return [data.id, `data:image/png;base64,${Buffer.from(png).toString('base64')}`];
    }),
  );
}
