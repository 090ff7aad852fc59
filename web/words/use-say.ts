import { useMemo } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { UnitSystem } from '../units/units.ts';
import { namesIn, type Say, sayIn } from './say-in-units.ts';

/** How sentences about an analysis read in the reader's units. */
export const useSay = (units: UnitSystem, analysis: Analysis): Say =>
  useMemo(() => sayIn(units, namesIn(analysis)), [units, analysis]);
