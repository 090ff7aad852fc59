import { useEffect, useMemo, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import type { Focus } from '../state/focus.ts';
import { formatAtKm, type UnitSystem } from '../units/units.ts';
import { FUEL_WORDS } from '../words/words.ts';
import { boundsBetween, nearestKm, positionAt, stretchWithin } from './geometry/nearest-km.ts';
import { type World, worldLand } from './geometry/world-land.ts';
import { hasWebGl } from './has-webgl.ts';
import { Legend } from './Legend.tsx';
import type { MapEvents, MapHandle } from './map-handle.ts';
import { SupplyCard } from './SupplyCard.tsx';
import { legendKeys } from './style/legend-keys.ts';
import { mapStyle } from './style/map-style.ts';
import { DARK, LIGHT } from './style/palette.ts';
import { planOnMap } from './style/plan-on-map.ts';
import { supplyFacts } from './supply-facts.ts';
import './map.css';
import { t } from '../language/t.ts';

interface Props {
  reply: AnalysisReply;
  units: UnitSystem;
  focus: Focus;
  onFocus(next: Partial<Focus>): void;
  dark: boolean;
  /** The plan to go by; null while there is none, or none is to be shown. */
  plan: PlanReply | null;
}

const NO_MAP = t(
  'The map could not be drawn: this browser gives the page no WebGL. Strip and tables show the same.',
);

/** The route from above, as two lines as wide as what is aboard; supply points, the ground, a legend. */
export function MapView({ reply, plan, units, focus, onFocus, dark }: Props) {
  const { map, analysis } = reply;
  const palette = dark ? DARK : LIGHT;
  const box = useRef<HTMLDivElement>(null);
  const [handle, setHandle] = useState<MapHandle | null>(null);
  const [canDraw] = useState(hasWebGl);
  const [trouble, setTrouble] = useState(canDraw ? null : NO_MAP);
  const world = useWorld(canDraw);
  /** True while the point to show was chosen on the map itself: its card then takes the focus. */
  const chosenHere = useRef(false);

  const onMap = useMemo(() => (plan === null ? null : planOnMap(reply, plan, units)), [reply, plan, units]);
  const style = useMemo(
    // The chosen gap is set by its own filter below, so that choosing one does not compare whole styles.
    () => mapStyle(map, palette, { world, plan: onMap, closed: analysis.trip.closed ?? [] }),
    [map, palette, world, onMap, analysis.trip.closed],
  );

  const closedCount = analysis.trip.closed?.length ?? 0;
  const keys = useMemo(() => legendKeys(map, onMap, closedCount), [map, onMap, closedCount]);

  // What the map's listeners call is always of the last rendering.
  const events = useRef<MapEvents>(null);
  events.current = {
    onRoute: (at) => onFocus({ atKm: at === null ? null : nearestKm(map.line, at[0], at[1]) }),
    onMark: (at) => {
      const km = nearestKm(map.line, at[0], at[1]);
      if (km !== null) onFocus({ atKm: km, marked: [...focus.marked.slice(-1), km] });
    },
    onSupply: (id) => {
      chosenHere.current = true;
      onFocus({ supply: id });
    },
    onNothing: ([lon, lat]) => onFocus({ supply: null, place: { lon, lat } }),
    onMoved: ([[west, south], [east, north]]) => {
      const stretch = stretchWithin(map.line, { west, south, east, north });
      if (stretch !== null) onFocus({ onShow: { ...stretch, by: 'map' } });
    },
  };

  const atStart = useRef({ style, bounds: wholeRoute(map), name: analysis.route.name });
  useEffect(() => {
    if (!canDraw) return;
    let gone = false;
    let made: MapHandle | null = null;
    import('./map-handle.ts')
      .then(({ createMap }) => {
        if (gone || box.current === null) return;
        const { style: first, bounds, name } = atStart.current;
        made = createMap(box.current, first, bounds, t`Map of ${name}`, {
          onRoute: (at) => events.current?.onRoute(at),
          onMark: (at) => events.current?.onMark(at),
          onSupply: (id) => events.current?.onSupply(id),
          onNothing: (at) => events.current?.onNothing(at),
          onMoved: (shown) => events.current?.onMoved(shown),
        });
        setHandle(made);
      })
      .catch(() => !gone && setTrouble(NO_MAP));
    return () => {
      gone = true;
      made?.remove();
      setHandle(null);
    };
  }, [canDraw]);

  useEffect(() => handle?.setStyle(style), [handle, style]);
  useEffect(() => handle?.setUnits(units), [handle, units]);

  // Another route, not the same one reckoned anew, moves the view.
  const routeKey = `${reply.id} ${map.line.coordinates.length} ${analysis.route.bbox.join(' ')}`;
  const shown = useRef(routeKey);
  useEffect(() => {
    if (handle === null || shown.current === routeKey) return;
    shown.current = routeKey;
    const bounds = wholeRoute(map);
    if (bounds !== null) handle.show(bounds, 'at-once');
  }, [handle, routeKey, map]);

  const gap = focus.gap;
  const chosen = gap === null ? undefined : analysis[gap.commodity].gaps[gap.index];
  const fromKm = chosen?.from.atKm;
  const toKm = chosen?.to.atKm;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new style (`style`) forgets the filter
  useEffect(() => handle?.setChosenGap(gap), [handle, gap, style]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only choosing moves the view, not a new analysis
  useEffect(() => {
    if (handle === null || fromKm === undefined || toKm === undefined) return;
    const bounds = boundsBetween(map.line, fromKm, toKm);
    if (bounds !== null) handle.show(bounds, 'gently');
  }, [handle, gap?.commodity, gap?.index]);

  useFollow(handle, map.line, focus.onShow);

  useEffect(() => {
    if (handle === null) return;
    const at = focus.atKm === null ? null : positionAt(map.line, focus.atKm);
    handle.setHere(at, focus.atKm === null ? '' : formatAtKm(focus.atKm, units));
  }, [handle, focus.atKm, map.line, units]);

  const facts = useMemo(
    () => (focus.supply === null ? null : supplyFacts(reply, focus.supply)),
    [reply, focus.supply],
  );
  const closeCard = () => {
    // The card goes before the map could notice: keyboards stay where they were, on the map.
    if (card?.contains(document.activeElement)) handle?.takeFocus();
    onFocus({ supply: null });
  };
  const card = usePopup(handle, facts === null ? null : facts.at, focus.supply, chosenHere);

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape closes the card wherever the focus is inside the map
    <div
      className="map"
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || focus.supply === null) return;
        event.stopPropagation();
        closeCard();
      }}
    >
      <div ref={box} className="map-canvas" />
      {trouble !== null && (
        <p className="map-trouble" role="status">
          {trouble}
        </p>
      )}
      {map.notice !== null && <p className="map-notice">{map.notice}</p>}
      <Legend fuelWord={FUEL_WORDS[analysis.rig.fuel.kind]} keys={keys} />
      <Attribution invented={map.notice !== null} world={world !== null} />
      {card !== null &&
        facts !== null &&
        createPortal(
          <SupplyCard facts={facts} used={onMap?.used ?? null} units={units} onClose={closeCard} />,
          card,
        )}
    </div>
  );
}

const wholeRoute = (map: AnalysisReply['map']) =>
  boundsBetween(map.line, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);

/** The world's outline once it is there, where a map is wanted; without it the map still shows what the extracts hold. */
function useWorld(wanted: boolean): World | null {
  const [world, setWorld] = useState<World | null>(null);
  useEffect(() => {
    if (!wanted) return;
    let gone = false;
    worldLand().then(
      (land) => !gone && setWorld(land),
      (error: unknown) => console.warn(t('The world outline is missing from the map:'), error),
    );
    return () => {
      gone = true;
    };
  }, [wanted]);
  return world;
}

/** The hand on the strip is still for so long before the map follows, ms. */
const STILL_MS = 160;

/** Brings the map to what the strip was brought near to. */
function useFollow(
  handle: MapHandle | null,
  line: AnalysisReply['map']['line'],
  onShow: Focus['onShow'],
): void {
  const now = useRef(line);
  now.current = line;
  useEffect(() => {
    if (handle === null || onShow?.by !== 'strip') return;
    const waiting = setTimeout(() => {
      const bounds = boundsBetween(now.current, onShow.fromKm, onShow.toKm);
      if (bounds !== null) handle.show(bounds, 'gently');
    }, STILL_MS);
    return () => clearTimeout(waiting);
  }, [handle, onShow]);
}

/** A popup at `at` for the point `id`; gives the element to draw its card into. */
function usePopup(
  handle: MapHandle | null,
  at: [number, number] | null,
  id: string | null,
  chosenHere: { current: boolean },
): HTMLElement | null {
  const [element, setElement] = useState<HTMLElement | null>(null);
  const lon = at?.[0];
  const lat = at?.[1];
  // biome-ignore lint/correctness/useExhaustiveDependencies: another point at the same place (`id`) opens anew
  useEffect(() => {
    if (handle === null || lon === undefined || lat === undefined) return;
    const content = document.createElement('div');
    setElement(content);
    handle.openPopup([lon, lat], content);
    return () => {
      handle.closePopup();
      setElement(null);
    };
  }, [handle, lon, lat, id]);
  useEffect(() => {
    if (element === null || !chosenHere.current) return;
    chosenHere.current = false;
    element.querySelector('button')?.focus({ preventScroll: true });
  }, [element, chosenHere]);
  return element;
}

function Attribution({ invented, world }: { invented: boolean; world: boolean }) {
  return (
    <p className="map-attribution">
      {invented ? (
        t('invented data in the form of OpenStreetMap')
      ) : (
        <a href="https://www.openstreetmap.org/copyright" target="_blank" rel="noreferrer">
          {t('© OpenStreetMap contributors (ODbL)')}
        </a>
      )}
      {world && t(', outline Natural Earth')}
    </p>
  );
}
