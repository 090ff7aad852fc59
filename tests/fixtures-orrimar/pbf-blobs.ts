import { inflateSync } from 'node:zlib';

/** One protobuf field: its number and its bytes or varint. Enough of the format to open a file's blobs. */
function* fieldsOf(bytes: Uint8Array): Generator<{ field: number; value: Uint8Array | number }> {
  let at = 0;
  const varint = () => {
    let value = 0;
    for (let shift = 1; ; shift *= 128) {
      const byte = bytes[at++];
      if (byte === undefined) throw new Error('varint runs past the end');
      value += (byte & 127) * shift;
      if (byte < 128) return value;
    }
  };
  while (at < bytes.length) {
    const key = varint();
    if (key % 8 === 0) yield { field: key >>> 3, value: varint() };
    else if (key % 8 === 2) {
      const length = varint();
      yield { field: key >>> 3, value: bytes.subarray(at, at + length) };
      at += length;
    } else throw new Error(`wire type ${key % 8} is not used by these messages`);
  }
}

/** Type and content of each blob, inflated: equal whichever zlib wrote the file. */
export function blobsOf(file: Uint8Array): { type: string; content: Buffer }[] {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const blobs: { type: string; content: Buffer }[] = [];
  for (let at = 0; at < file.length; ) {
    const headEnd = at + 4 + view.getUint32(at);
    const head = new Map(
      [...fieldsOf(file.subarray(at + 4, headEnd))].map(({ field, value }) => [field, value]),
    );
    const size = head.get(3);
    const type = head.get(1);
    if (typeof size !== 'number' || !(type instanceof Uint8Array))
      throw new Error('a blob header without size or type');
    const blob = new Map(
      [...fieldsOf(file.subarray(headEnd, headEnd + size))].map(({ field, value }) => [field, value]),
    );
    const packed = blob.get(3);
    if (!(packed instanceof Uint8Array)) throw new Error('a blob that zlib did not write');
    blobs.push({ type: Buffer.from(type).toString(), content: inflateSync(packed) });
    at = headEnd + size;
  }
  return blobs;
}
