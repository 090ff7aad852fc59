import type { WaterClass } from '../../../contract/common.ts';
import type { WaterUse } from '../../../contract/crew.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { gradeAfter, type WaterState, waterFilled } from './grade-after.ts';

type TreatAt = WaterUse['treatAt'];

/** What a water of a class is fit for, in words. */
const FIT: Record<WaterClass, string> = {
  drinking: 'fit to drink',
  treatable: 'fit to drink only after the treatment line',
  washing: 'fit for washing only',
  none: 'fit for nothing',
};

/** Each fill along the route, at the supplies that count, which makes the water of containers or pipes less fit. */
export function mixingOf(passings: readonly Passing[], treatAt: TreatAt): WaterUse['mixing'] {
  const rows: WaterUse['mixing'] = [];
  let state: WaterState = gradeAfter([]);
  for (const passing of passings) {
    if (passing.commodity !== 'water' || !passing.counts) continue;
    const water = waterFilled(passing.waterClass ?? 'none', treatAt);
    const after = gradeAfter([{ kind: 'fill', water }], state);
    if (after.container === state.container && after.pipes === state.pipes) continue;
    const name = passing.name ?? passing.kind;
    rows.push({
      atKm: passing.atM / 1000,
      id: passing.id,
      container: after.container,
      pipes: after.pipes,
      text: `Water from ${name} makes all that it is mixed with, and the pipes after it, ${FIT[after.container]} until they are disinfected.`,
    });
    state = after;
  }
  return rows;
}

/** Where treatment happens and what that means, for people. */
export function treatText(treatAt: TreatAt): string {
  if (treatAt === null) return 'No treatment line: only water stated fit to drink is filled in.';
  return treatAt === 'filling'
    ? 'Treated on filling: what is in the tanks is fit to drink as long as nothing untreated runs in.'
    : 'Treated at the tap: the tanks hold untreated water, and only taps after the line give drinking water.';
}
