import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** The server's own address while the page is developed; `PORT` moves it. */
const serverPort = process.env.PORT ?? '8460';

/** Words that react-aria says to screen readers, one file a language. */
const ARIA_WORDS = /react-aria(-components)?\/dist\/private\/intl\/.*\b[a-z]{2}-[A-Z]{2}\.mjs$/;

/** The page is in English: the other thirty languages of the components' words are a tenth of its code. */
const englishWordsOnly: Plugin = {
  name: 'english-words-only',
  enforce: 'pre',
  load: (id) => (ARIA_WORDS.test(id) && !id.endsWith('en-US.mjs') ? 'export default {};' : null),
};

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
  plugins: [react(), englishWordsOnly, usedMapStylesOnly],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2023',
    // Browsers that know light-dark(): the colours need no second form.
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    // The map's library alone is over Vite's 500 kB warning; the page's budget is held by tests/bench/page.bench.ts.
    chunkSizeWarningLimit: 1500,
  },
  server: { proxy: { '/api': `http://127.0.0.1:${serverPort}` } },
});
