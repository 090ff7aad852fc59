import type { ExtractReading } from '../../../server/contract/supplies/readings.ts';
import { t } from '../../language/t.ts';
import { inLocale } from '../../units/units.ts';

const megabytes = (bytes: number): string => `${inLocale((bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0))} MB`;

/** Seconds as one says them of something that lasts: "40 s", "12 min". */
export const lastsWords = (seconds: number): string =>
  seconds < 90 ? `${Math.max(1, Math.round(seconds))} s` : t`${Math.round(seconds / 60)} min`;

/** How an extract on its way stands, and as a share of its stage where that is known. */
export function readingWords(reading: ExtractReading, now: Date): { words: string; share: number | null } {
  const { stage, doneBytes, totalBytes, objects, totalObjects, asking, perSecond, leftSeconds } = reading;
  const share = (done: number, total: number | null) =>
    total === null || total === 0 ? null : Math.min(1, done / total);
  const left = leftSeconds === null ? '' : t`, ${lastsWords(leftSeconds)} left`;
  const rate = perSecond === null ? '' : `, ${megabytes(perSecond)}/s`;
  const ofBytes = `${megabytes(doneBytes)}${totalBytes === null ? '' : t` of ${megabytes(totalBytes)}`}${rate}${left}`;
  switch (stage) {
    case 'coming':
      return { words: t`Being sent: ${ofBytes}`, share: share(doneBytes, totalBytes) };
    case 'reading':
      return { words: t`Being read: ${ofBytes}`, share: share(doneBytes, totalBytes) };
    case 'keeping':
      return {
        words: t`Being kept: ${objects}${totalObjects === null ? '' : t` of ${totalObjects}`} objects${left}`,
        share: share(objects, totalObjects),
      };
    case 'asking': {
      if (asking === null) return { words: t('Being asked for'), share: null };
      const { done, requests, waiting } = asking;
      const until = waiting === null ? 0 : (Date.parse(waiting.until) - now.getTime()) / 1_000;
      const why = waiting?.why === 'busy' ? t('The server is busy') : t('The answer broke off');
      const waits = waiting === null ? left : t`. ${why} (${waiting.detail}): again in ${lastsWords(until)}`;
      return {
        words: t`Asked: ${done} of ${requests} queries answered${waits}`,
        share: share(done, requests),
      };
    }
  }
}
