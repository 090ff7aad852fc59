import { Fragment } from 'react';
import type { FuelKind } from '../../server/contract/rig.ts';
import type { CabContact, CabSupply } from '../../server/core/cab/cab-file.ts';
import { cabWords } from '../../server/words/cab.ts';
import { offRoad, wayToDrive, wholePlaceOf } from './figures.ts';
import type { NextLine } from './places.ts';

/** What comes next on the road, stops with their telephone and hours. */
export function Next({ lines }: { lines: readonly NextLine[] }) {
  return (
    <section aria-labelledby="cab-next">
      <h2 id="cab-next">{cabWords().next}</h2>
      {lines.length === 0 ? (
        <p>{cabWords().nothingNext}</p>
      ) : (
        <dl className="next">
          {lines.map(({ atM, name, todo, contact, isStop }) => (
            <Fragment key={`${atM} ${name}`}>
              <dt>{wholePlaceOf(atM)}</dt>
              <dd>
                <b>{name}</b>
                {todo
                  .filter((words) => words !== name)
                  .map((words) => (
                    <span key={words} className="second">
                      {words}
                    </span>
                  ))}
                {isStop && <Contact contact={contact} />}
              </dd>
            </Fragment>
          ))}
        </dl>
      )}
    </section>
  );
}

function Contact({ contact }: { contact: CabContact | null }) {
  if (contact === null) return null;
  const { phone, openingHours } = contact;
  return (
    <>
      <span className="second">
        {openingHours === null ? cabWords().hoursUnknown : cabWords().hours(openingHours)}
      </span>
      {phone === null ? (
        <span className="second">{cabWords().noTelephone}</span>
      ) : (
        <a className="call" href={`tel:${phone.replaceAll(/[^+\d]/g, '')}`}>
          {cabWords().call(phone)}
        </a>
      )}
    </>
  );
}

interface OthersProps {
  supplies: readonly CabSupply[];
  atM: number;
  fuelKind: FuelKind;
}

/** Supplies beside the plan: where they are, and no more than that. */
export function Others({ supplies, atM, fuelKind }: OthersProps) {
  const { answer: words } = cabWords();
  if (supplies.length === 0) return null;
  return (
    <section aria-labelledby="cab-others">
      <h2 id="cab-others">{words.others}</h2>
      <ul>
        {supplies.map((supply) => (
          <li key={`${supply.commodity} ${supply.atM} ${supply.name}`}>
            {words.other(words.content(supply.commodity, fuelKind), supply.name, wholePlaceOf(supply.atM))}
            <span className="second">
              {supply.atM <= atM
                ? words.behind(wayToDrive(atM - supply.atM))
                : words.ahead(wayToDrive(supply.atM - atM))}
              {supply.detourM >= 50 && `, ${words.offRoad(offRoad(supply.detourM))}`},{' '}
              {words.evidence[supply.evidence]}
            </span>
          </li>
        ))}
      </ul>
      <p className="soft">{words.notReckoned}</p>
    </section>
  );
}
