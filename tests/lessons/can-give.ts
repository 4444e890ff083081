import { readFileSync } from 'node:fs';

/** Whether a check's own file can give a code: it stands there, or is put together from words that stand there or in the step. */
export function canGive(code: string, step: string): boolean {
  const [check = '', what = ''] = code.split('/');
  const source = readFileSync(`src/lib/grading/checks/${check}.ts`, 'utf8');
  if (source.includes(`'${code}'`)) return true;
  // An ending that is put behind such a word.
  const ending = /^(\w+)(-\w+)$/.exec(what);
  if (ending && source.includes(`}${ending[2]}\``) && source.includes(`'${ending[1]}'`)) return true;
  return (
    (source.includes(`\`${check}/\${`) || source.includes(`behind('${check}/')`)) &&
    [source, step].some((text) => new RegExp(`['"]${what}['"]`).test(text))
  );
}
