const WHY =
  'A recipe replays to the same bits in every engine, so the first layers use only + - * / and what the language standard rounds exactly.';

/** What of Math every engine computes alike: exact by the standard, or correctly rounded (sqrt). */
const EXACT = new Set(['abs', 'ceil', 'floor', 'fround', 'max', 'min', 'round', 'sign', 'sqrt', 'trunc']);
const CONSTANTS = new Set(['E', 'LN10', 'LN2', 'LOG10E', 'LOG2E', 'PI', 'SQRT1_2', 'SQRT2']);
/** Words that depend on the machine's language settings. */
const LOCAL = new Set(['localeCompare', 'toLocaleString', 'toLocaleLowerCase', 'toLocaleUpperCase']);

/**
 * Refuses what may differ from one engine, machine or moment to another.
 * @type {import('eslint').Rule.RuleModule}
 */
export const deterministic = {
  meta: {
    type: 'problem',
    docs: { description: 'only arithmetic that every engine rounds alike, no clock, no chance' },
    messages: {
      math: `Math.{{name}} may differ in its last bits between engines. Use the project's own functions in geometry/trig.ts. ${WHY}`,
      random: 'Math.random gives another answer each time. Chance comes in from outside, as a seed.',
      whole: `Use Math only as Math.name, so that the names can be checked. ${WHY}`,
      power: `** is Math.pow, which engines round differently. Write small powers out as products. ${WHY}`,
      clock: '{{name}} reads the clock or the settings of the machine. Time comes in from outside, as data.',
    },
    schema: [],
  },
  create(context) {
    /** @param {import('estree').Node & { operator: string }} node */
    const power = (node) => {
      if (node.operator === '**' || node.operator === '**=') context.report({ node, messageId: 'power' });
    };
    return {
      BinaryExpression: power,
      AssignmentExpression: power,
      /** @param {any} node */
      MemberExpression(node) {
        if (!node.computed && LOCAL.has(node.property.name)) {
          context.report({ node, messageId: 'clock', data: { name: node.property.name } });
        }
      },
      'Program:exit'(program) {
        for (const reference of globalReferences(context.sourceCode.getScope(program))) {
          const node = /** @type {any} */ (reference.identifier);
          const name = node.name;
          if (['Date', 'performance', 'Intl'].includes(name)) {
            if (isValue(reference)) context.report({ node, messageId: 'clock', data: { name } });
          } else if (name === 'Math' && isValue(reference)) {
            const member = node.parent;
            const used = member?.type === 'MemberExpression' && member.object === node && !member.computed;
            const property = used ? member.property.name : undefined;
            if (property === undefined) context.report({ node, messageId: 'whole' });
            else if (property === 'random') context.report({ node: member, messageId: 'random' });
            else if (!EXACT.has(property) && !CONSTANTS.has(property)) {
              context.report({ node: member, messageId: 'math', data: { name: property } });
            }
          }
        }
      },
    };
  },
};

/**
 * References to names that no scope of the file declares, whether or not the linter was told of the global.
 * @param {import('eslint').Scope.Scope} scope
 */
function globalReferences(scope) {
  const known = scope.set ? [...scope.set.values()].filter((variable) => variable.defs.length === 0) : [];
  return [...scope.through, ...known.flatMap((variable) => variable.references)];
}

/** @param {any} reference */
function isValue(reference) {
  return reference.isValueReference !== false;
}
