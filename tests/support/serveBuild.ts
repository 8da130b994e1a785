/**
 * Global set-up of the browser tests: makes one production build and serves it on a free loopback port, as a user's host
 * would. Tests learn its address as `baseURL`, and where Chromium is as `chromium`.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { type ChromiumPlace, findChromium } from './chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    baseURL: string;
    /** Folder of the build. */
    buildFolder: string;
    chromium: ChromiumPlace;
  }
}

export interface ServedBuild {
  readonly baseURL: string;
  /** Folder of the build. */
  readonly outDir: string;
  /** Ends the server and removes the build. */
  readonly end: () => Promise<void>;
}

/** Makes a build of its own and serves it. */
export const servedBuild = async (): Promise<ServedBuild> => {
  // Not dist/: a build for tests must not replace the one somebody is looking at, nor that of another run.
  const outDir = mkdtempSync(join(tmpdir(), 'borrow-build-'));
  await build({ logLevel: 'warn', build: { outDir, emptyOutDir: true } });
  const server = await preview({
    logLevel: 'warn',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0, open: false },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('The preview server has no port.');
  return {
    baseURL: `http://127.0.0.1:${address.port}/`,
    outDir,
    end: async () => {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
};

export default async function serveBuild(project: TestProject): Promise<() => Promise<void>> {
  const chromium = await findChromium();
  const { baseURL, outDir, end } = await servedBuild();
  project.provide('baseURL', baseURL);
  project.provide('buildFolder', outDir);
  project.provide('chromium', chromium);
  return end;
}
