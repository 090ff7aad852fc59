import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DARK, LIGHT, type Palette } from '../../../../web/map/style/palette.ts';
import { contrast, difference, VISION } from './colour-vision.ts';

const CSS = readFileSync(new URL('../../../../web/style/tokens.css', import.meta.url), 'utf8');

/** Custom properties of the first rule whose selector holds `selector`. */
function tokensOf(selector: string): Record<string, string> {
  const from = CSS.indexOf(selector);
  const body = CSS.slice(CSS.indexOf('{', from) + 1, CSS.indexOf('}', from));
  return Object.fromEntries(
    [...body.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map(([, key, hex]) => [key, hex]),
  );
}

const PALETTES: [string, Palette, string][] = [
  ['light', LIGHT, ':root {'],
  ['dark', DARK, ':root[data-theme="dark"] {'],
];

describe.each(PALETTES)('the %s palette', (_, palette, selector) => {
  test("is the page's own", () => {
    expect(tokensOf(selector)).toMatchObject(palette);
  });

  // WCAG 2.2, 1.4.11: what graphics need to be told by stands 3:1 against its neighbours.
  test.each(['fuel', 'water', 'dry', 'ink'] as const)('%s as a graphic has 3:1 against the sheet', (role) => {
    expect(contrast(palette[role], palette.sheet)).toBeGreaterThanOrEqual(3);
  });

  // WCAG 2.2, 1.4.3: text 4.5:1.
  test.each([
    ['ink', 'sheet'],
    ['ink', 'sand'],
    ['ink', 'sea'],
    ['ink', 'paper'],
    ['soft', 'sheet'],
    ['soft', 'sand'],
    ['dry', 'sheet'],
  ] as const)('text in %s has 4.5:1 on %s', (text, ground) => {
    expect(contrast(palette[text], palette[ground])).toBeGreaterThanOrEqual(4.5);
  });

  /** Ours: over eight times the difference that is just noticed (2.3, common practice for CIE 1976, from memory). */
  const APART = 20;
  test.each(Object.keys(VISION) as (keyof typeof VISION)[])('fuel, water and dry differ to %s', (vision) => {
    for (const [a, b] of [
      ['fuel', 'water'],
      ['fuel', 'dry'],
      ['water', 'dry'],
    ] as const) {
      expect(difference(palette[a], palette[b], vision), `${a} and ${b}`).toBeGreaterThan(APART);
    }
  });
});

test('the simulation leaves grey grey and makes red and green alike', () => {
  for (const vision of ['protanopia', 'deuteranopia', 'tritanopia'] as const) {
    expect(difference('#808080', '#000000', vision)).toBeCloseTo(
      difference('#808080', '#000000', 'normal'),
      1,
    );
  }
  const normal = difference('#b04040', '#5c7f3c', 'normal');
  expect(difference('#b04040', '#5c7f3c', 'deuteranopia')).toBeLessThan(normal / 2);
});
