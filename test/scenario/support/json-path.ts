/** Values in JSON-like data by path, e.g. `motions[1].pad.stiffness`. */
export function valueAt(data: unknown, path: string): unknown {
  return steps(path).reduce<unknown>((value, step) => (value as Record<string, unknown>)[step], data);
}

/** A deep copy with the value at the path replaced; undefined takes the key away. */
export function withValue(data: unknown, path: string, value: unknown): unknown {
  const copy = structuredClone(data);
  const all = steps(path);
  const last = all.pop() ?? '';
  const parent = all.reduce<unknown>((at, step) => (at as Record<string, unknown>)[step], copy) as Record<
    string,
    unknown
  >;
  if (value === undefined) delete parent[last];
  else parent[last] = value;
  return copy;
}

function steps(path: string): string[] {
  return path.split(/[.[\]]+/).filter((step) => step !== '');
}
