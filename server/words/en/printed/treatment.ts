/** Words of the report of the treatment line. Figures come in as they are set. */
export const TREATMENT_WORDS = {
  germs: { bacteria: 'bacteria', viruses: 'viruses', protozoa: 'protozoa' },
  ofGerms: (germs: string, log: string) => `${germs} ${log}`,
  meetsTarget: 'meets its target',
  lacks: (all: readonly { log: string; germs: string }[]) =>
    `falls short of its target by ${all.map(({ log, germs }) => `${log} log of ${germs}`).join(', ')}`,
  head: (isOnFilling: boolean, outcome: string) =>
    `Treatment line (${isOnFilling ? 'on filling' : 'at the tap'}): ${outcome}`,
  clearWater: (logs: string, most: string, { name, logs: wanted }: { name: string; logs: string }) =>
    `Clear water: ${logs} log of at most ${most}; target ${name}: ${wanted}`,
  makesFit: (kinds: readonly string[]) =>
    `Makes fit without a note of yours: ${kinds.length === 0 ? 'no kind of source' : kinds.join(', ')}`,
  unfit: (kinds: readonly string[], reason: string) => `- not ${kinds.join(', ')}: ${reason}`,
  flowUnknown: 'flow not known',
  flow: (litres: string) => `${litres} l/min`,
  flowFrom: { measured: ' (measured)', estimate: ' (estimate)', unknown: '' },
  starves: ', starves',
  tap: (name: string, { use, flow, reaches }: { use: string; flow: string; reaches: boolean }) =>
    `Tap ${name} (${use}): ${flow}, ${reaches ? 'reaches the target' : 'short of the target'}`,
  lifeUntold: 'life not told',
  overLife: (litres: string) => `${litres} l more than it has left`,
  leftAfter: (litres: string) => `${litres} l left after it`,
  cartridge: (name: string, litres: string, left: string) =>
    `Cartridge ${name}: ${litres} l on this trip, ${left}`,
};
