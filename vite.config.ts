/**
 * How the app is built and served. Relative paths (`base`), so that a build works from any folder of any host; served on
 * loopback only. A service worker keeps all of a build on the device, workers and late parts too: after one visit it works
 * without a network. It is registered by src/state/offline.ts, and a newer build waits until the person lets it in.
 */
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

/** Paper, as in src/app/app.css. */
const PAPER = '#ece5d3';

export default defineConfig({
  base: './',
  publicDir: 'src/public',
  build: { target: 'es2022', outDir: 'dist' },
  worker: { format: 'es' },
  server: { host: '127.0.0.1' },
  preview: { host: '127.0.0.1' },
  plugins: [
    VitePWA({
      registerType: 'prompt',
      injectRegister: false,
      workbox: {
        globPatterns: ['**/*.{js,css,html}'],
        // The page of the first visit is served by the worker too, once that is there.
        clientsClaim: true,
        cleanupOutdatedCaches: true,
        inlineWorkboxRuntime: true,
        // Also when tests make the build: they test what a user gets.
        mode: 'production',
        sourcemap: false,
      },
      manifest: {
        id: './',
        name: 'Borrow: green reading and pace',
        short_name: 'Borrow',
        description:
          'How much break to play, how firm to putt, and what you hole: on this device, without a network.',
        start_url: './',
        scope: './',
        display: 'standalone',
        background_color: PAPER,
        theme_color: PAPER,
        icons: [
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
    }),
  ],
});
