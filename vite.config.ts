/**
 * How the app is built and served. Relative paths (`base`), so that a build works from any folder of any host; served on
 * loopback only.
 */
import { defineConfig } from 'vite';

export default defineConfig({
  base: './',
  build: { target: 'es2022', outDir: 'dist' },
  worker: { format: 'es' },
  server: { host: '127.0.0.1' },
  preview: { host: '127.0.0.1' },
});
