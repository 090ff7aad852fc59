import type { MaybeCutWhy } from '../../core/phrases/readers.ts';
import type { Catalogue } from '../parts/catalogue.ts';
import { parts } from '../parts/part.ts';

const MAYBE_CUT: Readonly<Record<MaybeCutWhy, string>> = {
  'no-objects': 'es ist nichts darin',
  'no-nodes': 'es sind Linien oder Relationen darin, aber keiner der Punkte, aus denen sie bestehen',
  'no-ways': 'es sind Punkte darin, die zu Linien gehören, aber keine Linien',
  'no-relations': 'es sind Linien darin, aber keine Relationen',
  'full-block': 'der letzte Block ist voll wie einer aus der Mitte einer Datei',
};

export const READER_CAUTIONS = {
  'maybe-cut': ({ source, why }) =>
    parts`${source} ist vielleicht abgeschnitten: ${MAYBE_CUT[why]}. Deshalb deckt die Datei nichts ab: Sie zeigt Versorgungen und sagt nichts darüber, wo keine ist. Noch einmal laden und die Größen vergleichen; ist sie vollständig, in der Reise dafür einstehen (extracts: file und whole: true)`,
} satisfies Partial<Catalogue['cautions']>;
