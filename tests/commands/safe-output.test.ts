import { expect, it } from 'vitest';
import { runCommand } from '../../server/command.ts';
import { jsonLine } from '../../server/commands/json-line.ts';

/** Orders to a terminal (ESC, and CSI of C1), marks that turn the direction of reading, and ends of lines. */
const SIGNS = '\u001b[2J\u009b31m\u202e\u2066\u2028\u007f\u{e0001}';

it('JSON is the same value, with no sign in it that a terminal takes as an order', () => {
  const value = { [`key ${SIGNS}`]: [`a${SIGNS}b`, 'é 漢 "quoted" \\ \n'] };
  const line = jsonLine(value);
  expect(JSON.parse(line)).toEqual(value);
  expect(line.slice(0, -1)).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(line).toContain('é 漢');
});

it('a refusal has none either, whatever the name of the file', async () => {
  const lines: string[] = [];
  const io = { out: () => {}, err: (line: string) => void lines.push(line), terminal: false };
  const status = await runCommand(['gaps', 'x.gpx', '--supply', 'x', '--rig', `no${SIGNS}such`], io);
  const text = lines.join('');
  expect(status).toBe(2);
  expect(text).toContain('no [2J 31m');
  expect(text.slice(0, -1)).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
});
