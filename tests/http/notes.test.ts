import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { NotesFormat } from '../../server/contract/answers/field-notes.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { notesOf } from '../../server/core/notes/files/note-rows.ts';
import { buildApp } from '../../server/http/app.ts';
import { FULL_TRIP } from '../helpers/full-plan.ts';

let app: FastifyInstance;
beforeAll(async () => {
  app = await buildApp({ today: () => '2026-05-01' });
});
afterAll(() => app.close());

const post = (url: string, payload: object) => app.inject({ method: 'POST', url, payload });

it.each<[NotesFormat, string]>([
  ['gpx', 'application/gpx+xml; charset=utf-8'],
  ['geojson', 'application/geo+json; charset=utf-8'],
  ['csv', 'text/csv; charset=utf-8'],
])('notes go out as %s and come into an empty trip as they were', async (format, type) => {
  const file = await post('/api/notes/export', { trip: FULL_TRIP, format });
  expect([file.statusCode, file.headers['content-type']]).toEqual([200, type]);
  const reply = await post('/api/notes/import', { trip: {}, text: file.body, source: `notes.${format}` });
  expect(reply.statusCode).toBe(200);
  const { trip, ...counts } = reply.json<{ trip: TripFile }>();
  expect(notesOf(trip)).toEqual(notesOf(FULL_TRIP));
  const notes = Object.values(notesOf(FULL_TRIP)).reduce((sum, list) => sum + list.length, 0);
  expect(counts).toEqual({ added: notes, replaced: 0, others: 0 });
  const again = await post('/api/notes/import', { trip, text: file.body });
  expect(again.json()).toEqual({ trip, added: 0, replaced: 0, others: 0 });
});

it('a file that is none is refused with its name and what to do', async () => {
  const reply = await post('/api/notes/import', { trip: {}, text: 'a,b\n1,2\n', source: 'list.csv' });
  expect(reply.statusCode).toBe(422);
  expect(reply.json()).toMatchObject({
    code: 'notes-invalid',
    source: 'list.csv',
    place: 'line 2, column noteOf',
    remedy: 'Export the notes again, or correct that place.',
  });
  const format = await post('/api/notes/export', { trip: {}, format: 'pdf' });
  expect(format.json()).toMatchObject({ status: 400, code: 'request-invalid' });
});

it('the API document has an example of each request, which is taken', { tags: 'slow' }, async () => {
  interface Described {
    post: { requestBody: { content: Record<string, { example?: object }> } };
  }
  const { paths } = (await app.inject('/api/docs/json')).json<{ paths: Record<string, Described> }>();
  const example = (path: string) => paths[path]?.post.requestBody.content['application/json']?.example ?? {};
  const file = await post('/api/notes/export', example('/api/notes/export'));
  expect([file.statusCode, file.body.includes('<n:note of="confirmations"')]).toEqual([200, true]);
  const reply = await post('/api/notes/import', example('/api/notes/import'));
  expect(reply.json()).toMatchObject({ added: 1, replaced: 0, others: 0 });
});
