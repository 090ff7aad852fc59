/** Words of work that goes on. */
export const PROGRESS_WORDS = {
  megabytes: (count: string) => `${count} MB`,
  share: (total: string, percent: number) => ` of ${total} (${percent} %)`,
  reading: (file: string, done: string) => `reading ${file}: ${done}`,
  work: (what: string, seconds: number) => `${what}, ${seconds} s (Ctrl-C stops it)`,
};
