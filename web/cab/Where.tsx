import { useState } from 'react';
import type { CabFile } from '../../server/core/cab/cab-file.ts';
import { type PlacesNear, placesNear } from '../../server/core/cab/places-near.ts';
import { type CabWords, cabWords } from '../../server/words/cab.ts';
import { placeWord } from '../../server/words/parts/reader-figures.ts';
import type { KeptEntries } from './entries.ts';
import { metresOf, offRoad, placeFigure, placeOf, wholeFigure } from './figures.ts';
import { Step } from './Step.tsx';

interface WhereProps extends Pick<KeptEntries, 'entries' | 'change'> {
  file: CabFile;
  /** Told when a position fits no place of the route, and when one does again. */
  onLost: (isLost: boolean) => void;
  isOpen: boolean;
  onOpen: () => void;
}

/** What came of asking for a position: places to choose from, or why there are none. */
type Found = PlacesNear | { readonly kind: 'finding' | keyof CabWords['position'] } | null;

const KM_STEPS = [
  { label: '1', step: 1 },
  { label: '10', step: 10 },
];

/** Where one is: the kilometre by hand, or from the telephone's position. */
export function Where({ file, entries, change, onLost, isOpen, onOpen }: WhereProps) {
  const [found, setFound] = useState<Found>(null);
  const moveTo = (atM: number, offM: number | null) => {
    setFound(null);
    onLost(false);
    change({ atM: Math.min(file.lengthM, Math.max(0, atM)), offM, left: false });
  };
  const take = (next: Found) => {
    setFound(next);
    onLost(next?.kind === 'far');
    if (next?.kind === 'found' && next.places.length === 1) moveTo(next.places[0].atM, next.places[0].offM);
  };
  return (
    <section aria-label={cabWords().iAmAt} className="where">
      <div className="where-row">
        <button type="button" className="km" aria-expanded={isOpen} onClick={onOpen}>
          <span className="soft">{cabWords().iAmAt}</span>
          <b>{placeOf(entries.atM)}</b>
          <span className="soft">
            {entries.offM === null ? cabWords().fromHand : cabWords().fromPosition(offRoad(entries.offM))}
          </span>
        </button>
        <button type="button" onClick={() => askPosition(file, entries.atM, take)}>
          {cabWords().findMe}
        </button>
      </div>
      {isOpen && (
        <section className="steps" aria-label={cabWords().change}>
          <KmField atM={entries.atM} lengthM={file.lengthM} onMove={(atM) => moveTo(atM, null)} />
          <Step
            what={cabWords().kmLabel}
            by={KM_STEPS}
            onStep={(step) => moveTo(metresOf(wholeFigure(entries.atM) + step), null)}
          />
          <button type="button" className="wide main" onClick={onOpen}>
            {cabWords().done}
          </button>
        </section>
      )}
      <div role="status">
        <FoundWords found={found} onChoose={moveTo} />
      </div>
    </section>
  );
}

interface KmFieldProps {
  atM: number;
  lengthM: number;
  onMove: (atM: number) => void;
}

/** The kilometre, large; what is typed holds when it is a number. */
function KmField({ atM, lengthM, onMove }: KmFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const take = (text: string) => {
    setTyped(text);
    const km = Number(text.replace(',', '.'));
    if (text.trim() !== '' && Number.isFinite(km) && km >= 0) onMove(metresOf(km));
  };
  return (
    <p className="km-field">
      <span aria-hidden="true">{placeWord()}</span>
      <input
        id="cab-km"
        inputMode="decimal"
        autoComplete="off"
        aria-label={cabWords().kmLabel}
        value={typed ?? placeFigure(atM)}
        onChange={({ target }) => take(target.value)}
        onFocus={({ target }) => target.select()}
        onBlur={() => setTyped(null)}
      />
      <span className="soft">{cabWords().ofLength(placeFigure(lengthM))}</span>
    </p>
  );
}

interface FoundWordsProps {
  found: Found;
  onChoose: (atM: number, offM: number) => void;
}

function FoundWords({ found, onChoose }: FoundWordsProps) {
  if (found === null) return null;
  switch (found.kind) {
    case 'finding':
      return <p>{cabWords().finding}</p>;
    case 'missing':
    case 'refused':
    case 'failed':
      return <p>{cabWords().position[found.kind]}</p>;
    case 'far':
      return <p className="trouble">{cabWords().far(offRoad(found.offM))}</p>;
    case 'rough':
      return <p>{cabWords().rough(offRoad(found.accuracyM))}</p>;
    case 'found':
      return (
        <>
          <p>{cabWords().several}</p>
          {found.places.map(({ atM, offM }) => (
            <button key={atM} type="button" className="wide" onClick={() => onChoose(atM, offM)}>
              {cabWords().place(placeOf(atM), offRoad(offM))}
            </button>
          ))}
        </>
      );
  }
}

/** Asks the telephone once; opened as a file many have no position to give. */
function askPosition({ sketch }: CabFile, lastM: number, take: (found: Found) => void): void {
  if (!('geolocation' in navigator)) {
    take({ kind: 'missing' });
    return;
  }
  take({ kind: 'finding' });
  navigator.geolocation.getCurrentPosition(
    ({ coords }) =>
      take(
        placesNear(
          sketch,
          { lon: coords.longitude, lat: coords.latitude, accuracyM: coords.accuracy },
          lastM,
        ),
      ),
    ({ code, PERMISSION_DENIED }) => take({ kind: code === PERMISSION_DENIED ? 'refused' : 'failed' }),
    { enableHighAccuracy: true, timeout: 30_000, maximumAge: 0 },
  );
}
