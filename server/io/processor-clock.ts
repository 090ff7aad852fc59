/**
 * A clock of processor time, seconds: it does not go on while others have the processor. Node tells the time of all
 * threads together, so it goes by that or by the wall, whichever goes slower: never slower than this thread works.
 */
export function processorClock(): () => number {
  let [wallS, processorS] = [performance.now() / 1000, usedS()];
  let seconds = 0;
  return () => {
    const [wallNowS, processorNowS] = [performance.now() / 1000, usedS()];
    seconds += Math.min(wallNowS - wallS, processorNowS - processorS);
    [wallS, processorS] = [wallNowS, processorNowS];
    return seconds;
  };
}

function usedS(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}
