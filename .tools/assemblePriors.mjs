// Joins the hand-written files of priors/data into priors/dist (model, demo cases, entry module). Plain Node, no dependencies.
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const priors = fileURLToPath(new URL('../priors', import.meta.url));
const dist = join(priors, 'dist');

/** Leaves alone what is as it should be: tests may be reading it. @param {string} path @param {string} text */
function put(path, text) {
  if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text);
}

/** Every JSON file under a folder, in name order. @param {string} folder @returns {string[]} */
function jsonFiles(folder) {
  return readdirSync(folder, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) =>
      entry.isDirectory()
        ? jsonFiles(join(folder, entry.name))
        : entry.name.endsWith('.json')
          ? [join(folder, entry.name)]
          : [],
    );
}

/** @param {string} file @returns {any} */
function read(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    console.error(`${relative(process.cwd(), file)}: ${error instanceof Error ? error.message : error}`);
    process.exit(1);
  }
}

/** Lists are joined in file order, everything else must be given once. @returns {Record<string, any>} */
export function assembleModel() {
  /** @type {Record<string, any>} */
  const model = {};
  for (const file of jsonFiles(join(priors, 'data/model'))) {
    for (const [key, value] of Object.entries(read(file))) {
      if (key === '$schema') continue;
      if (Array.isArray(value)) model[key] = [...(model[key] ?? []), ...value];
      else if (key in model) {
        console.error(`${relative(process.cwd(), file)}: "${key}" is already given by another file`);
        process.exit(1);
      } else model[key] = value;
    }
  }
  return model;
}

/** @returns {any[]} */
export function assembleCases() {
  return jsonFiles(join(priors, 'data/cases')).map((file) => {
    const { $schema: _, ...demoCase } = read(file);
    return demoCase;
  });
}

/** Writes priors/dist: the model and the demo cases as JSON, and a module that exports both. */
export function writePriors() {
  mkdirSync(dist, { recursive: true });
  const model = JSON.stringify(assembleModel());
  const cases = JSON.stringify(assembleCases());
  put(join(dist, 'model.json'), model);
  put(join(dist, 'cases.json'), cases);
  put(join(dist, 'index.js'), `export const misfire = ${model};\nexport const demoCases = ${cases};\n`);
  put(
    join(dist, 'index.d.ts'),
    [
      '/** The misfire model, unparsed: give it to `parseModel` of @faultodds/core. */',
      'export declare const misfire: unknown;',
      '/** Invented demo cases, unparsed: give each to `loadCase` of @faultodds/core. */',
      'export declare const demoCases: readonly unknown[];',
      '',
    ].join('\n'),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writePriors();
