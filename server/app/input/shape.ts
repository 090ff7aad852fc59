import type { FileKind } from '../../contract/file-kind.ts';

/** The part of JSON Schema that the contract is written in. */
export interface Shape {
  type?: string;
  const?: unknown;
  anyOf?: Shape[];
  properties?: Record<string, Shape>;
  required?: string[];
  additionalProperties?: boolean | Shape;
  items?: Shape | Shape[];
  minItems?: number;
  maxItems?: number;
  minimum?: number;
  exclusiveMinimum?: number;
  maximum?: number;
  minLength?: number;
  maxLength?: number;
  pattern?: string;
  /** A whole file of that kind (contract/file-kind.ts). */
  'x-file'?: FileKind;
  /** What to say of a misfit where the schema alone would say less. */
  'x-words'?: { expected: string; remedy: string };
}
