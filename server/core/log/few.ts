/** The first of them in words, and how many more there are: a sentence stays one to read. */
export const few = (texts: readonly string[], most: number, between = ', '): string =>
  [...texts.slice(0, most), ...(texts.length > most ? [`${texts.length - most} more`] : [])].join(between);
