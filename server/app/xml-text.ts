/** XML holds tabs and line ends, no other control characters below the blank, no half of a pair (XML 1.0, 2.2). */
const allowed = (sign: string): string =>
  '\t\n\r'.includes(sign) || (sign >= '\u007f' && sign <= '\u009f') ? sign : ' ';

/** Text for an element or an attribute of XML; what XML cannot hold is a blank. */
export const xmlText = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, allowed)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll('\r', '&#13;');
