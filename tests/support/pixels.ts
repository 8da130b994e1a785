/**
 * What colours a part of the page really has: a screenshot, decoded by the page itself (the tests need no image library).
 * Leaves out: comparing whole pictures, which differ between machines.
 */
import type { Page } from 'playwright';

/** A square of the page, CSS pixels from its upper left corner. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  /** Half its side. */
  readonly reach: number;
}

/** Channels may be this far off, of 255: edges are smoothed, and colours pass through the screen's own rounding. */
const TOLERANCE = 12;

/** How many CSS pixels of the spot have this colour. @param colour such as #0072b2 */
export const pixelsOfColour = async (on: Page, spot: Spot, colour: string): Promise<number> => {
  const side = 2 * spot.reach;
  const clip = { x: spot.x - spot.reach, y: spot.y - spot.reach, width: side, height: side };
  const picture = await on.screenshot({ clip, scale: 'css' });
  return on.evaluate(
    async ({ source, wanted, tolerance }) => {
      const image = new Image();
      image.src = source;
      await image.decode();
      const canvas = document.createElement('canvas');
      canvas.width = image.width;
      canvas.height = image.height;
      const context = canvas.getContext('2d');
      if (context === null) throw new Error('no canvas to decode a screenshot with');
      context.drawImage(image, 0, 0);
      const { data } = context.getImageData(0, 0, image.width, image.height);
      let count = 0;
      for (let at = 0; at < data.length; at += 4)
        if (wanted.every((channel, index) => Math.abs(data[at + index] - channel) <= tolerance)) count += 1;
      return count;
    },
    {
      source: `data:image/png;base64,${picture.toString('base64')}`,
      wanted: [1, 3, 5].map((from) => Number.parseInt(colour.slice(from, from + 2), 16)),
      tolerance: TOLERANCE,
    },
  );
};
