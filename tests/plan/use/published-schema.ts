/** The published schema of the plan, by what it has to say of each kind and each form of run. */
import { readFileSync } from 'node:fs';

export interface Schema {
  readonly const?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly allOf?: readonly { readonly then: Schema }[];
  readonly then?: Schema;
  readonly else?: Schema;
  readonly items?: Schema;
  readonly additionalProperties?: Schema;
  readonly propertyNames?: { readonly enum?: readonly string[] };
}

export const root: Schema = JSON.parse(
  readFileSync(new URL('../../../schemas/plan.schema.json', import.meta.url), 'utf8'),
);

/** Each kind with its fields. */
export function kindsIn(section: 'parts' | 'stock'): { readonly kind: string; readonly of: Schema }[] {
  return root.properties![section]!.additionalProperties!.allOf!.flatMap(({ then }) => {
    const kind = then.properties!.kind?.const;
    return kind === undefined ? [] : [{ kind, of: then }];
  });
}

const runs = root.properties!.runs!.items!;
/** A bare jumper, a cable along several parts, and a cable between two places. */
export const RUN_FORMS = { link: runs.then!, along: runs.else!.then!, cable: runs.else!.else! };

export const INTENT = root.properties!.intent!.additionalProperties!.anyOf![0]!;
