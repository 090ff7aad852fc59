import type { Commodity } from '../../server/contract/common.ts';
import type { CabFile } from '../../server/core/cab/cab-file.ts';
import type { CabState } from '../../server/core/cab/cab-state.ts';
import { COMMODITIES } from '../../server/core/quantity/commodities.ts';
import { cabWords } from '../../server/words/cab.ts';
import { nameOf } from './answer-lines.ts';
import type { Entries } from './entries.ts';

interface FailedProps {
  file: CabFile;
  state: CabState;
  failed: Entries['failed'];
  /** Says or takes back that a supply gave nothing. */
  onFailed: (commodity: Commodity, id: string) => void;
}

/** The supplies on either side of where one is, to be told that they gave nothing. */
export function Failed({ file, state, failed, onFailed }: FailedProps) {
  const what = (commodity: Commodity) => cabWords().answer.content(commodity, file.fuelKind);
  const names = new Map(
    COMMODITIES.flatMap((each) =>
      file.basis.runs[each].edges.map((edge) => [edge.id, nameOf(edge)] as const),
    ),
  );
  const open = COMMODITIES.flatMap((commodity) => {
    const side = state[commodity];
    return 'none' in side
      ? []
      : [side.from, side.to].flatMap(({ kind, id, ...edge }) =>
          kind === 'passing' && id !== null ? [{ commodity, id, name: nameOf(edge) }] : [],
        );
  });
  const told = COMMODITIES.flatMap((commodity) =>
    failed[commodity].map((id) => ({ commodity, id, name: names.get(id) ?? id })),
  );
  if (open.length === 0 && told.length === 0) return null;
  return (
    <details open={told.length > 0}>
      <summary>{cabWords().gaveNothingHead}</summary>
      {open.map(({ commodity, id, name }) => (
        <button
          key={`${commodity} ${id}`}
          type="button"
          className="wide"
          onClick={() => onFailed(commodity, id)}
        >
          {cabWords().gaveNothing(name, what(commodity))}
        </button>
      ))}
      {told.map(({ commodity, id, name }) => (
        <button
          key={`told ${commodity} ${id}`}
          type="button"
          className="wide main"
          onClick={() => onFailed(commodity, id)}
        >
          {cabWords().without(name, what(commodity))}
        </button>
      ))}
    </details>
  );
}
