import { type Contracted, toContract } from '../../server/app/to-contract.ts';
import type { Report as ReportTold } from '../../server/contract/analysis.ts';
import type { Report } from '../../server/core/gaps/gap.ts';
import { gapsOf } from '../../server/core/gaps/gaps-of.ts';

/** The gaps of a course as answers have them, in km. */
export const gapsInKm = (...of: Parameters<typeof gapsOf>): Contracted<ReturnType<typeof gapsOf>> =>
  toContract(gapsOf(...of));

const METRES: Record<string, string> = {
  atKm: 'atM',
  fromKm: 'fromM',
  toKm: 'toM',
  lengthKm: 'lengthM',
  wayKm: 'wayM',
  detourKm: 'detourM',
  offRouteKm: 'offRouteM',
  turnBackKm: 'turnBackM',
  reserveFromKm: 'reserveFromM',
  runsDryKm: 'runsDryM',
};

/** A report written in km, as core has it. */
export const reportInMetres = (report: ReportTold): Report => inMetres(report) as Report;

function inMetres(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inMetres);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, one]) => {
      const metres = METRES[name];
      if (metres === undefined) return [name, inMetres(one)];
      return [metres, typeof one === 'number' ? one * 1000 : inMetres(one)];
    }),
  );
}
