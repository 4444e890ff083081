import { paper } from '../support/paper.ts';
import type { Chain } from '../../src/lib/geometry/types.ts';

export interface PrintedPath {
  readonly piece: string;
  readonly line: string;
  readonly d: string;
}

/** What a reader of the SVG text sees, found by its own plain search and not by the code that wrote it. */
export function readSheet(svg: string) {
  const paths: PrintedPath[] = [
    ...svg.matchAll(/<path data-piece="([^"]*)" data-line="([^"]*)"[^>]* d="([^"]*)"\/>/g),
  ].map(([, piece, line, d]) => ({ piece: piece!, line: line!, d: d! }));
  const squares = [
    ...svg.matchAll(
      /<rect data-test-square="([^"]*)" x="([^"]*)" y="([^"]*)" width="([^"]*)" height="([^"]*)"/g,
    ),
  ].map(([, name, x, y, width, height]) => ({
    name: name!,
    ...{ x: Number(x), y: Number(y), width: Number(width), height: Number(height) },
  }));
  const texts = [
    ...svg.matchAll(/<text x="([^"]*)" y="([^"]*)" font-size="([^"]*)"[^>]*>([^<]*)<\/text>/g),
  ].map(([, x, y, size, words]) => ({ x: Number(x), y: Number(y), size: Number(size), words: words! }));
  const [, width, height] = /<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
  const [, viewBox] = /<svg[^>]* viewBox="([^"]*)"/.exec(svg) ?? [];
  return { paths, squares, texts, width: Number(width), height: Number(height), viewBox };
}

/** A path's own data, measured by paper.js. */
export const measured = (d: string) => new paper.CompoundPath(d);

/** A chain of the project as a path of paper.js. */
export function asPath(chain: Chain) {
  const path = new paper.Path();
  path.moveTo(new paper.Point(chain[0]!.a.x, chain[0]!.a.y));
  for (const s of chain) {
    const end = new paper.Point(s.d.x, s.d.y);
    if (s.kind === 'line') path.lineTo(end);
    else path.cubicCurveTo(new paper.Point(s.b.x, s.b.y), new paper.Point(s.c.x, s.c.y), end);
  }
  return path;
}

/** Whether tags open and close in pairs and attributes hold no bare sign of markup, which is what an XML reader asks for. */
export function wellFormed(svg: string): boolean {
  const open: string[] = [];
  const rest = svg.replace(
    /<(\/?)([a-z]+)((?: [a-zA-Z:-]+="[^"<&]*(?:&(?:amp|lt|gt|quot|#39);[^"<&]*)*")*)(\/?)>/g,
    (_, shut, name, __, solo) => {
      if (shut === '/') return open.pop() === name ? '' : '<';
      if (solo !== '/') open.push(name as string);
      return '';
    },
  );
  return open.length === 0 && !/[<>]|&(?!(?:amp|lt|gt|quot|#39);)/.test(rest);
}
