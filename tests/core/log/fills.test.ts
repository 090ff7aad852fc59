import { describe, expect, it } from 'vitest';
import type { FuelColumns } from '../../../server/core/log/columns.ts';
import { readColumns } from '../../../server/core/log/columns.ts';
import { readCsv } from '../../../server/core/log/csv.ts';
import { readFills } from '../../../server/core/log/fills.ts';
import { csvOf } from './learn-helpers.ts';

describe('the order of fill-ups', () => {
  const order = (...lines: string[]) => {
    const table = readCsv(csvOf('odometer_km,litres,full', ...lines));
    const { fills, newestFirst } = readFills(table, readColumns(table.header) as FuelColumns);
    return { litres: fills.map(({ litres }) => litres), newestFirst };
  };

  it('is turned round where the newest is first', () => {
    expect(order('1500,50,full', '1200,40,full', '1000,30,full')).toEqual({
      litres: [30, 40, 50],
      newestFirst: true,
    });
  });

  it('stays where the odometer stands still: nothing says which is the newest', () => {
    expect(order('1000,30,part', '1000,40,full')).toEqual({ litres: [30, 40], newestFirst: false });
  });
});
