import { runCommand } from '../../server/command.ts';
import { PLAN_SECONDS } from '../helpers/patience.ts';

/** Runs the command in this process and gathers what it writes. */
export async function runCli(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const status = await runCommand(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    terminal: false,
    planSeconds: PLAN_SECONDS,
  });
  return { status, out, err };
}
