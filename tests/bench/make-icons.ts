/**
 * Makes the icons of the installed app, src/public/icon-*.png, out of the drawing below: `npx tsx tests/bench/make-icons.ts`.
 * All that matters lies within the middle four fifths, so that a host may cut any shape out of it (W3C Web Application
 * Manifest, "maskable": a circle of 40% radius is safe).
 */
import { chromium } from 'playwright';
import { chromiumArguments, findChromium } from '../support/chromium.ts';

/** Contours of a slope, a ball, the way it breaks, and the hole; colours of src/app/app.css and src/scene/palette.ts. */
const DRAWING = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="100%" height="100%">
  <rect width="100" height="100" fill="#ece5d3"/>
  <g fill="none" stroke="#8d7a58" stroke-width="1" opacity="0.55">
    <path d="M-5 30C25 14 60 20 105 2"/><path d="M-5 50C25 34 64 40 105 22"/>
    <path d="M-5 70C25 54 68 60 105 42"/><path d="M-5 90C25 74 72 80 105 62"/><path d="M-5 110C25 94 76 100 105 82"/>
  </g>
  <path d="M32 74C30 50 42 34 60 32" fill="none" stroke="#d55e00" stroke-width="5" stroke-linecap="round"/>
  <circle cx="32" cy="74" r="6.5" fill="#fff" stroke="#26241f" stroke-width="2"/>
  <circle cx="67" cy="31" r="10" fill="#26241f"/>
</svg>`;

const browser = await chromium.launch({
  ...(await findChromium()),
  args: chromiumArguments,
  chromiumSandbox: process.getuid?.() !== 0,
});
for (const size of [192, 512]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body{margin:0}svg{display:block}</style>${DRAWING}`);
  await page.screenshot({ path: `src/public/icon-${size}.png` });
}
await browser.close();
