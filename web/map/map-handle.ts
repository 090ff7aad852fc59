import 'maplibre-gl/dist/maplibre-gl.css';
import {
  type GeoJSONSource,
  type MapGeoJSONFeature,
  MapLibreMap,
  type MapMouseEvent,
  Marker,
  NavigationControl,
  type PaddingOptions,
  Popup,
  ScaleControl,
  type StyleSpecification,
  setWorkerUrl,
} from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import type { Focus } from '../state/focus.ts';
import { distanceUnit, type UnitSystem } from '../units/units.ts';
import { drawImage } from './style/mark-images.ts';
import { CHOSEN_LAYERS, chosenGap, HIT_LAYER } from './style/route-layers.ts';
import { CLUSTER_LAYERS, SUPPLY_LAYERS } from './style/supply-layers.ts';

setWorkerUrl(workerUrl);

export type LonLat = [number, number];
export type MapBounds = [LonLat, LonLat];

export interface MapEvents {
  /** The pointer is over the route near this position; null when it has left it. */
  onRoute(at: LonLat | null): void;
  /** A place of the route is chosen, as on the strip. */
  onMark(at: LonLat): void;
  onSupply(id: string): void;
  /** The reader clicked there, where no supply is. */
  onNothing(at: LonLat): void;
  /** The reader has moved the map, which shows these bounds now. */
  onMoved(bounds: MapBounds): void;
}

/** The one owner of the map object: everything the page does to the map goes through this. */
export interface MapHandle {
  setStyle(style: StyleSpecification): void;
  setUnits(units: UnitSystem): void;
  /** Moves the view to show these bounds, at once or gently. */
  show(bounds: MapBounds, how: 'at-once' | 'gently'): void;
  setChosenGap(gap: Focus['gap']): void;
  /** A pin with a label; null takes it away. */
  setHere(at: LonLat | null, label: string): void;
  /** The content is filled in afterwards, so the focus is the caller's to move. */
  openPopup(at: LonLat, content: HTMLElement): void;
  closePopup(): void;
  /** Moves the keyboard to the map itself. */
  takeFocus(): void;
  remove(): void;
}

const SIDE_PADDING_PX = 130;
const END_PADDING_PX = 48;
/** Nobody needs to see a single fuel pump across the whole screen when the route is fitted. */
const CLOSEST_FIT_ZOOM = 13;
/** How near to a mark a pointer or finger must come. */
const REACH_PX = 9;

const calm = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Makes the map in `container`. Throws when the browser has no WebGL. */
export function createMap(
  container: HTMLElement,
  style: StyleSpecification,
  bounds: MapBounds | null,
  label: string,
  events: MapEvents,
): MapHandle {
  const map = new MapLibreMap({
    container,
    style,
    ...(bounds === null || isHidden(container)
      ? {}
      : { bounds, fitBoundsOptions: { padding: paddingFor(container), maxZoom: CLOSEST_FIT_ZOOM } }),
    attributionControl: false, // the page shows its own, always open
    pitchWithRotate: false,
    touchPitch: false,
    maxPitch: 0,
    fadeDuration: calm() ? 0 : 200,
  });
  // Whoever looks at the page with a browser's tools finds the map at its element, as the tests do.
  Object.assign(container, { map });
  map.addControl(new NavigationControl({ showCompass: true }), 'top-right');
  // The north arrow is there only while north is not up; it turns the map back.
  const onTurn = () => container.classList.toggle('map-turned', Math.abs(map.getBearing()) > 0.5);
  map.on('rotate', onTurn);
  const scale = new ScaleControl({ maxWidth: 110, unit: 'metric' });
  map.addControl(scale, 'bottom-right');
  map.getCanvas().setAttribute('aria-label', label);
  map.setMissingStyleImageResolver((id) => {
    const image = drawImage(id);
    if (image === null || map.hasImage(id)) return;
    const { pixelRatio, ...pixels } = image;
    map.addImage(id, pixels, { pixelRatio });
  });
  listen(map, events);
  // Zooming by wheel carries no event of the hand that turned it, so it is noted as it comes.
  let byHand = false;
  const onHand = () => {
    byHand = true;
  };
  for (const deed of ['wheel', 'pointerdown', 'keydown'])
    container.addEventListener(deed, onHand, { capture: true, passive: true });
  map.on('moveend', () => {
    if (byHand) events.onMoved(map.getBounds().toArray() as MapBounds);
  });

  // A style can be compared with the one before, and a filter set, only once the first has loaded.
  let current = style;
  let ready = false;
  const waiting: (() => void)[] = [];
  const whenReady = (act: () => void): void => {
    if (ready) act();
    else waiting.push(act);
  };
  map.once('style.load', () => {
    ready = true;
    for (const act of waiting.splice(0)) act();
  });

  // A map that is not on show (a phone shows strip or map) has no size to fit into: it fits when it comes up.
  let toFit = isHidden(container) ? bounds : null;
  const fitTo = (target: MapBounds, animate: boolean): void => {
    toFit = isHidden(container) ? target : null;
    if (toFit !== null) return;
    byHand = false;
    map.fitBounds(target, {
      padding: paddingFor(container),
      maxZoom: CLOSEST_FIT_ZOOM,
      animate,
      duration: 600,
      linear: true,
    });
  };
  map.on('resize', () => {
    if (toFit !== null) fitTo(toFit, false);
  });

  let here: Marker | null = null;
  let popup: Popup | null = null;
  // The card is filled after it was put up: only then is it known on which side of its point there is room for it.
  const cardSize = new ResizeObserver(() => {
    if (popup === null) return;
    popup.setLngLat(popup.getLngLat());
    const off = offBounds(popup.getElement(), container);
    if (off.some((px) => px !== 0)) map.panBy(off, { animate: !calm(), duration: 300 });
  });
  return {
    setStyle: (next) =>
      whenReady(() => {
        if (next === current) return;
        current = next;
        map.setStyle(next, { diff: true });
      }),
    setUnits: (units) => scale.setUnit(distanceUnit(units) === 'km' ? 'metric' : 'imperial'),
    show: (target, how) => fitTo(target, how === 'gently' && !calm()),
    setChosenGap: (gap) =>
      whenReady(() => {
        for (const layer of CHOSEN_LAYERS) map.setFilter(layer, chosenGap(gap));
      }),
    setHere: (at, text) => {
      if (at === null) {
        here?.remove();
        here = null;
        return;
      }
      here ??= new Marker({ element: pin() }).setLngLat(at).addTo(map);
      here.setLngLat(at);
      const caption = here.getElement().querySelector('span');
      if (caption !== null) caption.textContent = text;
    },
    openPopup: (at, content) => {
      popup?.remove();
      popup = new Popup({
        closeButton: false, // the card brings its own
        closeOnClick: false,
        focusAfterOpen: false,
        maxWidth: 'min(320px, 86vw)',
        offset: 14,
        className: 'map-popup',
      })
        .setLngLat(at)
        .setDOMContent(content)
        .addTo(map);
      cardSize.disconnect();
      cardSize.observe(content);
      if (!map.getBounds().contains(at)) map.easeTo({ center: at, animate: !calm(), duration: 600 });
    },
    closePopup: () => {
      cardSize.disconnect();
      popup?.remove();
      popup = null;
    },
    takeFocus: () => map.getCanvas().focus(),
    remove: () => {
      cardSize.disconnect();
      popup?.remove();
      here?.remove();
      map.remove();
    },
  };
}

const isHidden = (container: HTMLElement): boolean =>
  container.clientWidth === 0 || container.clientHeight === 0;

/** Between a card and the map's edge. */
const CARD_EDGE_PX = 8;

/** By how much an element reaches out of another, px: [right or left, down or up]; left and top come first. */
function offBounds(inner: HTMLElement, outer: HTMLElement): [number, number] {
  const [card, frame] = [inner.getBoundingClientRect(), outer.getBoundingClientRect()];
  const off = (from: number, to: number, least: number, most: number): number =>
    from < least + CARD_EDGE_PX ? from - least - CARD_EDGE_PX : Math.max(0, to - most + CARD_EDGE_PX);
  return [
    off(card.left, card.right, frame.left, frame.right),
    off(card.top, card.bottom, frame.top, frame.bottom),
  ];
}

/** Room for names at the sides and for the legend below; less where there is little of it. */
function paddingFor(container: HTMLElement): PaddingOptions {
  const { clientWidth, clientHeight } = container;
  const across = Math.max(10, Math.min(SIDE_PADDING_PX, clientWidth * 0.19));
  const upDown = Math.max(10, Math.min(END_PADDING_PX, clientHeight * 0.12));
  const legendPx = container.parentElement?.querySelector('.map-legend')?.clientHeight ?? 0;
  const below = legendPx < clientHeight * 0.35 ? legendPx + upDown : 0;
  return { left: across, right: across, top: upDown, bottom: Math.max(upDown, below) };
}

function pin(): HTMLElement {
  const element = document.createElement('div');
  element.className = 'map-here';
  element.setAttribute('aria-hidden', 'true'); // the strip's slider says the same in words
  element.append(document.createElement('span'));
  return element;
}

function listen(map: MapLibreMap, events: MapEvents): void {
  let onRoute = false;
  const within = (event: MapMouseEvent, layers: readonly string[], reachPx: number) => {
    const { x, y } = event.point;
    const drawn = layers.filter((layer) => map.getLayer(layer) !== undefined);
    if (drawn.length === 0) return [];
    const box: [LonLat, LonLat] = [
      [x - reachPx, y - reachPx],
      [x + reachPx, y + reachPx],
    ];
    return map.queryRenderedFeatures(box, { layers: drawn });
  };
  const leave = () => {
    if (onRoute) events.onRoute(null);
    onRoute = false;
  };
  map.on('mousemove', (event) => {
    const onSupply = within(event, [...SUPPLY_LAYERS, ...CLUSTER_LAYERS], 2).length > 0;
    map.getCanvas().style.cursor = onSupply ? 'pointer' : '';
    if (within(event, [HIT_LAYER], 0).length === 0) return leave();
    onRoute = true;
    events.onRoute([event.lngLat.lng, event.lngLat.lat]);
  });
  map.on('mouseout', leave);
  map.on('click', (event) => {
    const supplies = within(event, SUPPLY_LAYERS, REACH_PX);
    const nearest = supplies
      .map((feature) => {
        const [lon, lat] = (feature.geometry as GeoJSON.Point).coordinates as LonLat;
        const at = map.project([lon, lat]);
        return {
          id: feature.properties.id as string,
          away: Math.hypot(at.x - event.point.x, at.y - event.point.y),
        };
      })
      .sort((a, b) => a.away - b.away)[0];
    if (nearest !== undefined) return events.onSupply(nearest.id);
    const [cluster] = within(event, CLUSTER_LAYERS, REACH_PX);
    if (cluster !== undefined) return void openCluster(map, cluster);
    const at: LonLat = [event.lngLat.wrap().lng, event.lngLat.lat];
    events.onNothing(at);
    if (within(event, [HIT_LAYER], 0).length > 0) events.onMark(at);
  });
}

/** Goes so near to a cluster that it falls apart. */
async function openCluster(
  map: MapLibreMap,
  { source, properties, geometry }: MapGeoJSONFeature,
): Promise<void> {
  const from = map.getSource<GeoJSONSource>(source);
  if (from === undefined || geometry.type !== 'Point') return;
  const zoom = await from.getClusterExpansionZoom(properties.cluster_id as number);
  map.easeTo({ center: geometry.coordinates as LonLat, zoom: zoom + 0.2, animate: !calm(), duration: 600 });
}
