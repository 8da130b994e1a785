/**
 * Finds a Chromium that runs here: the path in $CHROME, else the one shipped inside the npm package
 * @sparticuz/chromium (Linux, x64), unpacked once into node_modules/.cache. That package's own executablePath() and
 * arguments are not used: they are made for another place and leave traps here.
 */
import { execFileSync } from 'node:child_process';
import {
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { brotliDecompressSync, createBrotliDecompress } from 'node:zlib';

/**
 * Software WebGL, so that pictures are the same with and without a graphics card; never taken for stuck, slow as it is on a busy machine;
 * pages put together without its help, which takes a third less of the processor's time, and with which a screenshot hung at times;
 * and no proxy on the way to loopback.
 */
export const chromiumArguments = [
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-watchdog',
  '--disable-gpu-compositing',
  '--no-proxy-server',
];

export interface ChromiumPlace {
  readonly executablePath: string;
  readonly env: Record<string, string>;
}

/** The environment without proxy settings: the pages under test are on loopback. */
const plainEnvironment = (): Record<string, string> => {
  const plain: Record<string, string> = {};
  for (const [name, value] of Object.entries(process.env))
    if (value !== undefined && !/_proxy$/i.test(name)) plain[name] = value;
  return plain;
};

const unpack = async (from: string, to: string): Promise<void> => {
  mkdirSync(dirname(to), { recursive: true });
  // Unpack aside, then one rename: safe when two runs start together and when one is interrupted.
  const aside = mkdtempSync(`${to}-`);
  try {
    await pipeline(
      createReadStream(join(from, 'chromium.br')),
      createBrotliDecompress(),
      createWriteStream(join(aside, 'chromium'), { mode: 0o755 }),
    );
    for (const archive of ['swiftshader', 'al2023', 'fonts'])
      execFileSync('tar', ['xf', '-', '-C', aside, '--no-same-owner'], {
        input: brotliDecompressSync(readFileSync(join(from, `${archive}.tar.br`))),
      });
    renameSync(aside, to);
  } catch (problem) {
    rmSync(aside, { recursive: true, force: true });
    // Another run that finished first is no problem; its result is the same.
    if (!existsSync(to)) throw problem;
  }
};

/**
 * Says where the fonts are. The settings inside the package name folders that exist elsewhere only: with them text has
 * no glyphs and no height. Only the shipped fonts are listed, so that pages measure the same on every machine. Written
 * anew each time, because the paths in it are absolute and a checkout may move.
 */
const writeFontSettings = (folder: string): string => {
  const file = join(folder, 'fonts-here.conf');
  writeFileSync(
    file,
    `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(folder, 'fonts')}</dir>
  <cachedir>${join(folder, 'fonts-cache')}</cachedir>
</fontconfig>
`,
  );
  return file;
};

export const findChromium = async (): Promise<ChromiumPlace> => {
  const env = plainEnvironment();
  if (process.env.CHROME) return { executablePath: process.env.CHROME, env };
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  const root = resolve(dirname(entry), '../..');
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  const folder = resolve('node_modules/.cache', `chromium-${version}`);
  if (!existsSync(folder)) await unpack(join(root, 'bin'), folder);
  const libraries = [env.LD_LIBRARY_PATH, join(folder, 'lib')].filter(Boolean).join(':');
  return {
    executablePath: join(folder, 'chromium'),
    env: { ...env, LD_LIBRARY_PATH: libraries, FONTCONFIG_FILE: writeFontSettings(folder) },
  };
};
