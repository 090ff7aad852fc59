import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The server's own address while the page is developed; `PORT` moves it. */
const serverPort = process.env.PORT ?? '8460';

export default defineConfig({
  root: new URL('.', import.meta.url).pathname,
  plugins: [react()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2023',
    // The map's library alone is over Vite's 500 kB warning; the page's budget is held by tests/bench/page.bench.ts.
    chunkSizeWarningLimit: 1500,
  },
  server: { proxy: { '/api': `http://127.0.0.1:${serverPort}` } },
});
