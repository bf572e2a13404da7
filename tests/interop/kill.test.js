// What was acknowledged is there after the planner was killed in the middle of writing, again and again on the same folder.
'use strict';

const assert = require('node:assert/strict');
const { test } = require('node:test');
const { setTimeout: delay } = require('node:timers/promises');
const { newFolder, removeFolder, startPlanner } = require('./host.js');
const { clients, status } = require('./contract.js');
const { kit } = require('./scene.js');

const ROUNDS = 8;
const WRITERS = 6;
const EARLIEST_KILL_MS = 40;
const KILL_STEP_MS = 35;

test('every acknowledged write survives kill -9', async () => {
  const folder = newFolder();
  const acknowledged = new Map(); // name -> the highest revision that was acknowledged
  try {
    for (let round = 0; round < ROUNDS; round++) {
      await writeUntilKilled(folder, round, acknowledged);
    }

    assert.ok(acknowledged.size > ROUNDS, `only ${acknowledged.size} writes were acknowledged`);
    const host = await startPlanner(folder);
    const { kits } = clients(host.grpcTarget);
    try {
      for (const [name, revision] of acknowledged) {
        const kept = (await kits.GetKit({ name })).kit;
        assert.ok(Number(kept.revision) >= revision, `${name} is at ${kept.revision}, ${revision} was acknowledged`);
        assert.equal(kept.microphones.length, kit.microphones.length);
      }
    } finally {
      kits.close();
      assert.equal(await host.stop(), 0);
    }
  } finally {
    removeFolder(folder);
  }
});

async function writeUntilKilled(folder, round, acknowledged) {
  const host = await startPlanner(folder);
  const { kits } = clients(host.grpcTarget);
  const before = acknowledged.size;
  let killed = false;
  const writers = Array.from({ length: WRITERS }, async (_, writer) => {
    try {
      for (let n = 0; !killed; n++) {
        const { kit: made } = await kits.CreateKit({ kit_id: `r${round}-w${writer}-n${n}`, kit });
        acknowledged.set(made.name, Number(made.revision));
        const { kit: changed } = await kits.UpdateKit({ kit: { ...made, display_name: `Bag ${n}` } });
        acknowledged.set(changed.name, Number(changed.revision));
      }
    } catch (problem) {
      assert.ok(killed, problem.message);
      assert.ok([status.UNAVAILABLE, status.CANCELLED, status.INTERNAL].includes(problem.code), problem.message);
    }
  });
  while (acknowledged.size === before) {
    await delay(5);
  }
  await delay(EARLIEST_KILL_MS + round * KILL_STEP_MS);
  killed = true;
  await host.kill();
  await Promise.all(writers);
  kits.close();
}
