import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import { cutLine } from '../../../server/core/mapview/cut-line.ts';
import { routePieces } from '../../../server/core/mapview/route-pieces.ts';
import { simplifyLine } from '../../../server/core/mapview/simplify-line.ts';
import { gapOf, reportOf } from '../../app/gap-builder.ts';
import { reportInMetres } from '../../helpers/in-km.ts';

describe('pieces of the route', () => {
  const short = gapOf(10, 110, {
    verdict: 'short',
    reserveFromKm: 70,
    runsDryKm: 100,
    levels: [
      { atKm: 10, litres: 90 },
      { atKm: 110, litres: -10 },
    ],
  });
  const report = reportOf([gapOf(0, 10), short, gapOf(110, 110), gapOf(110, 120)], {
    cover: [
      { fromKm: 0, toKm: 40 },
      { fromKm: 60, toKm: 120 },
    ],
  });
  const piecesOf = () => toContract(routePieces(reportInMetres(report), 'fuel', 120_000));

  it('change state where the level falls to the reserve and to nothing', () => {
    const pieces = piecesOf();
    const statesAt = (km: number) => pieces.find((piece) => piece.fromKm <= km && km < piece.toKm)?.state;
    expect([69.9, 70.1, 99.9, 100.1].map(statesAt)).toEqual(['left', 'reserve', 'reserve', 'dry']);
  });

  it('show where no extract covers', () => {
    const bare = piecesOf().filter((piece) => piece.noCover);
    expect(bare[0]?.fromKm).toBe(40);
    expect(bare.at(-1)?.toKm).toBe(60);
    expect(bare.reduce((sum, piece) => sum + piece.toKm - piece.fromKm, 0)).toBeCloseTo(20, 9);
  });

  it('have a share within a twelfth of what is left anywhere in them', () => {
    for (const piece of piecesOf().filter(({ gap }) => gap === 1)) {
      for (const km of [piece.fromKm, piece.toKm]) {
        const litres = Math.max(0, 90 - (km - 10));
        expect(Math.abs(piece.share - litres / 100)).toBeLessThanOrEqual(1 / 24 + 1e-9);
      }
    }
  });

  it('tile the route, whatever the gaps, levels and cover are', { tags: 'slow' }, () => {
    const kms = fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(kms, kms, fc.double({ min: -50, max: 100, noNaN: true }), (edges, covers, last) => {
        const places = [0, ...edges, 500].sort((a, b) => a - b);
        const gaps = places.slice(1).map((toKm, i) =>
          gapOf(places[i]!, toKm, {
            reserveFromKm: (places[i]! + toKm) / 2,
            runsDryKm: toKm,
            levels: [
              { atKm: places[i]!, litres: 100 },
              { atKm: toKm, litres: last },
            ],
          }),
        );
        const cover = covers.map((km) => ({ fromKm: km / 2, toKm: km }));
        const tiles = routePieces(reportInMetres(reportOf(gaps, { cover })), 'water', 500_000);
        expect(tiles[0]?.fromM).toBe(0);
        expect(tiles.at(-1)?.toM).toBe(500_000);
        for (let i = 0; i + 1 < tiles.length; i += 1) expect(tiles[i]!.toM).toBe(tiles[i + 1]!.fromM);
        for (const tile of tiles) {
          expect(tile.toM).toBeGreaterThan(tile.fromM);
          expect(tile.share).toBeGreaterThanOrEqual(0);
          expect(tile.share).toBeLessThanOrEqual(1);
        }
      }),
    );
  });
});

/** A wiggling line of `count` vertices, 0.1 km apart along. */
function wiggle(count: number) {
  return {
    lon: Float64Array.from({ length: count }, (_, i) => i / 1000 + 0.02 * Math.sin(i / 40)),
    lat: Float64Array.from({ length: count }, (_, i) => -35 + 0.02 * Math.cos(i / 23)),
    atM: Float64Array.from({ length: count }, (_, i) => i * 100),
  };
}

describe('the drawn line', () => {
  it('keeps both ends and at most so many vertices', { tags: 'slow' }, () => {
    const line = simplifyLine(wiggle(20_000), 500);
    expect(line.lon.length).toBeLessThanOrEqual(500);
    expect(line.lon.length).toBeGreaterThan(400);
    expect(line.atM[0]).toBe(0);
    expect(line.atM.at(-1)).toBeCloseTo(1_999_900, 6);
  });

  it('stays near every vertex that it leaves out', () => {
    const route = wiggle(2_000);
    const line = simplifyLine(route, 400);
    let worst = 0;
    let j = 0;
    for (let i = 0; i < route.lon.length; i += 1) {
      const atM = route.atM[i]!;
      while (j + 2 < line.atM.length && line.atM[j + 1]! < atM) j += 1;
      const [ax, ay, bx, by] = [line.lon[j]!, line.lat[j]!, line.lon[j + 1]!, line.lat[j + 1]!];
      const [px, py] = [route.lon[i]!, route.lat[i]!];
      const square = (bx - ax) ** 2 + (by - ay) ** 2;
      const along = Math.min(1, Math.max(0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / square));
      worst = Math.max(worst, Math.hypot(px - ax - along * (bx - ax), py - ay - along * (by - ay)));
    }
    // 2 degrees wide: a thousandth of its extent is a pixel of a map 1,000 pixels wide.
    expect(worst).toBeLessThan(0.002);
  });

  it('keeps the turning point of an out-and-back', () => {
    const lon = Float64Array.from([0, 1, 2, 1, 0]);
    const line = simplifyLine({ lon, lat: lon.map(() => 0), atM: Float64Array.from([0, 1, 2, 3, 4]) }, 5);
    expect([...line.lon]).toEqual([0, 2, 0]);
  });

  it('is cut where asked, ends interpolated, and consecutive cuts join', () => {
    const line = simplifyLine(wiggle(2_000), 400);
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.double({ min: 0, max: 199.9, noNaN: true }), { minLength: 3, maxLength: 8 }),
        (kms) => {
          const sorted = kms.sort((a, b) => a - b);
          const cuts = sorted.slice(1).map((km, i) => cutLine(line, sorted[i]!, km));
          for (let i = 0; i + 1 < cuts.length; i += 1) expect(cuts[i]!.at(-1)).toEqual(cuts[i + 1]![0]);
          for (const cut of cuts) expect(cut.length).toBeGreaterThanOrEqual(2);
        },
      ),
    );
  });
});
