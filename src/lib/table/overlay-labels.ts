import type { Point } from '../geometry/types.ts';
import { OVERLAY } from '../strings/overlay.ts';
import { formatLength, type Units } from '../strings/units.ts';
import type { Label } from './labels.ts';
import type { Overlaid } from './overlay.ts';

/** What is written on pieces that are laid on the block: how wide each sliver is, and how far each sheet is off; `toScreen` takes mm of the block to px. */
export function overlayLabels(
  { parts, slivers }: Overlaid,
  toScreen: (p: Point) => Point,
  units: Units,
): readonly Label[] {
  const differing = slivers.flatMap(({ key, label, width, added }): Label[] => {
    if (!label) return [];
    const text = `${formatLength(width, units)} ${added ? OVERLAY.added : OVERLAY.taken}`;
    return [{ id: `s ${key}`, text, at: toScreen(label), tone: 'note' }];
  });
  const lying = parts.map(({ key, residual, middle }): Label => ({
    id: `o ${key}`,
    text: `${formatLength(residual, units)} off`,
    at: toScreen(middle),
    tone: residual < 0.05 ? 'right' : 'note',
    sits: 'on',
  }));
  return [...differing, ...lying];
}
