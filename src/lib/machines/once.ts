/**
 * A function that works out its result once for each object it is given. For records that never change: most of those that a
 * command or a move leaves are the very same as before.
 */
export function once<K extends object, V>(make: (from: K) => V): (from: K) => V {
  const made = new WeakMap<K, V>();
  return (from) => {
    let one = made.get(from);
    if (one === undefined) made.set(from, (one = make(from)));
    return one;
  };
}
