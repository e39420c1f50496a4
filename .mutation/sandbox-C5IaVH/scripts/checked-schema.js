/** Of a schema, what a check of a file needs: what only editors read would make each page larger. */
// @ts-nocheck


/** Said to the reader of the file. Our own check has messages of its own. */
const forEditors = new Set([
  "$comment",
  "title",
  "description",
  "default",
  "errorMessage",
  "defaultSnippets",
]);

/** Keywords that hold schemas by name. */
const named = new Set(["properties", "$defs"]);

/** Keywords that are a schema or hold some; the values of others, as `examples`, stay as they are. */
const nested = new Set(["items", "additionalProperties", "anyOf"]);

export function checkedSchema(schema) {
  if (Array.isArray(schema)) return schema.map(checkedSchema);
  if (typeof schema !== "object" || schema === null) return schema;
  return Object.fromEntries(
    Object.entries(schema)
      .filter(([key]) => !forEditors.has(key))
      .map(([key, value]) => {
        if (nested.has(key)) return [key, checkedSchema(value)];
        return [key, named.has(key) ? eachOf(value) : value];
      }),
  );
}

function eachOf(schemas) {
  return Object.fromEntries(
    Object.entries(schemas).map(([name, schema]) => [name, checkedSchema(schema)]),
  );
}
