import type { PlanReply } from '../../server/contract/whatif.ts';
import type { FormState } from '../../web/form/form-context.ts';
import type { Planned } from '../../web/state/use-plan.ts';
import type { UnitSystem } from '../../web/units/units.ts';
import { sampleReply } from './sample-reply.ts';

/** A plan that is there in full. */
export const held = (reply: PlanReply | null, more: Partial<Planned> = {}): Planned => ({
  reply,
  searching: false,
  outcome: null,
  whole: true,
  stale: false,
  slowSince: null,
  stopped: false,
  problem: null,
  onStop: () => {},
  onAgain: () => {},
  ...more,
});

/** The form around the sample, with nothing refused. */
export function formOf(units: UnitSystem, change: (form: FormState) => void = () => {}): FormState {
  const { analysis } = sampleReply();
  const said = { rig: analysis.rig, trip: analysis.trip };
  const form = { analysis, said, units, problem: null, onEdit: () => {} };
  change(form);
  return form;
}

/** A reader's text of markup, with plain spaces. */
export const textOf = (markup: string): string =>
  markup
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replaceAll('&quot;', '"')
    .replace(/[\s\u00a0]+/g, ' ')
    .replace(/ ([:.,;])/g, '$1');
