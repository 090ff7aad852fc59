import type { FastifyInstance } from 'fastify';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildApp } from '../../../server/http/app.ts';
import { openPage, openTab, plannedFor, type Site, settled, startSite, WIDE } from '../site.ts';

/** A server that is stopped calls its jobs off, which it would say on the terminal. */
const calledOff = (): void => {};

/** A server of its own, which goes and comes back. */
let app: FastifyInstance;
let site: Site;
beforeAll(async () => {
  app = await buildApp({ onFault: calledOff });
  const origin = await app.listen({ port: 0, host: '127.0.0.1' });
  site = { ...(await startSite()), origin };
});
afterAll(async () => {
  await site?.close();
  await app?.close();
});

async function stopServer(): Promise<void> {
  app.server.closeAllConnections();
  await app.close();
}

/** At the same address, with nothing in its memory. */
async function startAgain(): Promise<void> {
  app = await buildApp({ onFault: calledOff });
  await app.listen({ port: Number(new URL(site.origin).port), host: '127.0.0.1' });
}

const keptIn = (page: Page, name: string): Promise<string[]> =>
  page.evaluate(
    async (cache) => (await (await caches.open(cache)).keys()).map(({ url }) => new URL(url).pathname),
    name,
  );

describe('the page without its server', () => {
  it('can be put on a telephone’s screen: its manifest and its sign are there', async () => {
    const manifest = await fetch(`${site.origin}/manifest.webmanifest`);
    expect(manifest.headers.get('content-type')).toContain('application/manifest+json');
    const { icons, start_url: start } = (await manifest.json()) as {
      icons: { src: string }[];
      start_url: string;
    };
    expect(start).toBe('/');
    for (const { src } of icons) expect((await fetch(site.origin + src)).status).toBe(200);
  });

  it('opens with the last trip and its plan, says so, and sends on what was changed meanwhile', async () => {
    const { page, close } = await openPage(site, { ...WIDE, serviceWorkers: 'allow' }, { withMap: false });
    await page.evaluate(() => navigator.serviceWorker.ready);
    // Once it is kept: the first visit goes past the one that keeps.
    await page.reload();
    await plannedFor(page);
    await expect.poll(() => keptIn(page, 'drystage-answers')).toContain('/api/analyses/demo/plan');
    const answer = await page.locator('.answer').first().textContent();
    expect(await page.locator('.offline').count()).toBe(0);

    await stopServer();
    await page.reload();
    await plannedFor(page);
    expect(await page.locator('.answer').first().textContent()).toBe(answer);
    expect(await page.locator('.offline').textContent()).toContain('The server does not answer');

    await openTab(page, 'Rig');
    const holds = page.getByRole('textbox', { name: 'Holds', exact: true }).first();
    await holds.fill('150');
    await page.locator('.saving[data-saving="waiting"]').waitFor();
    expect(await page.locator('.problem').first().textContent()).toContain('The server does not answer');

    await startAgain();
    await page.getByRole('button', { name: 'Try now' }).click();
    await page.locator('.saving[data-saving="saved"]').waitFor();
    await settled(page);
    expect(await holds.inputValue()).toBe('150');
    await page.locator('.offline').waitFor({ state: 'detached' });

    // What was saved since the trip was opened is there without the server as well.
    await stopServer();
    await page.reload();
    await settled(page);
    await page.locator('.offline').waitFor();
    expect(await holds.inputValue()).toBe('150');
    await startAgain();
    await close();
  });
});
