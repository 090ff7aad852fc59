import type { StoreDriver } from '../port/port.ts';
import { damagedIn } from '../sql/damaged.ts';
import { bytesIn } from '../sql/database.ts';
import { SqlExtractTable } from '../sql/extract-table.ts';
import { rigTable } from '../sql/rig-table.ts';
import { SqlTripTable } from '../sql/trip-table.ts';
import { GistPlaces } from './gist-places.ts';
import { PostgresLink } from './link.ts';
import { migrate } from './schema.ts';

/**
 * Keeps all in a PostgreSQL database that several servers share: nothing of it is in the process. A change is kept when
 * its method has returned. Throws InputProblem: `store-unusable`, `store-full`, `store-too-new`.
 */
export function openPostgres(url: string): StoreDriver {
  const link = new PostgresLink(url);
  try {
    migrate(link);
  } catch (error) {
    link.close();
    throw error;
  }
  return {
    trips: new SqlTripTable(link),
    rigs: rigTable(link),
    extracts: new SqlExtractTable(link, new GistPlaces(link)),
    files: {
      putPart: (extract, part, bytes) =>
        void link.run('INSERT INTO files (extract, part, bytes) VALUES (?, ?, ?)', extract, part, bytes),
      part: (extract, part) => {
        const row = link.one('SELECT bytes FROM files WHERE extract = ? AND part = ?', extract, part);
        return row === null ? null : bytesIn(row, 'bytes');
      },
    },
    transaction: (work) => link.transaction(work),
    claim: (job) => (link.claim(job) ? { release: () => link.release(job) } : null),
    damaged: () => damagedIn(link),
    close: () => link.close(),
  };
}
