import { runCommand } from './command.ts';

/** The command line: arguments and streams from the process, the exit status into it. cli.mjs starts it. */
export async function main(process: NodeJS.Process): Promise<void> {
  // A reader that has seen enough (head, less) closes the pipe: that is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
  try {
    process.exitCode = await runCommand(process.argv.slice(2), {
      out: (text) => void process.stdout.write(text),
      err: (text) => void process.stderr.write(text),
      terminal: process.stderr.isTTY === true,
    });
  } catch (error) {
    process.stderr.write(
      `the program is at fault: ${error instanceof Error ? error.stack : String(error)}\n`,
    );
    process.exitCode = 1;
  }
}
