import type { SaidBy } from '../../phrases/supply.ts';

/** Who said it, as far as that is told. */
export function saidBy({ by, phone, words }: SaidBy): SaidBy {
  return {
    ...(by === undefined ? {} : { by }),
    ...(phone === undefined ? {} : { phone }),
    ...(words === undefined ? {} : { words }),
  };
}
