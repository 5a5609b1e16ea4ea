// Writes the JSON Schemas that editors check priors/data against. Needs a built core.
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { caseJsonSchema, modelJsonSchema, modelPartJsonSchema } from '@faultodds/core/schema';

const folder = fileURLToPath(new URL('../priors/schema/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const [name, schema] of Object.entries({
  model: modelJsonSchema(),
  'model-part': modelPartJsonSchema(),
  case: caseJsonSchema(),
})) {
  writeFileSync(`${folder}${name}.schema.json`, `${JSON.stringify(schema, null, 2)}\n`);
}
