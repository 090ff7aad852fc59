import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ProtoWriter } from '../../../../fixtures/proto-writer.ts';
import { emptySpan, mayRepeat, widen, widenByAll } from '../../../../server/io/osm/pbf/find/id-span.ts';
import { BrokenBlock } from '../../../../server/io/osm/pbf/wire/broken.ts';
import { Cursor } from '../../../../server/io/osm/pbf/wire/cursor.ts';
import { isoTime } from '../../../../server/io/osm/pbf/wire/iso-time.ts';
import {
  decodeDeltas,
  decodeIntegers,
  decodeSums,
  integersAt,
  sumsAt,
} from '../../../../server/io/osm/pbf/wire/packed.ts';

/** Numbers of every length that a varint can have. */
const whole = fc.oneof(
  fc.integer({ min: -200, max: 200 }),
  fc.integer({ min: -(2 ** 31), max: 2 ** 31 }),
  fc.integer({ min: -(2 ** 44), max: 2 ** 44 }),
);

/** The one packed list of a message, and where it lies. */
function packed(values: readonly number[], signed: boolean) {
  const writer = new ProtoWriter();
  if (signed) writer.packedSigned(1, values);
  else writer.packed(1, values);
  const bytes = writer.finish();
  const cursor = new Cursor(bytes);
  cursor.tag();
  return { bytes, range: cursor.range() };
}

const sumsOf = (values: readonly number[]) => {
  let sum = 0;
  return values.map((value) => {
    sum += value;
    return sum;
  });
};

describe('numbers of a block', () => {
  it('should be read as they were written, one by one', () => {
    fc.assert(
      fc.property(whole, (value) => {
        const writer = new ProtoWriter();
        writer.integer(1, value);
        writer.signed(2, value);
        const cursor = new Cursor(writer.finish());
        expect([cursor.tag(), cursor.integer(), cursor.tag(), cursor.signed(), cursor.tag()]).toEqual([
          8,
          value,
          16,
          value,
          0,
        ]);
      }),
    );
  });

  it('should be read as they were written, in lists and at single places', () => {
    fc.assert(
      fc.property(fc.array(whole, { maxLength: 40 }), fc.infiniteStream(fc.boolean()), (values, choice) => {
        const places = values.map((_, place) => place).filter(() => choice.next().value);
        const pick = (all: readonly number[]) => places.map((place) => all[place]);

        const plain = packed(values, false);
        expect(decodeIntegers(plain.bytes, plain.range)).toEqual(values);
        expect([...integersAt(plain.bytes, plain.range, places)]).toEqual(pick(values));

        const signed = packed(values, true);
        const sums = sumsOf(values);
        const into = new Float64Array(signed.bytes.length);
        expect([...into.subarray(0, decodeDeltas(signed.bytes, signed.range, into))]).toEqual(sums);
        expect(decodeSums(signed.bytes, signed.range)).toEqual(sums);
        expect([...sumsAt(signed.bytes, signed.range, places)]).toEqual(pick(sums));
      }),
    );
  });

  it('should be refused when a list ends inside one, or too early', () => {
    const { bytes, range } = packed([1, 300, 2 ** 40], true);
    for (const cut of [1, 2, 5]) {
      const short = { start: range.start, end: range.end - cut };
      expect(() => decodeDeltas(bytes, short, new Float64Array(20))).toThrow(BrokenBlock);
      expect(() => sumsAt(bytes, short, [2])).toThrow(BrokenBlock);
      expect(() => integersAt(bytes, short, [2])).toThrow(BrokenBlock);
    }
    expect(() => sumsAt(bytes, range, [3])).toThrow(BrokenBlock);
    expect(() => integersAt(bytes, range, [3])).toThrow(BrokenBlock);
  });

  it('should be refused beyond 2^53 and beyond ten bytes', () => {
    const tooGreat = Uint8Array.from([255, 255, 255, 255, 255, 255, 255, 255, 127]);
    expect(() => new Cursor(tooGreat).integer()).toThrow('beyond 2^53');
    expect(() => new Cursor(tooGreat).signed()).toThrow('beyond 2^53');
    expect(() => new Cursor(new Uint8Array(11).fill(255)).integer()).toThrow('more than ten bytes');
    expect(() => new Cursor(Uint8Array.of(128)).integer()).toThrow('past the end');
  });
});

describe('a time', () => {
  it('should be written as Date writes it, without fractions', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8.64e12 }), (seconds) => {
        const expected = new Date(seconds * 1000).toISOString().replace('.000', '');
        expect(isoTime(seconds * 1000)).toBe(expected);
        expect(isoTime(seconds * 1000 - 1)).toBe(
          seconds === 1 ? '1970-01-01T00:00:00Z' : isoTime(seconds * 1000 - 1000),
        );
      }),
    );
  });

  it('should be left out when it is not set or absurd', () => {
    expect([0, -1000, 8.65e15, Number.NaN].map(isoTime)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe('the span of ids', () => {
  it('should be the same whether ids come one by one or at once', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -20, max: 20 }), { maxLength: 12 }), (ids) => {
        const one = emptySpan();
        for (const id of ids) widen(one, id);
        const all = emptySpan();
        widenByAll(all, Float64Array.from(ids));
        expect(all).toEqual(one);
        expect(one.count).toBe(ids.length);
        if (ids.length > 0) expect([one.least, one.greatest]).toEqual([Math.min(...ids), Math.max(...ids)]);
        expect(one.rising).toBe(ids.every((id, index) => index === 0 || id > ids[index - 1]!));
      }),
    );
  });

  it('should never let a repeated id pass unseen', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 5 })), (blocks) => {
        const spans = blocks.map((ids) => {
          const span = emptySpan();
          for (const id of ids) widen(span, id);
          return span;
        });
        const all = blocks.flat();
        if (new Set(all).size < all.length) expect(mayRepeat(spans)).toBe(true);
      }),
    );
    const rising = emptySpan();
    for (const id of [1, 2, 3]) widen(rising, id);
    const further = emptySpan();
    for (const id of [4, 9]) widen(further, id);
    expect(mayRepeat([further, emptySpan(), rising])).toBe(false);
  });
});
