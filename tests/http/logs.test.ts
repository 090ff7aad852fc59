import type { FastifyInstance } from 'fastify';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LogResult } from '../../server/contract/answers/log.ts';
import { buildApp } from '../../server/http/app.ts';
import { MAX_LOG_BYTES } from '../../server/io/log-file.ts';
import { formOf } from './form.ts';

const faults: string[] = [];
let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ webFolder: '/nowhere', onFault: (text) => faults.push(text) });
});
afterAll(async () => {
  await app.close();
  expect(faults).toEqual([]);
});

const FUEL = [
  'odometer_km,litres,full',
  ...[0, 1, 2, 3, 4, 5].map((i) => `${1000 + 500 * i},${60 + i},full`),
];
const WATER = ['date,litres,people,days', ...[1, 2, 3, 4, 5].map((i) => `2026-04-0${i},${10 + i},2,1`)];
const csv = (lines: readonly string[]) => `${lines.join('\n')}\n`;
const send = (payload: string | Buffer, query = '') =>
  app.inject({
    method: 'POST',
    url: `/api/logs${query}`,
    headers: { 'content-type': 'text/csv; charset=utf-8' },
    payload,
  });
const sendForm = (parts: Parameters<typeof formOf>[0]) =>
  app.inject({ method: 'POST', url: '/api/logs', ...formOf(parts) });

describe('a log over HTTP', { tags: 'slow' }, () => {
  it('teaches fuel use, the same as text and as a file', async () => {
    const response = await send(csv(FUEL));
    expect(response.statusCode).toBe(200);
    expect(response.headers['content-type']).toMatch(/^application\/json/);
    const learned = response.json<LogResult>();
    expect(Compile(LogResult).Errors(learned)).toEqual([]);
    // 61 to 65 l over 500 km each: 12.2 to 13 l/100 km, the middle one 12.6.
    expect(learned).toMatchObject({ kind: 'fuel', source: 'log', lines: 6 });
    expect(learned.kind === 'fuel' && learned.litresPer100Km.typical).toBeCloseTo(12.6, 12);
    const file = await sendForm([{ name: 'log', file: 'C:\\logs\\fills.csv', bytes: csv(FUEL) }]);
    expect(file.statusCode).toBe(200);
    expect(file.json()).toEqual({ ...learned, source: 'fills.csv' });
  });

  it('teaches water use for the crew that is asked for', async () => {
    const learned = (await send(csv(WATER), '?people=4')).json<LogResult>();
    expect(Compile(LogResult).Errors(learned)).toEqual([]);
    // 11 to 15 l for two people and a day: 6.5 l for a person in the middle.
    expect(learned).toMatchObject({ kind: 'water', crew: { people: 4, from: 'asked' } });
    expect(learned.kind === 'water' && learned.crew.litresPerDay.typical).toBeCloseTo(26, 12);
  });

  it('names the line of a log that is wrong', async () => {
    const response = await send(csv([...FUEL.slice(0, 3), '1400,50,full']));
    expect(response.headers['content-type']).toBe('application/problem+json');
    expect(response.json()).toMatchObject({
      status: 422,
      code: 'log-invalid',
      source: 'log',
      place: 'line 4, odometer_km',
    });
  });

  it('says whether a form has a second log, or something that is none', async () => {
    const log = { name: 'log', file: 'a.csv', bytes: csv(FUEL) };
    const detail = async (...parts: Parameters<typeof formOf>[0]) =>
      (await sendForm(parts)).json<{ detail: string }>().detail;
    expect(await detail(log, log)).toContain('a second log;');
    expect(await detail(log, { ...log, name: 'more' })).toContain('a part that is not the log;');
    expect(await detail({ ...log, name: 'more' })).toContain('a part that is not the log;');
    expect(await detail({ name: 'log', text: csv(FUEL) })).toContain('a part that is not the log;');
  });

  it.each([
    ['an unknown option', () => send(csv(FUEL), '?surfaces=sand'), 400, 'request-invalid', 'surfaces'],
    ['an option twice', () => send(csv(FUEL), '?people=1&people=2'), 400, 'request-invalid', 'people'],
    ['a surface that is none', () => send(csv(FUEL), '?surface=dunes'), 400, 'request-invalid', 'surface'],
    ['people of a fuel log', () => send(csv(FUEL), '?people=2'), 422, 'log-invalid', 'people'],
    ['nothing in it', () => send(''), 422, 'empty-file', null],
    ['bytes that are no text', () => send(Buffer.from([0xff, 0xfe, 0x41])), 422, 'log-invalid', null],
    ['too many bytes', () => send('a'.repeat(MAX_LOG_BYTES + 1)), 413, 'too-large', null],
    ['far too many bytes', () => send('a'.repeat(3 * MAX_LOG_BYTES)), 413, 'too-large', null],
    [
      'another type',
      () => app.inject({ method: 'POST', url: '/api/logs', payload: { a: 1 } }),
      400,
      'request-invalid',
      'content-type',
    ],
    ['no file in the form', () => sendForm([]), 400, 'request-invalid', 'log'],
    ['text in the form', () => sendForm([{ name: 'log', text: csv(FUEL) }]), 400, 'request-invalid', 'log'],
    [
      'two files in the form',
      () =>
        sendForm([
          { name: 'log', file: 'a.csv', bytes: csv(FUEL) },
          { name: 'log', file: 'b.csv', bytes: csv(FUEL) },
        ]),
      400,
      'request-invalid',
      'log',
    ],
    [
      'a file too large in the form',
      () => sendForm([{ name: 'log', file: 'a.csv', bytes: 'a'.repeat(MAX_LOG_BYTES + 1) }]),
      413,
      'too-large',
      null,
    ],
  ] as const)('is refused with %s', async (_name, ask, status, code, place) => {
    const response = await ask();
    expect(response.json()).toMatchObject({ status, code, place });
    expect(response.statusCode).toBe(status);
  });
});
