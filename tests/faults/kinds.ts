/** What a process is at when it is killed. */
export const KINDS = ['autosave', 'ingest', 'migration', 'delete'] as const;
export type Kind = (typeof KINDS)[number];
