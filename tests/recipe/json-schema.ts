import type { GenericSchema } from 'valibot';
import { KINDS } from '../../src/lib/recipe/commands/index.ts';
import type { CommandKind } from '../../src/lib/recipe/commands/kind.ts';
import { lesson, recipeSchema, schemaOf } from '../../src/lib/recipe/file-schema.ts';
import { anchor, fabric, id, turnBy } from '../../src/lib/recipe/shapes.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { DESCRIPTIONS } from './descriptions.ts';

type Json = Record<string, unknown>;
/** What of valibot's schema objects is read here. */
interface Node {
  readonly type: string;
  readonly kind: string;
  readonly entries?: Record<string, Node>;
  readonly wrapped?: Node;
  readonly item?: Node;
  readonly options?: readonly (Node | string)[];
  readonly literal?: unknown;
  readonly pipe?: readonly Node[];
  readonly requirement?: number | RegExp;
}

/** Definitions by the very schema object, so that what is shared in code is shared in the published schema. */
const SHARED = new Map<unknown, string>([
  [id, 'id'],
  [anchor, 'anchor'],
  [turnBy, 'turnBy'],
  [fabric, 'fabric'],
  [lesson, 'lesson'],
]);

/** JSON Schema (2020-12) of a valibot schema; throws for what it does not know, so nothing is left out silently. */
function convert(node: Node, path: string, top = false): Json {
  const shared = SHARED.get(node);
  if (shared !== undefined && !top) return { $ref: `#/$defs/${shared}` };
  if (node.pipe !== undefined)
    return node.pipe.slice(1).reduce((json, action) => ({ ...json, ...limit(action) }), base(node, path));
  return base(node, path);
}

function base(node: Node, path: string): Json {
  switch (node.type) {
    case 'string':
    case 'number':
    case 'boolean':
      return { type: node.type };
    case 'literal':
      return { const: node.literal };
    case 'picklist':
      return { enum: node.options };
    case 'array':
      return { type: 'array', items: convert(node.item!, path) };
    case 'union':
    case 'lazy':
    case 'variant':
      return { anyOf: (node.options as Node[]).map((option) => convert(option, path)) };
    case 'strict_object': {
      const properties: Json = {};
      const required: string[] = [];
      for (const [key, value] of Object.entries(node.entries!)) {
        const optional = value.type === 'exact_optional';
        const at = path === '' ? key : `${path}.${key}`;
        properties[key] = described(convert(optional ? value.wrapped! : value, at), at);
        if (!optional) required.push(key);
      }
      return { type: 'object', properties, required, additionalProperties: false };
    }
  }
  throw new Error(`no JSON Schema for a ${node.type} at ${path}`);
}

function limit(action: Node): Json {
  const requirement = action.requirement;
  switch (action.type) {
    case 'min_value':
      return { minimum: requirement };
    case 'max_value':
      return { maximum: requirement };
    case 'min_length':
      return { minItems: requirement };
    case 'max_length':
      return { maxItems: requirement };
    case 'integer':
      return { type: 'integer' };
    case 'regex':
      return { pattern: (requirement as RegExp).source };
  }
  throw new Error(`no JSON Schema for the action ${action.type}`);
}

function described(json: Json, path: string): Json {
  // `do` and `step` mean the same in every command.
  const description = DESCRIPTIONS[path] ?? DESCRIPTIONS[path.replace(/^[^.]+\.(do|step)$/, '$1')];
  return description === undefined ? json : { ...json, description };
}

/** The whole published schema. */
export function publishedSchema(): Json {
  const node = (schema: GenericSchema<unknown, unknown>) => schema as unknown as Node;
  const recipe = convert(node(recipeSchema), '');
  const properties = recipe['properties'] as Record<string, Json>;
  const names = Object.keys(KINDS).sort();
  (properties['commands'] as Json)['items'] = { $ref: '#/$defs/command' };
  const commands = Object.fromEntries(
    names.map((name) => {
      const schema = node(schemaOf(KINDS[name as keyof typeof KINDS] as unknown as CommandKind<Command>));
      return [name, described(convert(schema, name), name)];
    }),
  );
  const shared = [...SHARED].map(([schema, name]) => [
    name,
    described(convert(schema as Node, name, true), name),
  ]);
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Pin & Pivot recipe',
    description: DESCRIPTIONS['']!,
    ...recipe,
    $defs: {
      ...Object.fromEntries(shared),
      command: { anyOf: names.map((name) => ({ $ref: `#/$defs/${name}` })) },
      ...commands,
    },
  };
}
