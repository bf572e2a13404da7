// The emulated chat platform against the client library most bots are made with, unchanged: what that client does must work, and nothing it asks for may be
// unknown. Only its base addresses are set.
'use strict';

const assert = require('node:assert/strict');
const { after, before, test } = require('node:test');
const { AttachmentBuilder, Client, Events, GatewayIntentBits, MessageFlags } = require('discord.js');
const { startEmulator } = require('./emulator.js');

const HEARTBEAT_MS = 500;

// One grey pixel.
const PNG = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==', 'base64');
const ALT_TEXT = 'Plan from above: one microphone on the visor';

const COMMANDS = [
  {
    name: 'plan',
    description: 'Plan microphones',
    options: [
      { type: 3, name: 'car', description: 'The car', required: true, autocomplete: true },
      { type: 3, name: 'units', description: 'Units', choices: [{ name: 'metres', value: 'm' }, { name: 'feet', value: 'ft' }] },
      { type: 11, name: 'clip', description: 'A test clip' },
    ],
  },
  { name: 'note', description: 'Write a note in a form' },
  { name: 'scene', description: 'Scenes', options: [{ type: 1, name: 'use', description: 'Use a scene', options: [{ type: 3, name: 'scene', description: 'Its name' }] }] },
  { name: 'Judge this clip', type: 3 },
];

let emulator;
let client;
const problems = [];
const counted = { resumes: 0 };

before(async () => {
  emulator = await startEmulator('--heartbeat-ms', String(HEARTBEAT_MS));
  client = new Client({ intents: [GatewayIntentBits.Guilds], rest: { api: emulator.api, cdn: emulator.cdn, version: '10' } });
  client.on(Events.Error, problem => problems.push(problem));
  client.on(Events.ShardError, problem => problems.push(problem));
  client.on(Events.ShardResume, () => counted.resumes++);
  client.on(Events.InteractionCreate, asked => answer(asked).catch(problem => problems.push(problem)));
});

after(async () => {
  await client.destroy();
  await emulator.stop();
});

// The bot under the client: one answer for each kind of interaction.
async function answer(asked) {
  if (asked.isAutocomplete()) {
    await asked.respond([{ name: `Estate (${asked.options.getFocused()})`, value: 'estate' }]);
  } else if (asked.isButton()) {
    await asked.update({ content: `pressed ${asked.customId}`, components: [] });
  } else if (asked.isModalSubmit()) {
    await asked.reply({ content: `noted: ${asked.fields.getTextInputValue('text')}`, flags: MessageFlags.Ephemeral });
  } else if (asked.isMessageContextMenuCommand()) {
    const [clip] = asked.targetMessage.attachments.values();
    await asked.reply({ content: `${clip.name}: ${(await download(clip.url)).length} bytes` });
  } else if (asked.commandName === 'note') {
    await asked.showModal({
      custom_id: 'note', title: 'A note',
      components: [{ type: 18, label: 'Text', component: { type: 4, custom_id: 'text', style: 2, max_length: 200 } }],
    });
  } else if (asked.commandName === 'scene') {
    await asked.reply({ content: `${asked.options.getSubcommand()} ${asked.options.getString('scene')}`, withResponse: true });
  } else {
    await plan(asked);
  }
}

async function plan(asked) {
  const car = asked.options.getString('car');
  await asked.deferReply({ flags: car === 'secret' ? MessageFlags.Ephemeral : undefined });
  const clip = asked.options.getAttachment('clip');
  const heard = clip ? `, clip of ${(await download(clip.url)).length} bytes` : '';
  await asked.editReply({ content: `plan for ${car}${heard}`, allowedMentions: { parse: [] } });
  await asked.followUp({
    content: 'from above', allowedMentions: { parse: [] },
    files: [new AttachmentBuilder(PNG, { name: 'plan.png', description: ALT_TEXT })],
    components: [{ type: 1, components: [{ type: 2, style: 2, custom_id: 'next', label: 'Next best' }] }],
  });
}

const download = async url => Buffer.from(await (await fetch(url)).arrayBuffer());
const slash = (command, ...options) => emulator.order('slash', { command, options });
const wait = (sent, what, fields = {}) => emulator.order('wait', { interaction: sent.interaction, for: what, ...fields });
const option = (name, value) => ({ name, value });
const noProblems = () => assert.deepEqual(problems.splice(0), []);

test('logs in and sees its guild', async () => {
  await client.login(emulator.token);
  await emulator.order('waitGateway', { connected: 1 });
  while (!client.isReady()) {
    await new Promise(done => client.once(Events.ClientReady, done));
  }
  assert.equal(client.user.id, emulator.applicationId);
  assert.deepEqual([...client.guilds.cache.keys()], [emulator.guildId]);
  assert.equal(client.guilds.cache.get(emulator.guildId).name, 'Unit One');
});

test('registers commands for a guild and for all, and reads them back', async () => {
  await client.application.commands.set(COMMANDS, emulator.guildId);
  await client.application.commands.set(COMMANDS);
  const known = await client.application.commands.fetch();
  assert.deepEqual([...known.values()].map(c => c.name).sort(), COMMANDS.map(c => c.name).sort());
});

test('defers, edits, follows up with a picture and its text alternative', async () => {
  const sent = await slash('plan', option('car', 'estate'));
  const seen = await wait(sent, 'followUps');
  noProblems();
  assert.equal(seen.firstAnswer, 5);
  assert.ok(seen.acknowledgedAfterMs > 0 && seen.acknowledgedAfterMs < 3000);
  assert.equal(seen.first.content, 'plan for estate');
  const [picture] = seen.later[0].files;
  assert.equal(picture.altText, ALT_TEXT);
  assert.ok((await download(picture.url)).equals(PNG));
  assert.equal((await fetch(picture.url.replace(/hm=[0-9a-f]{4}/, 'hm=0000'))).status, 404);
});

test('downloads the file of an option, and a private answer stays private', async () => {
  const file = { name: 'take.wav', contentType: 'audio/x-wav', base64: Buffer.alloc(4000, 7).toString('base64') };
  const sent = await slash('plan', option('car', 'secret'), { name: 'clip', file });
  const seen = await wait(sent, 'followUps');
  noProblems();
  assert.equal(seen.first.content, 'plan for secret, clip of 4000 bytes');
  assert.equal(seen.first.private, true);
});

test('answers while an option is typed', async () => {
  const sent = await emulator.order('type', { command: 'plan', option: 'car', text: 'es' });
  const seen = await wait(sent, 'choices');
  noProblems();
  assert.deepEqual(seen.choices, [{ name: 'Estate (es)', value: 'estate' }]);
});

test('changes the message of a pressed button', async () => {
  const asked = await wait(await slash('plan', option('car', 'saloon')), 'followUps');
  const sent = await emulator.order('press', { message: asked.later[0].id, button: 'Next best' });
  const seen = await wait(sent, 'answer');
  noProblems();
  assert.equal(seen.firstAnswer, 7);
  assert.equal(seen.first.content, 'pressed next');
  assert.deepEqual(seen.first.buttons, []);
  assert.equal(seen.first.files.length, 1, 'an edit without attachments keeps the picture');
});

test('opens a form and reads what was written', async () => {
  const opened = await slash('note');
  assert.equal((await wait(opened, 'form')).form.title, 'A note');
  const sent = await emulator.order('submit', { interaction: opened.interaction, options: [option('text', 'rain on the roof')] });
  const seen = await wait(sent, 'messages');
  noProblems();
  assert.equal(seen.first.content, 'noted: rain on the roof');
  assert.equal(seen.first.private, true);
});

test('takes a clip from the menu of a message', async () => {
  const { message } = await emulator.order('post', {
    content: 'take 3', files: [{ name: 't3.wav', contentType: 'audio/x-wav', base64: Buffer.alloc(99).toString('base64') }],
  });
  const seen = await wait(await emulator.order('menu', { command: 'Judge this clip', message }), 'messages');
  noProblems();
  assert.equal(seen.first.content, 't3.wav: 99 bytes');
});

test('reads subcommands, and the callback with its response', async () => {
  const seen = await wait(await slash('scene use', option('scene', '12A')), 'messages');
  noProblems();
  assert.equal(seen.first.content, 'use 12A');
});

test('resumes when asked to reconnect, and gets what it missed', async () => {
  const state = await emulator.order('gateway', { act: 'state' });
  await emulator.order('gateway', { act: 'connections', value: false });
  await emulator.order('gateway', { act: 'reconnect' });
  await emulator.order('waitGateway', { connectedExactly: 0 });
  const sent = await slash('plan', option('car', 'in the gap'));
  await emulator.order('gateway', { act: 'connections', value: true });
  const seen = await wait(sent, 'followUps', { withinMs: 20_000 });
  problems.splice(0); // the refused handshakes of the gap
  assert.equal(seen.first.content, 'plan for in the gap');
  const now = await emulator.order('gateway', { act: 'state' });
  assert.equal(now.resumed, state.resumed + 1);
  assert.equal(now.identified, state.identified);
});

test('beats at once when the gateway asks', async () => {
  const { heartbeats } = await emulator.order('gateway', { act: 'state' });
  await emulator.order('gateway', { act: 'heartbeat' });
  await emulator.order('waitGateway', { heartbeats: heartbeats + 1, withinMs: HEARTBEAT_MS });
});

test('sees a dead connection when its beats are not answered, and resumes', async () => {
  const before = counted.resumes;
  const { closed, identified } = await emulator.order('gateway', { act: 'acknowledge', value: false });
  await emulator.order('waitGateway', { closed: closed + 1 });
  const { resumed } = await emulator.order('gateway', { act: 'acknowledge', value: true });
  await emulator.order('waitGateway', { resumed: resumed + 1 }).catch(() => {});
  while (counted.resumes === before) {
    await new Promise(done => client.once(Events.ShardResume, done));
  }
  assert.equal((await emulator.order('gateway', { act: 'state' })).identified, identified);
});

test('identifies anew when its session is gone', async () => {
  const { identified } = await emulator.order('gateway', { act: 'state' });
  await emulator.order('gateway', { act: 'invalidate', value: false });
  await emulator.order('waitGateway', { identified: identified + 1, connected: 1, withinMs: 15_000 });
});

test('waits out a 429 and tries again', async () => {
  await emulator.order('fault', { kind: 'RateLimited', method: 'PUT', path: 'commands$', retryAfterMs: 200 });
  const started = Date.now();
  await client.application.commands.set(COMMANDS);
  assert.ok(Date.now() - started >= 200);
  const { requests } = await emulator.order('requests');
  assert.deepEqual(requests.filter(r => r.method === 'PUT').slice(-2).map(r => r.status), [429, 200]);
});

test('is told when it answers too late', async () => {
  while (!client.isReady()) {
    await new Promise(done => client.once(Events.ClientReady, done));
  }
  await emulator.order('fault', { kind: 'Late', path: 'callback$', delayMs: 400 });
  const sent = await slash('plan', option('car', 'late'));
  await emulator.order('advance', { ms: 3000 });
  while (problems.length === 0) {
    await new Promise(done => setTimeout(done, 20));
  }
  assert.equal(problems.splice(0)[0].code, 10062);
  assert.equal((await emulator.order('state', sent)).failed, true);
});

test('closes with 1000, and never asked for anything unknown', async () => {
  await client.destroy();
  await emulator.order('waitGateway', { connectedExactly: 0 });
  const { frames } = await emulator.order('frames');
  assert.equal(frames.filter(f => f.kind === 'Closed').at(-1).closeCode, 1000);
  assert.equal((await emulator.order('gateway', { act: 'state' })).liveSessions, 0);
  assert.deepEqual((await emulator.order('unknownRoutes')).routes, []);
});
