import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import type { OwnFiles } from '../api/api.ts';
import { t } from '../language/t.ts';
import type { OwnFile, Role } from './guess-role.ts';

/** What can be sent, once its files have been read; or what is missing before that. */
export type Sendable = { ok: true; read: () => Promise<OwnFiles> } | { ok: false; lack: string };

/**
 * What is sent of the chosen files. Where there is no rig file the rig on the page goes with them, where there is no trip
 * file the trip that is kept.
 */
export function sendable(
  files: readonly OwnFile[],
  rig: RigFile | undefined,
  keptTrip: TripFile | null,
): Sendable {
  const ofRole = (role: Role) => files.filter((each) => each.role === role).map((each) => each.file);
  const [route, ...otherRoutes] = ofRole('route');
  const extracts = ofRole('extract');
  const [rigFile] = ofRole('rig');
  const [tripFile] = ofRole('trip');
  const lacking = (lack: string): Sendable => ({ ok: false, lack });
  if (route === undefined) {
    return lacking(t('No route among these files: add a GPX file, or say which one it is.'));
  }
  if (otherRoutes.length > 0) return lacking(t('More than one file is said to be the route: choose one.'));
  if (extracts.length === 0) {
    return lacking(
      t(
        'No map extract among these files: without one no supply is known. Add an extract that covers the route.',
      ),
    );
  }
  const rigText = rigFile === undefined ? rig : () => rigFile.text();
  if (rigText === undefined) return lacking(t('No rig is open: add a rig file.'));
  return {
    ok: true,
    read: async () => ({
      route,
      extracts,
      rig: typeof rigText === 'function' ? await rigText() : rigText,
      trip: tripFile === undefined ? keptTrip : await tripFile.text(),
    }),
  };
}
