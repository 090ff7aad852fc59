import type { AddressInfo } from 'node:net';
import type { FastifyInstance } from 'fastify';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { buildApp } from '../../../server/http/app.ts';
import { startBrowser } from '../../helpers/browser.ts';
import { STATE_MS } from '../../helpers/patience.ts';
import { PHONE, seriousAsItIs, textOf, withoutWebGl } from '../site.ts';

const SECRET = 'a long and secret word';
let app: FastifyInstance;
let browser: Browser;
beforeAll(async () => {
  app = await buildApp({ secret: SECRET });
  await app.listen({ host: '127.0.0.1', port: 0 });
  browser = await startBrowser(inject('browser'));
});
afterAll(async () => {
  await browser?.close();
  await app?.close();
});

it('a shared server is used after its secret is given until one signs out, and a wrong one is told', async () => {
  const context = await browser.newContext(PHONE);
  await context.addInitScript(withoutWebGl);
  context.setDefaultTimeout(STATE_MS);
  const page = await context.newPage();
  await page.goto(`http://127.0.0.1:${(app.server.address() as AddressInfo).port}`);
  const dialog = page.getByRole('dialog', { name: 'Sign in' });
  await dialog.waitFor();
  expect(await seriousAsItIs(page, 'dialog')).toEqual([]);

  await dialog.getByLabel('Secret').fill('a wrong word');
  await dialog.getByRole('button', { name: 'Sign in' }).click();
  await expect
    .poll(() => textOf(dialog.getByRole('alert')))
    .toContain('Another secret than the one of this server');

  await dialog.getByLabel('Secret').fill(SECRET);
  await page.keyboard.press('Enter');
  await page.locator('.strip-place svg').first().waitFor();
  expect(await dialog.count()).toBe(0);

  await page.getByRole('button', { name: 'Trips', exact: true }).click();
  const trips = page.getByRole('dialog', { name: 'Trips' });
  await trips.getByText('This server is shared').waitFor();
  expect(await seriousAsItIs(page, 'dialog')).toEqual([]);
  await trips.getByRole('button', { name: 'Sign out' }).click();
  await dialog.waitFor();
  await expect.poll(() => page.locator('.strip-place svg').count()).toBe(0);
  expect(await context.cookies()).toEqual([]);
  await context.close();
});
