import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { checkTripValue } from '../../server/app/input/plan-input.ts';
import { runCli } from '../cli/run-cli.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const readme = readFileSync(`${root}README.md`, 'utf8');
const developers = readFileSync(`${root}DEVELOPERS.md`, 'utf8');
const blocks = [...readme.matchAll(/```(\w*)\n([\s\S]*?)```/g)].map((match) => ({
  language: match[1]!,
  text: match[2]!.trimEnd(),
}));

describe('the README', () => {
  test('shows the rig of the worked example as it is', () => {
    const shown = blocks.find((block) => block.language === 'yaml')!;
    expect(parse(shown.text)).toEqual(parse(readFileSync(`${root}fixtures/orrimar/rig-simple.yaml`, 'utf8')));
  });

  test('shows keys of a trip that are taken as they are', () => {
    const shown = blocks.filter((block) => block.language === 'yaml')[1]!;
    const trip = checkTripValue(parse(shown.text), 'README.md', null);
    expect(trip).toMatchObject({ ok: true, value: { plan: { noneInside: true }, whatIf: { waitDays: 3 } } });
    const own = blocks.filter((block) => block.language === 'yaml')[2]!;
    expect(checkTripValue(parse(own.text), 'README.md', null)).toMatchObject({
      ok: true,
      value: { helpHours: 24, laid: [{ litres: 60 }, { by: 'others' }] },
    });
    const notes = blocks.filter((block) => block.language === 'yaml')[3]!;
    expect(checkTripValue(parse(notes.text), 'README.md', null)).toMatchObject({
      ok: true,
      value: { confirmations: [{ by: 'Ann' }], ownPoints: [{ id: 'farm' }], closed: [{ fromKm: 900 }] },
    });
  });

  test.each([
    ['gaps', 'Port Lammas'],
    ['plan', 'Carry plan:'],
  ])(
    'shows what the command %s of the worked example prints, to the letter',
    { tags: 'slow' },
    async (name, begins) => {
      const command = blocks.find((block) => block.text.includes(`-- ${name}`))!.text;
      const args = command
        .slice(command.indexOf(`-- ${name}`) + 3)
        .split(/[\s\\]+/)
        .map((word) => (word.startsWith('fixtures/') ? `${root}${word}` : word));
      const { status, out } = await runCli(...args);
      expect(status).toBe(0);
      const shown = blocks.find((block) => block.text.startsWith(begins))!.text;
      expect(out.startsWith(shown)).toBe(true);
    },
  );

  test.each([
    ['README.md', readme],
    ['DEVELOPERS.md', developers],
  ])('%s links only to files that are there', (_name, text) => {
    const links = [...text.matchAll(/\]\(([^)#]+)\)/g)].map((match) => match[1]!);
    const files = links.filter((link) => !link.startsWith('http'));
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) expect(existsSync(`${root}${file}`), file).toBe(true);
  });
});
