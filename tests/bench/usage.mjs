/** Loaded before a program (`node --import`): on its end writes what it took to the file that DRYSTAGE_USAGE names. */
import { writeFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

const file = process.env.DRYSTAGE_USAGE;
if (isMainThread && file !== undefined) {
  process.on('exit', () => {
    // maxRSS is in kilobytes on Linux and macOS alike under libuv.
    const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
    writeFileSync(
      file,
      JSON.stringify({ processorMs: (userCPUTime + systemCPUTime) / 1000, peakMb: maxRSS / 1024 }),
    );
  });
}
