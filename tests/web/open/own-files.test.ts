import { describe, expect, it } from 'vitest';
import type { OwnFile, Role } from '../../../web/open/guess-role.ts';
import { sendable } from '../../../web/open/own-files.ts';
import { sampleReply } from '../sample-reply.ts';

const { rig, trip } = sampleReply().said;
const chosen = (role: Role, text: string = role): OwnFile => ({
  key: text,
  role,
  file: new File([text], `${text}.txt`),
});
const lackOf = (...files: OwnFile[]) => {
  const ready = sendable(files, rig, null);
  return ready.ok ? null : ready.lack;
};

describe('what is sent of the chosen files', () => {
  it('is nothing without one route and an extract, and what is missing is said', () => {
    expect(lackOf(chosen('extract'))).toContain('No route');
    expect(lackOf(chosen('route'), chosen('route', 'other'), chosen('extract'))).toContain('More than one');
    expect(lackOf(chosen('route'))).toContain('No map extract');
    expect(lackOf(chosen('route'), chosen('extract'))).toBeNull();
    expect(sendable([chosen('route'), chosen('extract')], undefined, null)).toMatchObject({
      ok: false,
      lack: 'No rig is open: add a rig file.',
    });
  });

  it('goes with the rig of the page and the kept trip where it brings none of its own', async () => {
    const ready = sendable([chosen('route'), chosen('extract')], rig, trip);
    expect(ready.ok && (await ready.read())).toMatchObject({ rig, trip });
  });

  it('takes the texts of rig and trip files before those', async () => {
    const files = [chosen('route'), chosen('extract'), chosen('rig', 'own rig'), chosen('trip', 'own trip')];
    const ready = sendable(files, rig, trip);
    expect(ready.ok && (await ready.read())).toMatchObject({ rig: 'own rig', trip: 'own trip' });
  });
});
