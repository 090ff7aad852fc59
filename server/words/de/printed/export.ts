import type { Commodity } from '../../../contract/common.ts';
import { ENGLISH_PRINTED, type PrintedWords } from '../../en/printed/printed.ts';
import { COMMODITY_WORDS as SHORT } from '../shared/words.ts';

const both = (commodities: readonly Commodity[]): string => commodities.map((each) => SHORT[each]).join('+');

/** Names and words of places that the view from the seat tells; files in open formats are English. */
export const EXPORT_WORDS: PrintedWords['export'] = {
  ...ENGLISH_PRINTED.export,
  stopName: (commodities, name) => `${both(commodities)} ${name}`,
  nightName: (number, name) => (name === null ? `Nacht ${number}` : `Nacht ${number} ${name}`),
  endName: (isStart, name) => name ?? (isStart ? 'Start' : 'Ende'),
  dry: (commodity) => `Ohne Plan geht ${SHORT[commodity]} hier aus.`,
  reserve: (commodity) => `Ohne Plan ist ${SHORT[commodity]} ab hier an der Reserve.`,
  noPlan: {
    none: 'Es gibt keinen Plan, der die Reserve hält. Stellen sind die bei vollen Tanks und leeren Kanistern.',
    'out-of-time':
      'In der verfügbaren Zeit wurde kein Plan gefunden: ob es einen gibt, ist nicht bekannt. Stellen sind die bei vollen Tanks und leeren Kanistern.',
  },
};
