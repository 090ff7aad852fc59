import type { Reason } from '../../contract/common.ts';

/** The cautions that every answer carries, whatever the route. */
export const STANDING_CAUTIONS: readonly Reason[] = [
  { code: 'planning-aid', text: 'A planning aid, not a guarantee.' },
  {
    code: 'confirm-points',
    text: 'Map data can be wrong, old or missing: confirm every point you depend on before you leave.',
  },
  { code: 'carry-reserve', text: 'Carry the reserve.' },
  {
    code: 'drink',
    text: 'Heat, illness and breakdowns multiply the need for water. Never ration drinking water.',
  },
  {
    code: 'treat-water',
    text: 'Treat doubtful water. Filters and chlorine do not remove salt or chemicals.',
  },
  {
    code: 'fuel-cans',
    text: 'Fuel cans: approved ones, not in the cabin, ventilated, within the local limits.',
  },
  { code: 'masses', text: "Mind the vehicle's permitted mass and axle loads." },
  { code: 'tell-somebody', text: 'Leave the plan with somebody.' },
  { code: 'local-law', text: 'Local law and licensed practice come first.' },
];
