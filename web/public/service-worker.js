/*
 * Keeps in the browser what the page needs where the server does not answer: its files, and the last answers that it got.
 * Always asks the server first; what is kept is handed out only where no answer comes, and says since when it is kept.
 */

const FILES = 'drystage-files';
const TRIPS = 'drystage-trips';
const ANSWERS = 'drystage-answers';
/** Of trips and of answers to them so many are kept, the oldest go first: an answer of a long route has some megabytes (ours). */
const MOST = { [TRIPS]: 60, [ANSWERS]: 24 };
/** Read by the page: web/api/reach.ts. */
const KEPT_SINCE = 'drystage-kept-since';

/** What the page cannot be opened without. A plan that is still searched for, events and files to take along are not kept. */
const ASKED = {
  GET: /^\/api\/(demo|trips(\/[^/]+(\/changes)?)?)$/,
  POST: /^\/api\/analyses\/[^/]+(\/plan)?$/,
};
/** A change of a trip, which is answered by the trip as it is from then on. */
const WRITTEN = /^\/api\/trips\/[^/]+(\/[a-z/]+)?$/;

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
    if (ASKED[request.method]?.test(url.pathname)) event.respondWith(answer(request));
    else if (request.method !== 'GET' && WRITTEN.test(url.pathname)) event.respondWith(written(request));
    else if (request.method === 'DELETE' && url.pathname === '/api/session') event.waitUntil(forget());
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
  const name = request.method === 'GET' ? TRIPS : ANSWERS;
  const key = await keyOf(request.clone());
  let response;
  try {
    response = await fetch(request.clone());
  } catch (error) {
    const kept = await (await caches.open(name)).match(key);
    if (kept === undefined) throw error;
    return kept;
  }
  // Who may no longer ask may no longer read.
  if (response.status === 401) await forget();
  else if (response.ok) await keep(name, key, response.clone());
  return response;
}

/** What is kept of a trip is as the last change left it, or it would be opened as it was before. */
async function written(request) {
  const response = await fetch(request);
  const isTrip = response.ok && response.headers.get('content-type')?.includes('json');
  const { id, rig } = isTrip ? await response.clone().json() : {};
  if (id !== undefined && rig !== undefined) {
    const key = new URL(`/api/trips/${encodeURIComponent(id)}`, self.location.origin).href;
    await keep(TRIPS, key, response.clone());
  }
  return response;
}

const forget = () => Promise.all([caches.delete(TRIPS), caches.delete(ANSWERS)]);

async function keep(name, key, response) {
  const headers = new Headers(response.headers);
  headers.set(KEPT_SINCE, new Date().toISOString());
  try {
    const cache = await caches.open(name);
    await cache.delete(key);
    await cache.put(key, new Response(await response.blob(), { status: 200, headers }));
    const keys = await cache.keys();
    for (const old of keys.slice(0, Math.max(0, keys.length - MOST[name]))) await cache.delete(old);
  } catch {
    // The browser has no room for it: the page works, only not without its server.
  }
}

/** A cache knows addresses alone: what was asked is made part of the address. The name of a plan under way is another each time. */
async function keyOf(request) {
  if (request.method === 'GET') return request.url;
  const text = await request.text();
  const { name: _name, ...asked } = JSON.parse(text);
  const bytes = new TextEncoder().encode(JSON.stringify(asked, inOrder));
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const hex = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `${request.url}?asked=${hex}`;
}

/** Members by name: the server may give them back in another order than they were sent. */
const inOrder = (_key, value) =>
  value === null || typeof value !== 'object' || Array.isArray(value)
    ? value
    : Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
