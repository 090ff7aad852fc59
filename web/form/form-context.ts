import { createContext, useContext } from 'react';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { ProblemDetails } from '../api/api.ts';
import { type Json, valueAt } from '../state/json-path.ts';
import { afterEdit, asJson, asRig, assumedAt, asTrip, type Said } from '../state/said.ts';
import type { UnitSystem } from '../units/units.ts';
import { withoutPaths } from '../words/field-words.ts';

/** What every field of the form needs; fields know their value by its path. */
export interface FormState {
  said: Said;
  analysis: Analysis;
  units: UnitSystem;
  problem: ProblemDetails | null;
  onEdit: (said: Said) => void;
}

export const FormContext = createContext<FormState | null>(null);

/** Which file a path is in; both have a name, so a name's path says whose. */
export type FieldPath = { in: 'rig' | 'trip'; path: string };

export const RIG: FieldPath = { in: 'rig', path: '' };
export const TRIP: FieldPath = { in: 'trip', path: '' };

/** A place below another one; `path` begins with a slash, or is empty for the place itself. */
export const below = (base: FieldPath, path: string): FieldPath => ({ ...base, path: `${base.path}${path}` });

export interface FieldValue {
  /** As the user said it; undefined where they did not. */
  said: Json | undefined;
  /** As said, or as assumed; undefined where there is neither. */
  value: Json | undefined;
  /** Why this value was assumed; null when the user said it. */
  assumed: string | null;
  /** What the server said against it. */
  refused: string | null;
  set: (value: Json | undefined) => void;
}

/** One value of the form by its path: what it is, whether it was assumed or refused, and how to change it. */
export function useField({ in: file, path }: FieldPath): FieldValue {
  const form = useForm();
  const said = asJson(form.said[file]);
  const settled = asJson(form.analysis[file]);
  const saidValue = valueAt(said, path);
  // A range said as one number: that is its typical value.
  const asRange = path.endsWith('/typical') ? valueAt(said, path.replace(/\/typical$/, '')) : undefined;
  const own = saidValue ?? (typeof asRange === 'number' ? asRange : undefined);
  const assumption = form.analysis.assumptions.find((each) => {
    const at = assumedAt(each.path);
    return at.in === file && (path === at.path || path.startsWith(`${at.path}/`));
  });
  return {
    said: own,
    value: own ?? valueAt(settled, path),
    assumed: own === undefined && assumption !== undefined ? assumption.why : null,
    refused: refusalFor(form.problem, file, path),
    set: (value) => {
      const edited = afterEdit(said, settled, path, value);
      form.onEdit(
        file === 'rig'
          ? { rig: asRig(edited), trip: form.said.trip }
          : { rig: form.said.rig, trip: asTrip(edited) },
      );
    },
  };
}

export function useForm(): FormState {
  const form = useContext(FormContext);
  if (form === null) throw new Error('a field stands outside the form');
  return form;
}

/** The server names the place as a path, perhaps after a line number; a range's refusal stands at its typical value. */
export function refusalFor(
  problem: ProblemDetails | null,
  file: 'rig' | 'trip',
  path: string,
): string | null {
  if (problem === null || problem.place === null) return null;
  if (problem.code !== `${file}-invalid` && problem.code !== 'request-invalid') return null;
  const place = /\/[\w/]*/.exec(problem.place)?.[0].replace(/^\/(rig|trip)\//, '/');
  if (place !== path && `${place}/typical` !== path) return null;
  // Beside the field its place need not be said again: "Rig, /fuel/tanks/0/litres: -5; expected …".
  const said = problem.detail.indexOf(`${place}: `);
  return withoutPaths(said < 0 ? problem.detail : problem.detail.slice(said + `${place}: `.length));
}
