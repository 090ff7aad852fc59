import { useId } from 'react';
import type { MassState } from '../../server/contract/vehicle.ts';
import { useSize } from '../kit/hooks/use-size.ts';
import { tx } from '../language/tx.ts';
import { formatLength, formatMass, type UnitSystem } from '../units/units.ts';
import { AxleBar } from './AxleBar.tsx';
import { numberPlaces } from './number-places.ts';
import type { Scene, Thing } from './scene.ts';

/** Height of the part below the ground: measures and the axles' bars, px. */
const BELOW_PX = 92;
const MARGIN_PX = 12;
/** A metre is drawn no larger than this, px. */
const LARGEST_PX = 92;

interface SideDrawingProps {
  scene: Scene;
  state: MassState;
  /** The largest axle load or limit of all states, so that bars compare from state to state. */
  fullScaleKg: number;
  units: UnitSystem;
  title: string;
}

/** The vehicle from the side, to scale: wheels, body, what rides in it, the centre of gravity, and the axles' loads below. */
export function SideDrawing({ scene, state, fullScaleKg, units, title }: SideDrawingProps) {
  const id = useId();
  const [place, { widthPx }] = useSize<HTMLDivElement>({ widthPx: 372, heightPx: 260 });
  const { extent, wheelbaseM, body } = scene;
  const lengthM = extent.rearM - extent.frontM;
  const pxPerM = Math.min(LARGEST_PX, (widthPx - 2 * MARGIN_PX) / lengthM);
  const groundPx = MARGIN_PX + extent.topM * pxPerM;
  const leftPx = (widthPx - lengthM * pxPerM) / 2;
  const x = (metres: number) => leftPx + (metres - extent.frontM) * pxPerM;
  const y = (metres: number) => groundPx - metres * pxPerM;
  const heightPx = groundPx + BELOW_PX;
  const drawn = scene.things.flatMap((thing) =>
    thing.place === null ? [] : [{ ...thing, place: thing.place }],
  );
  const numbers = numberPlaces(
    drawn.map(({ path, number, place: at }) => ({
      path,
      number,
      x: x(at.behindFrontAxleM),
      y: y(at.heightM),
    })),
  );
  return (
    <div className="side-drawing" ref={place}>
      <svg
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        width={widthPx}
        height={heightPx}
        role="img"
        aria-labelledby={id}
      >
        <title id={id}>{title}</title>
        <path className={body.toldInFull ? 'body' : 'body guessed'} d={outline(scene, x, y)} />
        <line className="ground" x1={0} x2={widthPx} y1={groundPx} y2={groundPx} />
        {[0, wheelbaseM].map(
          (atM) =>
            atM !== null && (
              <circle
                key={atM}
                className="wheel"
                cx={x(atM)}
                cy={y(scene.wheelRadiusM)}
                r={scene.wheelRadiusM * pxPerM}
              />
            ),
        )}
        {[...drawn]
          .sort((a, b) => b.widthM * b.tallM - a.widthM * a.tallM)
          .map((thing) => (
            <ThingBox
              key={thing.path}
              thing={thing}
              left={x(thing.place.behindFrontAxleM) - (thing.widthM * pxPerM) / 2}
              top={y(thing.place.heightM) - (thing.tallM * pxPerM) / 2}
              pxPerM={pxPerM}
            />
          ))}
        {numbers.map((one) => (
          <text key={one.path} className="number" x={one.x} y={one.y + 4}>
            {one.number}
          </text>
        ))}
        {scene.centre !== null && (
          <Centre
            x={x(scene.centre.xM)}
            y={scene.centre.heightM === null ? null : y(scene.centre.heightM)}
            groundPx={groundPx}
          />
        )}
        {wheelbaseM !== null && (
          <>
            <path
              className="measure"
              d={`M${x(0)},${groundPx + 10}H${x(wheelbaseM)}M${x(0)},${groundPx + 6}v8M${x(wheelbaseM)},${groundPx + 6}v8`}
            />
            <text className="measure-words" x={(x(0) + x(wheelbaseM)) / 2} y={groundPx + 14}>
              {formatLength(wheelbaseM, units)}
            </text>
            <AxleBar
              load={state.front}
              x={x(0)}
              top={groundPx + 26}
              fullScaleKg={fullScaleKg}
              units={units}
              words="right"
            />
            <AxleBar
              load={state.rear}
              x={x(wheelbaseM)}
              top={groundPx + 26}
              fullScaleKg={fullScaleKg}
              units={units}
              words="left"
            />
          </>
        )}
        {wheelbaseM === null && (
          <text
            className="measure-words"
            x={widthPx / 2}
            y={groundPx + 40}
          >{tx`${formatMass(state.totalKg, units)}; wheelbase not told`}</text>
        )}
      </svg>
    </div>
  );
}

/** A box of the size of its volume; a container is filled from below to its level. Fuel is square, water round, as on the map. */
function ThingBox(props: { thing: Thing; left: number; top: number; pxPerM: number }) {
  const { thing, left, top, pxPerM } = props;
  const width = thing.widthM * pxPerM;
  const height = thing.tallM * pxPerM;
  const round = { fuel: 1, water: width / 3.2, person: width / 2, pet: width / 2.6, gear: 1 }[thing.what];
  const clip = useId();
  return (
    <g className={`thing ${thing.what}`}>
      <rect className="box" x={left} y={top} width={width} height={height} rx={round} />
      {thing.full !== null && thing.full > 0 && (
        <>
          <clipPath id={clip}>
            <rect x={left} y={top} width={width} height={height} rx={round} />
          </clipPath>
          <rect
            className="level"
            clipPath={`url(#${clip})`}
            x={left}
            y={top + height * (1 - thing.full)}
            width={width}
            height={height * thing.full}
          />
        </>
      )}
    </g>
  );
}

/** The centre of gravity: a crossed ring; where only its place along the vehicle is known, a dashed upright. */
function Centre({ x, y, groundPx }: { x: number; y: number | null; groundPx: number }) {
  if (y === null) return <line className="centre unsure" x1={x} x2={x} y1={MARGIN_PX} y2={groundPx} />;
  return (
    <g className="centre">
      <circle cx={x} cy={y} r={7} />
      <path d={`M${x - 11},${y}H${x + 11}M${x},${y - 11}V${y + 11}`} />
    </g>
  );
}

/** Bonnet, screen, roof and rear as one plain line: a scheme, only its measures are told. */
function outline({ body }: Scene, x: (m: number) => number, y: (m: number) => number): string {
  const { frontM, rearM, roofM, screenM } = body;
  const bonnetM = Math.min(1.12, roofM * 0.6);
  const sillM = Math.min(0.42, body.floorM * 0.7);
  const points = [
    [frontM, sillM],
    [frontM, bonnetM - 0.1],
    [Math.max(frontM + 0.1, screenM), bonnetM],
    [Math.max(frontM + 0.2, screenM) + 0.45, roofM],
    [rearM, roofM],
    [rearM, sillM],
  ] as const;
  return `M${points.map(([atM, upM]) => `${x(atM).toFixed(1)},${y(upM).toFixed(1)}`).join('L')}Z`;
}
