/** What a process is at when it is killed. */
export const KINDS = ['autosave', 'ingest', 'migration', 'delete', 'backup'] as const;
export type Kind = (typeof KINDS)[number];

/** Ends the names of backups that are made. */
export const BACKUP = '.backup';
