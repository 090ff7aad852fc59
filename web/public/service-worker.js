/*
 * Keeps in the browser what the page needs where the server does not answer: its files, and the last answers that it got.
 * Always asks the server first; what is kept is handed out only where no answer comes, and says since when it is kept.
 */

const FILES = 'drystage-files';
const ANSWERS = 'drystage-answers';
/** Answers that are kept, the oldest go first: one of a long route has some megabytes (ours). */
const MOST_ANSWERS = 24;
/** Read by the page: web/api/reach.ts. */
const KEPT_SINCE = 'drystage-kept-since';

/** What the page cannot be opened without. A plan that is still searched for, events and files to take along are not kept. */
const KEPT_PATHS = [
  /^\/api\/demo$/,
  /^\/api\/trips(\/[^/]+(\/changes)?)?$/,
  /^\/api\/analyses\/[^/]+(\/plan)?$/,
];

self.addEventListener('install', (event) => {
  event.waitUntil(keepPage().then(() => self.skipWaiting()));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim());
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) return;
  if (request.mode === 'navigate' && url.pathname === '/') event.respondWith(page(event));
  else if (url.pathname.startsWith('/api/')) {
    if (['GET', 'POST'].includes(request.method) && KEPT_PATHS.some((path) => path.test(url.pathname)))
      event.respondWith(answer(request));
  } else if (request.method === 'GET' && request.mode !== 'navigate') event.respondWith(file(request));
});

/** The page with all its files, those of panels that were never looked at as well. */
async function keepPage() {
  const response = await fetch('/', { cache: 'no-store' });
  if (response.ok) await keepVersion(response);
}

/** Takes a version of the page with all its files in the place of another. */
async function keepVersion(response) {
  const files = await caches.open(FILES);
  const listed = await (await fetch('/files.json', { cache: 'no-store' })).json();
  const paths = Object.values(listed).flatMap(({ file, css = [], assets = [] }) => [file, ...css, ...assets]);
  const all = new Set([...paths, 'mark.svg', 'manifest.webmanifest'].map((path) => `/${path}`));
  for (const { url } of await files.keys()) if (!all.has(new URL(url).pathname)) await files.delete(url);
  for (const path of all) if ((await files.match(path)) === undefined) await files.add(path);
  // Last, so that a page is only kept with all of its files.
  await files.put('/', response);
}

/** The page itself, from the server where it answers. */
async function page(event) {
  const files = await caches.open(FILES);
  try {
    const response = await fetch(event.request);
    if (response.ok) event.waitUntil(keepIfNew(response.clone()).catch(() => {}));
    return response;
  } catch (error) {
    const kept = await files.match('/');
    if (kept === undefined) throw error;
    return kept;
  }
}

async function keepIfNew(response) {
  const kept = await (await caches.open(FILES)).match('/');
  if (kept === undefined || (await kept.text()) !== (await response.clone().text()))
    await keepVersion(response);
}

/** Files of the page bear their version in their names: one that is kept is the right one. */
async function file(request) {
  const files = await caches.open(FILES);
  const kept = await files.match(request);
  if (kept !== undefined) return kept;
  const response = await fetch(request);
  if (response.ok) await files.put(request, response.clone());
  return response;
}

async function answer(request) {
  const key = await keyOf(request.clone());
  let response;
  try {
    response = await fetch(request.clone());
  } catch (error) {
    const kept = await (await caches.open(ANSWERS)).match(key);
    if (kept === undefined) throw error;
    return kept;
  }
  // Who may no longer ask may no longer read.
  if (response.status === 401) await caches.delete(ANSWERS);
  else if (response.ok) await keepAnswer(key, response.clone());
  return response;
}

async function keepAnswer(key, response) {
  const headers = new Headers(response.headers);
  headers.set(KEPT_SINCE, new Date().toISOString());
  try {
    const answers = await caches.open(ANSWERS);
    await answers.delete(key);
    await answers.put(key, new Response(await response.blob(), { status: response.status, headers }));
    const keys = await answers.keys();
    for (const old of keys.slice(0, Math.max(0, keys.length - MOST_ANSWERS))) await answers.delete(old);
  } catch {
    // The browser has no room for it: the page works, only not without its server.
  }
}

/** A cache knows addresses alone: what was asked is made part of the address. The name of a plan under way is another each time. */
async function keyOf(request) {
  if (request.method === 'GET') return request.url;
  const text = await request.text();
  const { name: _name, ...asked } = JSON.parse(text);
  const bytes = new TextEncoder().encode(JSON.stringify(asked));
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const hex = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `${request.url}?asked=${hex}`;
}
