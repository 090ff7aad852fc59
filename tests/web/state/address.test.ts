import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Address, addressText, readAddress } from '../../../web/state/address.ts';
import { TABS } from '../../../web/state/tabs.ts';

const FIRST: Address = { trip: null, tab: 'gaps', view: 'strip', gap: null, supply: null };

const address: fc.Arbitrary<Address> = fc.record({
  trip: fc.option(fc.string({ minLength: 1 })),
  tab: fc.constantFrom(...TABS),
  view: fc.constantFrom('strip', 'map'),
  gap: fc.option(
    fc.record({ commodity: fc.constantFrom('fuel', 'water'), index: fc.integer({ min: 0, max: 99_999 }) }),
  ),
  supply: fc.option(fc.string({ minLength: 1 })),
});

describe('the address of the page', () => {
  it('reads back what it was written from', () => {
    fc.assert(
      fc.property(address, (one) => {
        expect(readAddress(addressText(one))).toEqual(one);
      }),
    );
  });

  it('is bare where all is as at the beginning', () => {
    expect(addressText(FIRST)).toBe('');
    expect(readAddress('')).toEqual(FIRST);
  });

  it('names trip, panel and choice in words that can be read', () => {
    const shown: Address = { ...FIRST, trip: 'a1', tab: 'carry', gap: { commodity: 'water', index: 3 } };
    expect(addressText(shown)).toBe('?trip=a1&panel=carry&gap=water-3');
  });

  it('takes what it does not know as the beginning', () => {
    expect(readAddress('?panel=secrets&gap=oil-1&view=globe&gap=fuel--3')).toEqual(FIRST);
  });
});
