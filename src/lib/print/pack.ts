export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/**
 * Lays boxes out on shelves no wider than the widest box or `width`, in the order given, `gap` mm apart, so that none lies
 * on another. Sizes in mm. Gives the top left corner of each and the size of the whole.
 */
export function pack(
  boxes: readonly Size[],
  width: number,
  gap: number,
): { readonly spots: readonly Spot[]; readonly whole: Size } {
  const spots: Spot[] = [];
  let [x, y, shelf, widest] = [0, 0, 0, 0];
  for (const box of boxes) {
    if (x > 0 && x + box.width > width) {
      x = 0;
      y += shelf + gap;
      shelf = 0;
    }
    spots.push({ x, y });
    widest = Math.max(widest, x + box.width);
    shelf = Math.max(shelf, box.height);
    x += box.width + gap;
  }
  return { spots, whole: { width: widest, height: y + shelf } };
}
