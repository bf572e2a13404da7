// Holds payloads against the types of discord-api-types: node tests/interop/payloads.js lines.jsonl
// A line is {"kind":"callback","json":{...}}; kinds are those of payload-types.ts. An unknown field is a fault too.
// What types cannot say (lengths, patterns, one field against another) is checked by the emulated platform.
'use strict';

const crypto = require('node:crypto');
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const Ajv = require('ajv').default;

const TYPES = path.join(__dirname, 'payload-types.ts');
const PACKAGE = path.dirname(require.resolve('discord-api-types/v10'));
const CACHE = path.join(PACKAGE, '..', '.cache', 'quarterlight-payloads');

// Flags with a single bit so far: the generator takes the bit for the only value.
const ONE_BIT = ['RoleFlags', 'EmbedFlags', 'EmbedMediaFlags', 'UnfurledMediaItemFlags'];

// Gives a function (kind, json) -> list of faults, empty when there is none.
async function load() {
  const schema = await readOrMakeSchema();
  const ajv = new Ajv({ strict: false, allowUnionTypes: true, validateFormats: false });
  ajv.addSchema(schema, 'types');
  const compiled = new Map();
  return (kind, json) => {
    if (!Object.hasOwn(schema.definitions.Kinds.properties, kind)) {
      return [`there is no kind ${kind}`];
    }
    if (!compiled.has(kind)) {
      compiled.set(kind, ajv.compile({ $ref: `types#/definitions/Kinds/properties/${kind}` }));
    }
    const check = compiled.get(kind);
    return check(json) ? [] : check.errors.map(e => `${e.instancePath || '/'} ${e.message} ${JSON.stringify(e.params)}`);
  };
}

// Making the schema takes seconds, so it is kept beside the installed packages until the package, the types or this file change.
async function readOrMakeSchema() {
  const key = crypto.createHash('sha256');
  for (const file of [path.join(PACKAGE, 'package.json'), TYPES, __filename]) {
    key.update(fs.readFileSync(file));
  }
  const kept = path.join(CACHE, `${key.digest('hex').slice(0, 16)}.json`);
  if (!fs.existsSync(kept)) {
    const schema = await makeSchema();
    fs.mkdirSync(CACHE, { recursive: true });
    fs.writeFileSync(`${kept}.${process.pid}`, JSON.stringify(schema));
    fs.renameSync(`${kept}.${process.pid}`, kept);
  }
  return JSON.parse(fs.readFileSync(kept, 'utf8'));
}

async function makeSchema() {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'quarterlight-types-'));
  try {
    copyTypes(path.join(folder, 'api'));
    const types = fs.readFileSync(TYPES, 'utf8').replace("'discord-api-types/v10'", "'./api/v10'");
    fs.writeFileSync(path.join(folder, 'types.ts'), types);
    const options = { target: 'ES2022', module: 'esnext', moduleResolution: 'bundler', strict: true, noEmit: true, skipLibCheck: true, types: [] };
    fs.writeFileSync(path.join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions: options, files: ['types.ts'] }));
    const { createGenerator } = await import('ts-json-schema-generator');
    const schema = createGenerator({
      path: path.join(folder, 'types.ts'), tsconfig: path.join(folder, 'tsconfig.json'),
      type: 'Kinds', skipTypeCheck: true, additionalProperties: false, encodeRefs: false, topRef: true,
    }).createSchema('Kinds');
    repair(schema);
    complete(schema.definitions);
    return schema;
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}

// The package wraps many bodies in a type that only adds "| undefined" to optional fields. The generator takes that type apart even for plain texts, so it
// works on a copy where the type does nothing: for JSON, undefined and missing are the same.
function copyTypes(target) {
  for (const file of fs.readdirSync(PACKAGE, { recursive: true })) {
    if (file.endsWith('.d.ts') && !file.includes('node_modules')) {
      fs.mkdirSync(path.dirname(path.join(target, file)), { recursive: true });
      fs.copyFileSync(path.join(PACKAGE, file), path.join(target, file));
    }
  }
  const helper = path.join(target, 'utils', 'internals.d.ts');
  const before = fs.readFileSync(helper, 'utf8');
  const after = before.replace(/(type _AddUndefinedToPossiblyUndefinedPropertiesOfInterface<(\w+)> =) \{[^]*?\n\};/, '$1 $2;');
  if (after === before) {
    throw new Error('discord-api-types has changed: its helper type was not found');
  }
  fs.writeFileSync(helper, after);
}

// Three things the generator writes differently from what they mean.
function repair(node) {
  if (node === null || typeof node !== 'object') {
    return;
  }
  // T & {} is T without null (so the body of commands takes its field contexts); written out, it is a list that is an empty object as well: nothing fits.
  if (Array.isArray(node.anyOf) && node.anyOf.some(isWithoutNull)) {
    node.anyOf = node.anyOf.filter(n => n.type !== 'null');
  }
  if (isWithoutNull(node)) {
    node.allOf = node.allOf.filter(n => !isEmptyObject(n));
  }
  if (Array.isArray(node.enum)) {
    if (node.enum.length === 0) { // the type never
      delete node.enum;
      delete node.type;
      node.not = {};
    } else if (node.enum.length > 2 && node.enum.every(n => Number.isInteger(n) && n > 0 && Number.isInteger(Math.log2(n)))) { // bits to be put together
      delete node.enum;
      node.type = 'integer';
      node.minimum = 0;
    }
  }
  Object.values(node).forEach(repair);
}

function isWithoutNull(node) {
  return Array.isArray(node.allOf) && node.allOf.some(isEmptyObject) && !node.allOf.every(isEmptyObject);
}

function isEmptyObject(node) {
  return node.type === 'object' && node.additionalProperties === false && Object.keys(node.properties ?? { more: 0 }).length === 0;
}

function complete(definitions) {
  for (const name of ONE_BIT.filter(n => definitions[n])) {
    definitions[name] = { type: 'integer', minimum: 0 };
  }
  // What the documentation has and the package lacks: the component of an interaction comes with its number (Components reference).
  let numbered = 0;
  (function visit(node) {
    if (node?.properties?.component_type && node.properties.custom_id) {
      node.properties.id ??= { type: 'integer' };
      numbered++;
    }
    if (node !== null && typeof node === 'object') {
      Object.values(node).forEach(visit);
    }
  })(definitions);
  if (numbered === 0) {
    throw new Error('discord-api-types has changed: the data of component interactions was not found');
  }
}

async function main(file) {
  const check = await load();
  const lines = fs.readFileSync(file, 'utf8').split('\n').filter(line => line.trim() !== '');
  let faulty = 0;
  for (const [index, line] of lines.entries()) {
    const { kind, json } = JSON.parse(line);
    const faults = check(kind, json);
    if (faults.length > 0) {
      faulty++;
      console.error(`line ${index + 1}, ${kind}: ${faults.slice(-3).join('; ')}`);
    }
  }
  console.log(`${lines.length} payloads, ${faulty} faulty`);
  if (lines.length === 0 || faulty > 0) {
    process.exitCode = 1;
  }
}

module.exports = { load };

if (require.main === module) {
  main(process.argv[2]);
}
