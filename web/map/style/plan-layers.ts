import type { ExpressionSpecification, SymbolLayerSpecification } from '@maplibre/maplibre-gl-style-spec';
import { markImageId } from './mark-images.ts';
import { sideAnchors } from './name-anchors.ts';
import type { Palette } from './palette.ts';
import { MAP_FONT } from './supply-layers.ts';

/** Labels keep clear of the lanes and of the lines of cans beside them, em; what must be read may stand further off. */
const BESIDE_LINES_EM = 2.2;
const FURTHER_EM = 4;

/** What a plan writes on the map, the first to be placed last: cans full beside their lines, later and first turn-back points. */
export function planMarkLayers(
  palette: Palette,
): Record<'cans' | 'turnBacks' | 'laterTurnBacks', SymbolLayerSpecification> {
  const layer = (
    id: string,
    filter: ExpressionSpecification,
    colour: string | ExpressionSpecification,
    layout: SymbolLayerSpecification['layout'],
  ): SymbolLayerSpecification => ({
    id,
    type: 'symbol',
    source: 'plan',
    filter,
    layout: {
      'text-field': ['get', 'label'],
      'text-font': MAP_FONT,
      'text-size': 13,
      'text-variable-anchor-offset': sideAnchors([BESIDE_LINES_EM], [0, 1, 7, 2, 6]),
      'text-justify': 'auto',
      ...layout,
    },
    paint: { 'text-color': colour, 'text-halo-color': palette.sheet, 'text-halo-width': 2 },
  });
  const turnBacks = (first: boolean, more: SymbolLayerSpecification['layout']) =>
    layer(
      first ? 'turn-backs' : 'turn-backs-later',
      ['==', ['get', 'what'], first ? 'turn-back' : 'turn-back-later'],
      palette.ink,
      {
        'text-optional': true,
        'icon-image': markImageId('turn', first ? 'filled' : 'hollow', palette.ink, palette.sheet),
        'icon-allow-overlap': true,
        ...more,
      },
    );
  return {
    cans: layer(
      'can-counts',
      ['==', ['get', 'what'], 'cans'],
      ['match', ['get', 'commodity'], 'fuel', palette.fuel, palette.water],
      { 'text-size': 12, 'text-variable-anchor-offset': sideAnchors([BESIDE_LINES_EM], [0, 1, 7]) },
    ),
    laterTurnBacks: turnBacks(false, {}),
    turnBacks: turnBacks(true, {
      'text-variable-anchor-offset': sideAnchors([BESIDE_LINES_EM, FURTHER_EM], [0, 1, 7, 2, 6, 3, 5, 4]),
    }),
  };
}
