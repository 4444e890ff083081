/** Stands in for d3-interpolate in d3-zoom, which needs it only to animate a zoom. */
export function interpolateZoom(): never {
  throw new Error('the table does not animate its zoom');
}
