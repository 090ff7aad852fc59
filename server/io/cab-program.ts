import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import type { CabProgram } from '../app/ports.ts';

const FOLDER = new URL('../../web/cab/', import.meta.url);

let program: Promise<CabProgram> | null = null;

/** The program of the cab view, bundled from its sources when a file first needs it: there may be no built page. */
export function cabProgram(): Promise<CabProgram> {
  program ??= bundled().catch((error: unknown) => {
    program = null;
    throw error;
  });
  return program;
}

async function bundled(): Promise<CabProgram> {
  const { build } = await import('esbuild');
  const textOf = async (entry: string): Promise<string> => {
    const { outputFiles } = await build({
      entryPoints: [fileURLToPath(new URL(entry, FOLDER))],
      bundle: true,
      minify: true,
      write: false,
      format: 'iife',
      platform: 'browser',
      // Telephones of 2022: what is newer in the language is put in older words.
      target: ['es2021', 'safari15.4'],
      jsx: 'automatic',
      define: { 'process.env.NODE_ENV': '"production"' },
      legalComments: 'none',
      logLevel: 'silent',
    });
    return outputFiles.map(({ text }) => text).join('');
  };
  const script = await textOf('main.tsx');
  const style = await textOf('cab.css');
  const scriptHash = `sha256-${createHash('sha256').update(script).digest('base64')}`;
  return { script, scriptHash, style };
}
