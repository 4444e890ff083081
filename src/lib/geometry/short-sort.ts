/** Up to here lists count as short. */
const SHORT = 12;

/**
 * Sorts a list in place, as `list.sort(compare)` does, stable too. Nearly all lists here hold a handful of things, and for any list
 * of two or more an engine's own sort sets up more than it moves; so short ones are put in order by insertion.
 */
export function shortSort<T>(list: T[], compare: (p: T, q: T) => number): T[] {
  if (list.length > SHORT) return list.sort(compare);
  for (let i = 1; i < list.length; i++) {
    const one = list[i]!;
    let k = i;
    while (k > 0 && compare(list[k - 1]!, one) > 0) {
      list[k] = list[k - 1]!;
      k--;
    }
    if (k !== i) list[k] = one;
  }
  return list;
}
