let known: boolean | null = null;

/** Whether this browser draws what a map needs; asked before the map's code, a megabyte, is fetched. */
export function hasWebGl(): boolean {
  known ??= probe();
  return known;
}

function probe(): boolean {
  // Set as text outside of a browser, a page tells nobody that there is no map.
  if (typeof document === 'undefined') return true;
  const context = document.createElement('canvas').getContext('webgl2');
  // A browser gives a page some sixteen of these: this one goes back at once.
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}
