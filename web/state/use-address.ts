import { useCallback, useEffect, useRef, useState } from 'react';
import { type Address, addressText, readAddress } from './address.ts';

/** Goes to another place of the page; `over` puts it in the place of the present one, so that Back does not come by it. */
export type Go = (change: Partial<Address>, over?: 'over') => void;

/** The address of the page, which names what is shown: reload, Back and a bookmark bring it back. */
export function useAddress(): [Address, Go] {
  const [address, setAddress] = useState(() => readAddress(location.search));
  const latest = useRef(address);
  useEffect(() => {
    const back = () => {
      latest.current = readAddress(location.search);
      setAddress(latest.current);
    };
    window.addEventListener('popstate', back);
    return () => window.removeEventListener('popstate', back);
  }, []);
  const go = useCallback<Go>((change, over) => {
    const next = { ...latest.current, ...change };
    const isElsewhere = addressText(next) !== addressText(latest.current);
    latest.current = next;
    setAddress(next);
    if (!isElsewhere) return;
    const path = `${location.pathname}${addressText(next)}`;
    if (over === 'over') history.replaceState(null, '', path);
    else history.pushState(null, '', path);
  }, []);
  return [address, go];
}
