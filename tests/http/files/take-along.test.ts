import { describe, expect, it } from 'vitest';
import { readPdf } from '../../app/sheet/pdf/read-pdf.ts';
import { demoApp } from './demo-app.ts';

const server = demoApp('2026-05-01');

const file = (format: string, payload: object, id = 'demo') =>
  server.app.inject({ method: 'POST', url: `/api/analyses/${id}/files/${format}`, payload });

describe('files to take along over HTTP', { tags: 'slow' }, () => {
  it('are whole, of their type, and to be saved', async () => {
    const { rig, trip } = server.demo.analysis;
    const page = await file('html', { rig, trip });
    expect(page.statusCode).toBe(200);
    expect(page.headers).toMatchObject({
      'content-type': 'text/html; charset=utf-8',
      'content-disposition': 'attachment; filename="drystage.html"',
    });
    expect(page.body.startsWith('<!doctype html>')).toBe(true);
    expect(page.body.trimEnd().endsWith('</html>')).toBe(true);
    expect(page.body).toContain('invented');
    const gpx = await file('gpx', { rig, trip });
    expect(gpx.headers['content-type']).toBe('application/gpx+xml; charset=utf-8');
    expect(gpx.body).toContain('</gpx>');
    const pdf = await file('pdf?paper=letter', { rig, trip });
    expect(pdf.headers['content-type']).toBe('application/pdf');
    expect((await readPdf(pdf.rawPayload)).map(({ widthPt }) => widthPt)).toContain(612);
  });

  it('are refused in words', async () => {
    const { rig, trip } = server.demo.analysis;
    const { departure: _, ...undated } = trip;
    const refusals = [
      [await file('docx', { rig, trip }), 'format: '],
      [await file('html', { trip }), 'rig'],
      [await file('ics', { rig, trip: undated }), 'a trip without a day of departure'],
      [await file('html', { rig, trip }, 'none'), 'Send the files again'],
    ] as const;
    for (const [response, words] of refusals) {
      expect(response.statusCode).toBeGreaterThanOrEqual(400);
      expect(response.statusCode).toBeLessThan(500);
      expect(response.headers['content-type']).toContain('application/problem+json');
      expect(response.body).toContain(words);
    }
  });
});
