/** Where each blob of a pbf file ends. */
export function blobEnds(file: Uint8Array): number[] {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const ends: number[] = [];
  for (let at = 0; at < file.length; ) {
    const header = file.subarray(at + 4, at + 4 + view.getUint32(at));
    // A blob's header ends with the field of its size (number 3): a tag of one byte and a varint.
    const sizeAt = header.lastIndexOf(24);
    const size = header
      .subarray(sizeAt + 1)
      .reduce((sum, byte, place) => sum + (byte & 127) * 128 ** place, 0);
    at += 4 + header.length + size;
    ends.push(at);
  }
  return ends;
}
