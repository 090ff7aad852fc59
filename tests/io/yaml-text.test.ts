import { describe, expect, it } from 'vitest';
import { parseYaml } from '../../server/io/yaml-text.ts';

const cameOf = (text: string): string => {
  const parsed = parseYaml(text, 'rig.yaml');
  return parsed.ok ? 'read' : parsed.problem.came;
};

describe('YAML that is made to take long', () => {
  const TOO_DEEP = 'lists and groups within each other over 30 deep';
  it.each([
    ['brackets', '['.repeat(20_000) + ']'.repeat(20_000)],
    ['brackets on lines of their own', '[\n'.repeat(200) + ']\n'.repeat(200)],
    ['lists in one line', '- '.repeat(20_000)],
    ['keys in one line', '? '.repeat(20_000)],
    ['indents', Array.from({ length: 100 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n')],
  ])('by %s is refused before it is parsed, in words of ours', (_by, text) => {
    const started = performance.now();
    expect(cameOf(text)).toBe(TOO_DEEP);
    expect(performance.now() - started).toBeLessThan(1_000);
  });

  it('is read as deep as rigs and trips go, and where brackets stand in a text', () => {
    expect(cameOf(Array.from({ length: 20 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n'))).toBe(
      'read',
    );
    expect(cameOf('- [{a: [{b: [1]}]}]\n'.repeat(500))).toBe('read');
    expect(cameOf('a: "[[[[[ {{{{{"\nb: 1')).toBe('read');
  });

  it('by its size is refused; JSON may be larger', () => {
    const many = Array.from({ length: 9_000 }, (_, index) => [`key${index}`, index] as const);
    expect(cameOf(many.map(([key, value]) => `${key}: ${value}`).join('\n'))).toMatch(
      /^\d+ characters of YAML$/,
    );
    const json = JSON.stringify(Object.fromEntries(many));
    expect(json.length).toBeGreaterThan(64 * 1024);
    expect(parseYaml(json, 'x')).toMatchObject({ ok: true, value: { value: { key8999: 8999 } } });
    expect(cameOf(json.slice(0, -1))).toBe('JSON that cannot be read');
    expect(cameOf(`{"a":${'['.repeat(70_000)}`)).toContain('deep');
  });

  it('names each key once, and where it is not', () => {
    const keys = Array.from({ length: 3_000 }, (_, index) => `k${index}: 1`);
    const started = performance.now();
    expect(cameOf(keys.join('\n'))).toBe('read');
    expect(performance.now() - started).toBeLessThan(2_000);
    const parsed = parseYaml('a:\n  b: 1\n  c: 2\n  b: 3\n', 'x');
    expect(parsed).toMatchObject({
      ok: false,
      problem: { place: 'line 4, column 3', came: 'Map keys must be unique' },
    });
    expect(cameOf('a: {b: 1}\nc: {b: 2}')).toBe('read');
  });
});
