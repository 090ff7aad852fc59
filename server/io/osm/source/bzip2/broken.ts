/** Says that bytes are no bzip2, that they are damaged, or that they end too early. */
export class BrokenBzip2 extends Error {}
