// @ts-nocheck
import { Ajv } from "ajv";
import { Ajv2020 } from "ajv/dist/2020.js";
import { schemaCheck, type SchemaCheck } from "../../src/schema-check.js";

const { checkedSchema } = (await import(
  new URL("../../scripts/checked-schema.js", import.meta.url).href
)) as { checkedSchema: (schema: object) => object };

/** The check of any schema, as `scripts/compile-data.js` makes those of growers' files. */
export function compileCheck(schema: object): SchemaCheck {
  const is2020 = String((schema as { $schema?: string }).$schema).includes("2020-12");
  const ajv = new (is2020 ? Ajv2020 : Ajv)({
    allErrors: true,
    verbose: true,
    validateFormats: false,
  });
  return schemaCheck(ajv.compile(checkedSchema(schema)));
}
