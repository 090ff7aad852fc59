import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** The server's own address while the page is developed; `PORT` moves it. */
const serverPort = process.env.PORT ?? '8460';

/** Controls of the map's library that the page does not use: half of the library's styles are theirs. */
const UNUSED_CONTROLS =
  /ctrl-(geolocate|fullscreen|terrain|globe|attrib|logo|compass)|user-location|cooperative-gesture/;

/** Leaves out rules whose every selector is of an unused control. */
const usedMapStylesOnly: Plugin = {
  name: 'used-map-styles-only',
  enforce: 'pre',
  transform: (code, id) =>
    id.endsWith('/maplibre-gl.css')
      ? code.replace(/([^{}]+)\{[^{}]*\}/g, (rule, selectors: string) =>
          selectors.split(',').every((selector) => UNUSED_CONTROLS.test(selector)) ? '' : rule,
        )
      : null,
};

export default defineConfig({
  root: new URL('.', import.meta.url).pathname,
  plugins: [react(), usedMapStylesOnly],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    // What the service worker keeps of the page (web/public/service-worker.js).
    manifest: 'files.json',
    target: 'es2023',
    // Browsers that know light-dark(): the colours need no second form.
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    // The map's library alone is over Vite's 500 kB warning; the page's budget is held by tests/house/page-size.test.ts.
    chunkSizeWarningLimit: 1500,
  },
  server: { proxy: { '/api': `http://127.0.0.1:${serverPort}` } },
});
