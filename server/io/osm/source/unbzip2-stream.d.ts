declare module 'unbzip2-stream' {
  /** A stream that takes bzip2 data by `write` and `end`, and tells of the unpacked data by events. */
  export default function unbzip2Stream(): NodeJS.ReadWriteStream;
}
