/**
 * The keyword `x-file` of a schema marks a value that is a file of its own, also where it comes inside a request: what is
 * wrong in it is placed from its own top, under its own name.
 */
export type FileKind = 'rig' | 'trip';
