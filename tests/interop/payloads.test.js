// The check of payloads lets through what is right and catches what is wrong: otherwise a green run of it says nothing.
'use strict';

const assert = require('node:assert/strict');
const { execFile } = require('node:child_process');
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const { before, test } = require('node:test');
const { load } = require('./payloads.js');

const PROPERTIES = { os: 'linux', browser: 'x', device: 'x' };
const button = fields => ({ type: 1, components: [{ type: 2, ...fields }] });
const message = data => ({ type: 4, data });
const textOption = fields => ({ name: 'plan', description: 'x', options: [{ type: 3, name: 'car', description: 'y', ...fields }] });
const form = fields => ({ type: 9, data: { custom_id: 'f', title: 't', components: [{ type: 18, label: 'l', component: { type: 4, custom_id: 'i', style: 1 } }], ...fields } });

const GOOD = [
  ['commands', [textOption({ required: true, choices: [{ name: 'a', value: 'a' }] })]],
  ['commands', [{ name: 'Judge this clip', type: 3 }]],
  ['commands', [{ ...textOption({}), type: 1, contexts: [0], integration_types: [0], default_member_permissions: '32' }]],
  ['commands', [{ name: 'Judge this clip', type: 3, contexts: [0, 1], integration_types: [0, 1] }]],
  ['commands', [{ name: 'clip', description: 'x', options: [{ type: 11, name: 'file', description: 'y', required: true }] }]],
  ['command', { name: 'scene', description: 'x', options: [{ type: 1, name: 'use', description: 'y', options: [{ type: 3, name: 'scene', description: 'z', autocomplete: true }] }] }],
  ['callback', { type: 5, data: { flags: 64 } }],
  ['callback', { type: 5 }],
  ['callback', message({ content: 'x', allowed_mentions: { parse: [] }, components: [button({ style: 2, custom_id: 'a', label: 'b' })] })],
  ['callback', { type: 7, data: { content: 'x', components: [] } }],
  ['callback', { type: 8, data: { choices: [{ name: 'a', value: 'b' }] } }],
  ['callback', form({})],
  ['edit', { content: 'x', embeds: [{ image: { url: 'attachment://p.png' } }], attachments: [{ id: 0, filename: 'p.png', description: 'alt' }], allowed_mentions: { parse: [] } }],
  ['followup', { content: 'x', flags: 64 }],
  ['identify', { op: 2, d: { token: 't', intents: 0, properties: PROPERTIES } }],
  ['resume', { op: 6, d: { token: 't', session_id: 's', seq: 4 } }],
  ['heartbeat', { op: 1, d: null }],
];

const BAD = [
  ['option without description', 'commands', [{ name: 'plan', description: 'x', options: [{ type: 3, name: 'car' }] }]],
  ['number as a choice of a text', 'commands', [textOption({ choices: [{ name: 'a', value: 1 }] })]],
  ['unknown field of a command', 'commands', [{ name: 'plan', description: 'x', colour: 3 }]],
  ['context that is not there', 'commands', [{ ...textOption({}), contexts: [7] }]],
  ['contexts that are no list', 'commands', [{ ...textOption({}), contexts: 0 }]],
  ['contexts that are nothing', 'commands', [{ ...textOption({}), contexts: null }]],
  ['kind of installation that is not there', 'commands', [{ ...textOption({}), integration_types: [2] }]],
  ['capital in a field name', 'callback', message({ Content: 'x' })],
  ['type as text', 'callback', { type: '5' }],
  ['type that is not there', 'callback', { type: 3 }],
  ['form without title', 'callback', { type: 9, data: { custom_id: 'f', components: [] } }],
  ['choice without value', 'callback', { type: 8, data: { choices: [{ name: 'a' }] } }],
  ['mention that is not there', 'edit', { allowed_mentions: { parse: ['user'] } }],
  ['button outside a row', 'edit', { components: [{ type: 2, style: 2, label: 'x', custom_id: 'a' }] }],
  ['link with an id', 'callback', message({ components: [button({ style: 5, label: 'x', custom_id: 'a' })] })],
  ['file without id', 'edit', { attachments: [{ description: 'alt' }] }],
  ['misspelt field of an embed', 'edit', { embeds: [{ colour: 3 }] }],
  ['identify without intents', 'identify', { op: 2, d: { token: 't', properties: PROPERTIES } }],
  ['resume without sequence', 'resume', { op: 6, d: { token: 't', session_id: 's' } }],
  ['kind that is not there', 'call', {}],
];

let check;

before(async () => {
  check = await load();
});

for (const [kind, json] of GOOD) {
  test(`lets through: ${kind} ${JSON.stringify(json).slice(0, 60)}`, () => assert.deepEqual(check(kind, json), []));
}

for (const [name, kind, json] of BAD) {
  test(`catches: ${name}`, () => assert.notDeepEqual(check(kind, json), []));
}

test('as a program, fails on one bad line among good ones, and on an empty file', async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'quarterlight-lines-'));
  const file = path.join(folder, 'lines.jsonl');
  const run = lines => {
    fs.writeFileSync(file, lines.map(([kind, json]) => JSON.stringify({ kind, json })).join('\n'));
    return new Promise(done => execFile(process.execPath, [path.join(__dirname, 'payloads.js'), file], problem => done(problem?.code ?? 0)));
  };
  try {
    assert.equal(await run(GOOD), 0);
    assert.equal(await run([...GOOD, BAD[0].slice(1)]), 1);
    assert.equal(await run([]), 1);
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
});
