/**
 * A table with one entry set. Copied entry by entry, as engines take the long way when something is added to what was spread; ids (see
 * the form `id` of a command's key) are never a name that setting treats in another way.
 */
export function withEntry<T>(table: Readonly<Record<string, T>>, key: string, value: T): Record<string, T> {
  const out: Record<string, T> = {};
  for (const known in table) out[known] = table[known]!;
  out[key] = value;
  return out;
}
