import { cabWords } from '../../words/cab.ts';
import { language } from '../../words/parts/language.ts';
import type { ExportPack } from '../export/pack.ts';
import type { CabProgram } from '../ports.ts';
import { xmlText } from '../xml-text.ts';
import { cabFileOf } from './cab-file.ts';
import { papersHtml } from './papers.ts';

/**
 * One HTML file that holds all it needs: the cab view with its program and figures. It may run that program and nothing
 * else, and fetch nothing.
 */
export function takeAlongFile(pack: ExportPack, program: CabProgram): string {
  const { cab } = pack.planned;
  if (cab === undefined) throw new Error('a plan without what the cab view is reckoned from');
  const { script, scriptHash, style } = program;
  const policy = [
    "default-src 'none'",
    `script-src '${scriptHash}'`,
    "style-src 'unsafe-inline'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return [
    '<!doctype html>',
    `<html lang="${language()}">`,
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${xmlText(policy)}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${xmlText(cabWords().title(pack.route.name))}</title>`,
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    `<div id="cab"><main class="cab"><p>${xmlText(cabWords().noScript)}</p></main></div>`,
    papersHtml(pack),
    `<script type="application/json" id="cab-file">${jsonText(cabFileOf(pack, cab))}</script>`,
    `<script>${script}</script>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** JSON within HTML: no tag and no comment can begin or end in it. */
const jsonText = (value: unknown): string => JSON.stringify(value).replaceAll('<', '\\u003c');
