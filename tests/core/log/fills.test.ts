import { describe, expect, it } from 'vitest';
import type { FuelColumns } from '../../../server/core/log/columns.ts';
import { readColumns } from '../../../server/core/log/columns.ts';
import { readCsv } from '../../../server/core/log/csv.ts';
import { readFills } from '../../../server/core/log/fills.ts';
import { csvOf } from './learn-helpers.ts';

describe('the order of fill-ups', () => {
  const order = (...lines: string[]) => orderOf('odometer_km,litres,full', lines);
  const orderOf = (header: string, lines: readonly string[]) => {
    const table = readCsv(csvOf(header, ...lines));
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

  it('stays where the odometer was changed: it falls there without the newest being first', () => {
    const lines = ['90000,no,30,full', '400,yes,40,full', '100,yes,50,full'];
    expect(orderOf('odometer_km,odometer changed,litres,full', lines)).toEqual({
      litres: [30, 40, 50],
      newestFirst: false,
    });
  });
});
