import type { KeptRig } from '../../contract/kept.ts';
import type { RigTable } from '../port/port.ts';
import { documentIn, type Row, readable, type SqlDatabase, textIn } from './database.ts';

export const rigOf = (row: Row): KeptRig => ({
  name: textIn(row, 'name'),
  changedAt: textIn(row, 'changed_at'),
  rig: documentIn<KeptRig['rig']>(row, []),
});

export const rigTable = (database: SqlDatabase): RigTable => ({
  all: () => readable(database.all('SELECT * FROM rigs'), rigOf),
  put: ({ name, changedAt, rig }) =>
    void database.run(
      `INSERT INTO rigs (name, changed_at, document) VALUES (?, ?, ?)
       ON CONFLICT (name) DO UPDATE SET changed_at = excluded.changed_at, document = excluded.document`,
      name,
      changedAt,
      JSON.stringify(rig),
    ),
  remove: (name) => database.run('DELETE FROM rigs WHERE name = ?', name) > 0,
});
