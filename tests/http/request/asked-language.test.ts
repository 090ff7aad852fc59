import { describe, expect, it } from 'vitest';
import { buildApp } from '../../../server/http/app.ts';
import { askedLanguage } from '../../../server/http/request/asked-language.ts';

describe('the language that is asked for', () => {
  it.each([
    [undefined, 'en'],
    ['', 'en'],
    ['de', 'de'],
    ['de-CH,de;q=0.9,en;q=0.8', 'de'],
    ['fr-FR, en;q=0.5, de;q=0.7', 'de'],
    ['en-GB,de;q=0.9', 'en'],
    ['de;q=0', 'en'],
    ['de;q=much, en;q=0.1', 'en'],
    ['*', 'en'],
    ['den', 'en'],
  ])('%s is answered in %s', (header, language) => {
    expect(askedLanguage(header)).toBe(language);
  });

  it('is that of each answer and each refusal, also of two that come at once', { tags: 'slow' }, async () => {
    const app = await buildApp();
    try {
      const ask = (language: string) =>
        app.inject({ url: '/api/demo', headers: { 'accept-language': language } });
      const [german, english] = await Promise.all([ask('de'), ask('en')]);
      const says = ({ body }: { body: string }, words: string) => body.includes(words);
      expect(says(german, 'Trinkwasser niemals rationieren')).toBe(true);
      expect(says(german, 'Never ration')).toBe(false);
      expect(says(english, 'Never ration drinking water')).toBe(true);
      expect(says(english, 'niemals')).toBe(false);
      expect(german.headers.vary).toContain('accept-language');
      // Figures too: with a comma where they are set by the server.
      expect(german.body).toMatch(/"text":"[^"]*\d,\d+ (?:km|l|Tage)/);
    } finally {
      await app.close();
    }
  });
});
