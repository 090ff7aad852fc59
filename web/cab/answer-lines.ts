import type { Verdict } from '../../server/contract/common.ts';
import type { CabAnswer } from '../../server/core/cab/cab-answer.ts';
import type { CabFile } from '../../server/core/cab/cab-file.ts';
import type { CabState } from '../../server/core/cab/cab-state.ts';
import type { BackState, CabSide, SideState } from '../../server/core/cab/side-state.ts';
import { worseOf } from '../../server/core/gaps/verdict.ts';
import { cabWords } from '../../server/words/cab.ts';
import {
  hoursAtMost,
  litresAtLeast,
  litresAtMost,
  placeBefore,
  tenthsAtLeast,
  wayFree,
  wayToDrive,
  wholePlaceOf,
} from './figures.ts';

const words = () => cabWords().answer;

/** One way out, as it is read. */
export interface WayLines {
  readonly head: string;
  readonly verdict: Verdict;
  readonly lines: readonly string[];
}

/** An answer as it is read from the seat. */
export interface AnswerLines {
  readonly answer: CabAnswer;
  readonly head: string;
  readonly todo: readonly string[];
  readonly help: readonly string[];
  /** Null where nothing is read. */
  readonly on: WayLines | null;
  readonly back: WayLines | null;
  readonly rests: readonly string[];
}

type Facts = Pick<CabFile, 'fuelKind' | 'helpHours'> & {
  readonly basis: Pick<CabFile['basis'], 'kind' | 'waterLPerDay'>;
};

/** A state in words; figures rounded to the side that one can rely on. */
export function answerLines(file: Facts, state: CabState, atM: number): AnswerLines {
  const { answer } = state;
  const known = [state.fuel, state.water].filter(isKnown);
  return {
    answer,
    head: words().heads[answer],
    todo: [...known.flatMap((side) => missingLine(file, side)), words().todo[answer]],
    help: answer === 'none' || answer === 'reserve' ? helpLines(file, state) : [],
    on: known.length === 0 ? null : onLines(file, state, atM),
    back: known.length === 0 ? null : backLines(file, known, atM),
    rests: known.length === 0 ? [] : restLines(file, known),
  };
}

const isKnown = (side: CabSide): side is SideState => !('none' in side);

export const nameOf = ({ name }: { readonly name: unknown }): string =>
  typeof name === 'string' ? name : '';

/** What keeps one from going on. */
function missingLine({ fuelKind }: Facts, { commodity, on }: SideState): string[] {
  if (on.verdict === 'enough' || on.verdict === 'unknown') return [];
  return [capitalised(words().missing(words().content(commodity, fuelKind), litresAtMost(-on.marginL)))];
}

const capitalised = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function helpLines({ helpHours, basis }: Facts, { water }: CabState): string[] {
  return [
    ...('none' in water ? [] : [words().waterLasts(tenthsAtLeast(water.litres / basis.waterLPerDay))]),
    helpHours === null ? words().helpUnknown : words().help(hoursAtMost(helpHours)),
    words().neverRation,
  ];
}

function onLines(file: Facts, { fuel, water }: CabState, atM: number): WayLines {
  const sides = [fuel, water];
  const verdict = sides.reduce<Verdict>(
    (worst, side) => worseOf(worst, isKnown(side) ? side.on.verdict : 'unknown'),
    'enough',
  );
  return {
    head: words().onHeads[verdict],
    verdict,
    lines: sides.map((side) =>
      capitalised(isKnown(side) ? onLine(file, side, atM) : unknownLine(file, side)),
    ),
  };
}

function unknownLine({ fuelKind }: Facts, side: Exclude<CabSide, SideState>): string {
  const what = words().content(side.commodity, fuelKind);
  return side.none === 'unread' ? words().unread(what) : words().beyondPlan(what);
}

function onLine(file: Facts, side: SideState, atM: number): string {
  const { on, to, commodity } = side;
  const place = {
    what: words().content(commodity, file.fuelKind),
    name: nameOf(to),
    km: wayToDrive(Math.max(0, to.atM - atM) + to.detourM),
  };
  switch (on.verdict) {
    case 'enough':
      return words().enough(place, litresAtLeast(on.marginL), lasting(file, side));
    case 'into-reserve':
      return words().intoReserve(place, litresAtMost(-on.marginL), litresAtLeast(on.arriveL));
    case 'short':
      return words().short(
        place,
        litresAtMost(-on.marginL),
        on.runsDryM === null ? null : placeBefore(on.runsDryM),
      );
    case 'unknown':
      return words().unknown(place, words().why[on.unknownBy ?? 'no-map']);
  }
}

/** How far, or how long, what is over the reserve goes at the rate of the stretch. */
function lasting({ basis }: Facts, { commodity, on, useLPerM }: SideState): string | null {
  if (commodity === 'water') return words().forDays(tenthsAtLeast(on.marginL / basis.waterLPerDay));
  return useLPerM === null ? null : wayFree(on.marginL / useLPerM);
}

function backLines(file: Facts, sides: readonly SideState[], atM: number): WayLines {
  const backs = sides.map(({ back }) => back);
  const verdict = backs.reduce<Verdict>((worst, back) => worseOf(worst, back?.verdict ?? 'short'), 'enough');
  return {
    head: backHead(verdict, backs, sides, atM),
    verdict,
    lines: sides.flatMap((side) => backLine(file, side, atM)).map(capitalised),
  };
}

function backHead(
  verdict: Verdict,
  backs: readonly (BackState | null)[],
  sides: readonly SideState[],
  atM: number,
): string {
  if (backs.some((back) => back === null)) return words().noWayBack;
  if (verdict !== 'enough') return words().backHeads[verdict];
  const ends = sides.flatMap(({ back, to }) =>
    back?.untilM == null || back.untilM >= to.atM ? [] : [back.untilM],
  );
  return ends.length === 0 ? words().backHeads.enough : words().backFor(wayFree(Math.min(...ends) - atM));
}

function backLine(file: Facts, { commodity, back, from, to }: SideState, atM: number): string[] {
  const what = words().content(commodity, file.fuelKind);
  if (back === null) return [words().noBack(what)];
  const place = { what, name: nameOf(from), km: wayToDrive(Math.max(0, atM - from.atM) + from.detourM) };
  switch (back.verdict) {
    case 'enough':
      return [
        words().enough(place, litresAtLeast(back.marginL), null),
        ...(back.untilM === null || back.untilM >= to.atM
          ? []
          : [words().until(placeBefore(back.untilM), nameOf(from))]),
      ];
    case 'into-reserve':
      return [words().intoReserve(place, litresAtMost(-back.marginL), litresAtLeast(back.arriveL))];
    case 'short':
      return [words().short(place, litresAtMost(-back.marginL), null)];
    case 'unknown':
      return [words().unknown(place, words().why[back.unknownBy ?? 'no-map'])];
  }
}

/** What must be so for the answer to hold. */
function restLines({ fuelKind, basis }: Facts, sides: readonly SideState[]): string[] {
  return [
    ...sides.flatMap(({ commodity, to }) =>
      to.kind !== 'passing'
        ? []
        : [
            words().restsOn(
              { what: words().content(commodity, fuelKind), name: nameOf(to), km: wholePlaceOf(to.atM) },
              to.evidence === null ? null : words().evidence[to.evidence],
            ),
          ],
    ),
    basis.kind === 'plan' ? words().restsOnPlan : words().restsOnGaps,
    ...(sides.some(({ sharesGrades }) => sharesGrades) ? [words().grades] : []),
  ];
}
