import { inflateSync } from 'node:zlib';

/*
 * Reads what a PDF draws, as far as the browser's own printing needs it: which pages there are, how large they are, and the paths on them in
 * mm on paper. By the operators of ISO 32000 (q Q cm m l c h re; memory): an outside measure of what comes out of a printer. 1 pt = 1/72 in.
 */

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  /** The corners of each path, mm from the lower left corner of the paper. */
  readonly paths: readonly (readonly { readonly x: number; readonly y: number }[])[];
}

type Matrix = readonly [number, number, number, number, number, number];
const MM = 25.4 / 72;

export function readPdf(pdf: Buffer): readonly PdfPage[] {
  const text = pdf.toString('latin1');
  const objects = new Map<string, string>();
  for (const [, id, body] of text.matchAll(/(\d+) 0 obj\s(.*?)\sendobj/gs)) objects.set(id!, body!);
  // The tree of pages says their order.
  const tree = [...objects.values()].filter((body) => body.includes('/Type /Pages'));
  const inOrder = tree.flatMap((body) =>
    [...(/\/Kids \[([^\]]*)\]/.exec(body)?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map(([, id]) =>
      objects.get(id!)!,
    ),
  );
  return inOrder
    .filter((body) => /\/Type \/Page\b/.test(body))
    .map((body) => {
      const [, , width, height] = /\/MediaBox \[([^\]]*)\]/.exec(body)![1]!.split(' ').map(Number);
      const contents = objects.get(/\/Contents (\d+) 0 R/.exec(body)![1]!)!;
      const start = contents.indexOf('stream') + 'stream'.length;
      const data = contents.slice(contents.charAt(start) === '\r' ? start + 2 : start + 1);
      const drawn = inflateSync(Buffer.from(data, 'latin1'), { finishFlush: 2 }).toString('latin1');
      return { width: width! * MM, height: height! * MM, paths: pathsIn(drawn) };
    });
}

function pathsIn(drawn: string): PdfPage['paths'] {
  const paths: { x: number; y: number }[][] = [];
  const kept: Matrix[] = [];
  let at: Matrix = [1, 0, 0, 1, 0, 0];
  let numbers: number[] = [];
  const point = (x: number, y: number) => ({
    x: (at[0] * x + at[2] * y + at[4]) * MM,
    y: (at[1] * x + at[3] * y + at[5]) * MM,
  });
  // Words of text are of no interest here.
  for (const word of drawn.replace(/BT.*?ET/gs, '').split(/\s+/)) {
    if (/^[-+.\d]+$/.test(word)) {
      numbers.push(Number(word));
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    numbers = [];
    if (word === 'q') kept.push(at);
    else if (word === 'Q') at = kept.pop() ?? at;
    else if (word === 'cm') {
      const [p, q, r, s, t, u] = at;
      at = [a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u];
    } else if (word === 'm') paths.push([point(a, b)]);
    else if (word === 'l') paths.at(-1)?.push(point(a, b));
    else if (word === 'c') paths.at(-1)?.push(point(e, f));
    else if (word === 're') paths.push([point(a, b), point(a + c, b), point(a + c, b + d), point(a, b + d)]);
  }
  return paths;
}
