import type { KeptRig, RigList } from '../../server/contract/kept.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import { answerTo, request } from './api.ts';
import { json } from './kept.ts';

const pathOf = (name: string): string => `/api/rigs/${encodeURIComponent(name)}`;

/** The rigs that are kept, by name. Throws ApiProblem, as all of these do. */
export const getRigs = (signal: AbortSignal): Promise<RigList> => request('/api/rigs', { signal });

/** Keeps a rig under a name, in place of the one that has it. */
export const putRig = (name: string, rig: RigFile): Promise<KeptRig> =>
  request(pathOf(name), json('PUT', { rig }));

export const removeRig = async (name: string): Promise<void> =>
  void (await answerTo(pathOf(name), { method: 'DELETE' }));
