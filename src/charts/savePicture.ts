/**
 * A chart as a PNG with its heading and sentence, in the colours on the page. Loaded when first asked for.
 * The drawing takes its colours from the page's css names, which a picture of its own does not have: they are written out.
 */
import { saveFile } from '../controls/saveFile.ts';

export interface PictureWords {
  readonly heading: string;
  /** One sentence below the heading. */
  readonly title: string;
  readonly fileName: string;
}

/** Pixels per CSS pixel: sharp in print and on fine screens. */
const FINENESS = 2;
const EDGE = 16;
const HEADING_LINE = 30;
const SENTENCE_LINE = 19;

const cssName = (name: string): string =>
  getComputedStyle(document.documentElement).getPropertyValue(name).trim();

const loadImage = (source: string): Promise<HTMLImageElement> =>
  new Promise((resolve, reject) => {
    const image = new Image();
    image.onload = () => resolve(image);
    image.onerror = () => reject(new Error('the browser did not take the drawing'));
    image.src = source;
  });

const wrapped = (pen: CanvasRenderingContext2D, text: string, width: number): string[] => {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && pen.measureText(`${last} ${word}`).width <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
};

export const savePicture = async (
  drawing: SVGSVGElement,
  { heading, title, fileName }: PictureWords,
): Promise<void> => {
  const { width, height } = drawing.getBoundingClientRect();
  const text = new XMLSerializer()
    .serializeToString(drawing)
    .replace(/var\((--[\w-]+)\)/g, (_all, name: string) => cssName(name).replaceAll('"', "'"));
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  try {
    const image = await loadImage(address);
    const canvas = document.createElement('canvas');
    const pen = canvas.getContext('2d');
    if (pen === null) throw new Error('no canvas to draw on');
    const sentenceFace = `14px ${cssName('--text')}`;
    pen.font = sentenceFace;
    const lines = wrapped(pen, title, width);
    const head = EDGE + HEADING_LINE + lines.length * SENTENCE_LINE + 8;
    canvas.width = (width + 2 * EDGE) * FINENESS;
    canvas.height = (head + height + EDGE) * FINENESS;
    pen.scale(FINENESS, FINENESS);
    pen.fillStyle = cssName('--card');
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.fillStyle = cssName('--ink');
    pen.font = `italic 21px ${cssName('--display')}`;
    pen.fillText(heading, EDGE, EDGE + 20);
    pen.font = sentenceFace;
    lines.forEach((line, index) => {
      pen.fillText(line, EDGE, EDGE + HEADING_LINE + (index + 1) * SENTENCE_LINE - 4);
    });
    pen.drawImage(image, EDGE, head, width, height);
    const picture = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (picture === null) throw new Error('the browser made no picture');
    saveFile(`${fileName}.png`, picture);
  } finally {
    URL.revokeObjectURL(address);
  }
};
