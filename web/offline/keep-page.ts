/**
 * Has the browser keep the page and the last answers, so that it opens without its server. Browsers do so over TLS and from
 * the own machine only; where they do not, the page works as before. Not while the page is developed: files change then.
 */
export function keepPage(): void {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  navigator.serviceWorker.register('/service-worker.js').catch((error: unknown) => {
    console.warn('The page is not kept for use without its server:', error);
  });
}
