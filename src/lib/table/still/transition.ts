/**
 * Stands in for d3-transition, which d3-zoom asks for only to stop a zoom that is being animated. The table never
 * animates its zoom, and without the real one the lesson page is some 9 KB lighter.
 */
export function interrupt(): void {}
