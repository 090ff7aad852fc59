import { killOver } from './faults.ts';
import { KINDS } from './kinds.ts';

/** npm run faults -- [TIMES] [SEED]: kills processes that write to a data folder, and looks each time whether all is well. */
const [times = '1000', seed = '1'] = process.argv.slice(2);
const started = Date.now();
let wrong = 0;
const all = await killOver({
  times: Number(times),
  seed: Number(seed),
  onKilled: ({ kind, afterMs, faults }) => {
    if (faults.length === 0) return;
    wrong += 1;
    console.log(`${kind}, killed after ${afterMs.toFixed(1)} ms: ${faults.join('; ')}`);
  },
});
for (const kind of KINDS) {
  const ofKind = all.filter((one) => one.kind === kind);
  const words = ofKind.reduce((sum, one) => sum + one.words.length, 0);
  console.log(`${kind}: killed ${ofKind.length} times, after ${words} words in all`);
}
console.log(
  `${wrong} of ${all.length} left something wrong, in ${((Date.now() - started) / 1000).toFixed(0)} s`,
);
process.exitCode = wrong === 0 ? 0 : 1;
