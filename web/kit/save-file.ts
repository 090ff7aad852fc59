/** Hands the reader a file made in the page. */
export const saveFile = (name: string, type: string, text: string): void =>
  saveBlob(name, new Blob([text], { type }));

/** The same of one that the server made. */
export function saveBlob(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download has its own hold on the blob once it has begun.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A name fit for a file: "Orrimar crossing" gives "orrimar-crossing". */
export function fileName(text: string): string {
  const plain = text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return plain === '' ? 'drystage' : plain.slice(0, 60);
}
