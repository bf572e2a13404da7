// An independent client, made from the .proto files alone, drives the real host over real gRPC.
'use strict';

const assert = require('node:assert/strict');
const { after, before, test } = require('node:test');
const { startPlanner } = require('./host.js');
const { clients, details, status } = require('./contract.js');
const { cabin, kit, scene } = require('./scene.js');

let host;
let api;
let plan;

before(async () => {
  host = await startPlanner();
  api = clients(host.grpcTarget);
  await api.cabins.CreateCabin({ cabin_id: 'lesson-saloon', cabin });
  await api.kits.CreateKit({ kit_id: 'small-bag', kit });
  await api.scenes.CreateScene({ scene_id: 'lesson', scene });
  ({ plan } = await api.placement.PlanPlacement({ scene: 'scenes/lesson', keep: true }));
});

after(async () => {
  for (const stub of Object.values(api ?? {})) {
    stub.close();
  }
  await host?.stop();
});

test('health check of the whole server answers serving', async () => {
  assert.equal((await api.health.Check({ service: '' })).status, 'SERVING');
});

test('a scene that was kept reads back as it was sent', async () => {
  const kept = (await api.scenes.GetScene({ name: 'scenes/lesson' })).scene;
  assert.equal(kept.display_name, scene.display_name);
  assert.equal(kept.revision, '1');
  assert.deepEqual(kept.talkers.map((t) => t.seat_id), scene.talkers.map((t) => t.seat_id));
});

test('a plan serves every talker within the kit, the inputs and the proof', () => {
  const placements = plan.best.placements;
  assert.deepEqual(plan.uncovered_talker_ids, []);
  assert.deepEqual(placements.map((p) => p.talker_id), ['learner', 'teacher', 'cousin']);
  for (const p of placements) {
    const held = kit.microphones.find((m) => m.id === p.microphone_id);
    assert.ok(held.fixings.includes(p.fixing), `${p.fixing} does not hold ${held.id}`);
    assert.ok(p.site.permitted_fixings.includes(p.fixing), `${p.fixing} is not permitted at ${p.site.id}`);
    assert.ok(p.recorder_input >= 1 && p.recorder_input <= kit.recorder_input_count);
    assert.equal(p.site.airbag_zone, '');
    assert.equal(p.site.in_driver_view, false);
    assert.ok(p.aim_words.length > 0 && p.place_words.length > 0);
    assert.ok(p.figures.sii >= 0 && p.figures.sii <= 1);
    assert.ok(p.figures.mouth_distance_m > 0.02 && p.figures.mouth_distance_m < 2);
  }
  assert.equal(plan.proof.proved_optimal, true);
  assert.ok(Math.abs(plan.proof.worst_score_bound_db - plan.proof.worst_score_db) < 1e-6);
  assert.ok(plan.runners_up.every((r) => r.worst_score_db <= plan.best.worst_score_db + 1e-6));
});

test('no placement stands on a site that the plan refused', () => {
  const refused = new Set(plan.refused_sites.map((s) => s.site_id));
  assert.ok(refused.size > 0);
  for (const option of [plan.best, ...plan.runners_up]) {
    assert.ok(option.placements.every((p) => !refused.has(p.site.id)));
  }
});

test('a kept plan reads back as it was answered', async () => {
  assert.match(plan.name, /^plans\//);
  const kept = (await api.plans.GetPlan({ name: plan.name })).plan;
  assert.deepEqual(kept.best, plan.best);
});

test('the same scene sent whole gives the same placements', async () => {
  const { plan: again } = await api.placement.PlanPlacement({ bundle: { scene, cabin, kit } });
  assert.deepEqual(again.best.placements, plan.best.placements);
});

test('a refused site is explained with its reasons', async () => {
  const refused = plan.refused_sites[0];
  const answer = await api.placement.ExplainSite({ plan: plan.name, site_id: refused.site_id, talker_id: 'learner' });
  assert.equal(answer.chosen, false);
  assert.deepEqual(answer.refused.reasons, refused.reasons);
  assert.ok(answer.summary.length > 0);
});

test('the chosen site is explained as chosen', async () => {
  const placement = plan.best.placements[0];
  const answer = await api.placement.ExplainSite({ plan: plan.name, site_id: placement.site.id, talker_id: placement.talker_id });
  assert.equal(answer.chosen, true);
});

test('the picture is a PNG of the stated size with the same in words', async () => {
  const { picture } = await api.placement.DrawPlan({ name: plan.name });
  assert.equal(picture.png.subarray(0, 8).toString('hex'), '89504e470d0a1a0a');
  assert.equal(picture.png.readUInt32BE(16), picture.width_px);
  assert.equal(picture.png.readUInt32BE(20), picture.height_px);
  assert.ok(picture.text_alternative.length > 0 && picture.text_alternative.length <= 1024);
});

test('a scene with several wrong fields is refused with every field named', async () => {
  const wrong = structuredClone(scene);
  wrong.talkers[0].head_poses[0].share_fraction = 0.2;
  wrong.talkers[1].seat_id = wrong.talkers[0].seat_id;
  wrong.shots[0].focal_length_mm = -50;
  const problem = await refusal(api.placement.PlanPlacement({ bundle: { scene: wrong, cabin, kit } }));
  assert.equal(problem.code, status.INVALID_ARGUMENT);
  const { BadRequest, ErrorInfo } = details(problem);
  const fields = BadRequest.fieldViolations.map((v) => v.field).join(' ');
  assert.match(fields, /talkers\[0\]/);
  assert.match(fields, /talkers\[1\]/);
  assert.match(fields, /shots\[0\]/);
  assert.ok(BadRequest.fieldViolations.every((v) => v.description.length > 0 && !v.description.includes('Exception')));
  assert.equal(ErrorInfo.domain, 'quarterlight');
  assert.equal(ErrorInfo.reason, 'INVALID_FIELDS');
});

test('an unknown scene is not found, by name', async () => {
  const problem = await refusal(api.placement.PlanPlacement({ scene: 'scenes/never-kept' }));
  assert.equal(problem.code, status.NOT_FOUND);
  assert.equal(details(problem).ErrorInfo.metadata.name, 'scenes/never-kept');
});

test('the JSON side answers the same refusal in JSON', async () => {
  const answer = await fetch(new URL('/v1/scenes/never-kept', host.httpAddress));
  assert.equal(answer.status, 404);
  assert.equal((await answer.json()).code, status.NOT_FOUND);
});

async function refusal(call) {
  try {
    await call;
  } catch (problem) {
    return problem;
  }
  return assert.fail('the call was not refused');
}

const setup = {
  gear: {
    frequency_mhz: 98.1,
    power_basis: 'TRANSMIT_POWER_BASIS_EIRP',
    power: 200,
    transmit_antenna: { kind: 'ANTENNA_KIND_HIDDEN_WIRE', place: 'ANTENNA_PLACE_IN_CABIN', height_m: 1, shielding_db: 25 },
    receive_antenna: { kind: 'ANTENNA_KIND_SHORT_WHIP', place: 'ANTENNA_PLACE_ON_ROOF', height_m: 1.6 },
    analogue_fm: {},
  },
  follow_car: { gap_m: 60, country_code: 'US' },
  speed_km_per_hour: 50,
};

test('a link check gives ranges, the law and a picture', async () => {
  const { report, picture } = await api.radio.CheckLink({ setup, include_picture: true });
  assert.deepEqual(report.ranges.map((r) => r.availability_fraction), [0.5, 0.9, 0.95, 0.99]);
  assert.ok(report.ranges.every((r, i) => i === 0 || r.range_m <= report.ranges[i - 1].range_m));
  // 47 CFR 15.239(b), 250 uV/m at 3 m, against 200 mW EIRP: 10 lg(0.2 * 30 / (250e-6 * 3)^2) dB.
  assert.ok(Math.abs(report.law.excess_db - 10 * Math.log10((0.2 * 30) / (250e-6 * 3) ** 2)) < 0.01);
  assert.deepEqual([...picture.png.subarray(0, 4)], [0x89, 0x50, 0x4e, 0x47]);
});

test('a link inside the near field is refused by field', async () => {
  const near = { ...setup, follow_car: { ...setup.follow_car, gap_m: 2 } };
  const refused = await api.radio.CheckLink({ setup: near }).then(() => null, (problem) => problem);
  assert.equal(refused.code, status.INVALID_ARGUMENT);
  assert.equal(details(refused).BadRequest.fieldViolations[0].field, 'setup.follow_car.gap_m');
});

test('channels found are free of third-order products by this side\'s own count', async () => {
  const guardKhz = 50;
  const { report } = await api.radio.CoordinateChannels({
    transmitters: [{ id: 'pack', display_name: 'Bodypack', tuning_ranges: [{ low_mhz: 470, high_mhz: 494 }], step_khz: 25, count: 12 }],
    rules: { third_order_guard_khz: guardKhz },
  });
  const khz = report.assignments.map((a) => Math.round(a.frequency_mhz * 1000));
  assert.equal(khz.length, 12);
  for (const a of khz) {
    for (const b of khz) {
      for (const c of khz) {
        if (a !== c && b !== c) {
          assert.ok(khz.every((victim) => Math.abs(a + b - c - victim) >= guardKhz), `${a} + ${b} - ${c}`);
        }
      }
    }
  }
});

const day = {
  start_time: { seconds: String(Date.UTC(2026, 6, 15, 20) / 1000) },
  utc_offset_min: -420,
  latitude_deg: 34,
  longitude_deg: -118,
  air: { temperature_c: 32, relative_humidity_percent: 35 },
};

test('a hot day gives limits, a rhythm within them, and the set-up filled in', async () => {
  const answer = await api.endurance.ForecastHeat({ setup: { cabin, speed_km_per_hour: 40, day }, include_picture: true });
  assert.deepEqual(answer.report.limits.map((l) => l.kind), ['HEAT_LIMIT_KIND_COMFORT', 'HEAT_LIMIT_KIND_CAUTION', 'HEAT_LIMIT_KIND_STOP']);
  assert.ok(answer.report.soaked_air_c > 32);
  assert.equal(answer.setup.day.occupants.adult_count, 2);
  assert.equal(answer.setup.day.glass, 'GLASS_KIND_TINTED');
  assert.deepEqual([...answer.picture.png.subarray(0, 4)], [0x89, 0x50, 0x4e, 0x47]);
  const again = await api.endurance.ForecastHeat({ setup: answer.setup });
  assert.deepEqual(again.report, answer.report);
});

test('cards last as long as their bytes by this side\'s own count', async () => {
  const recording = { track_count: 8, card_size_gb: 64, card_count: 1 };
  const { report } = await api.endurance.ForecastRunTime({ setup: { kit: { ...kit, recording_media: recording } }, margin_fraction: 0 });
  const cards = report.items.find((i) => i.kind === 'RUN_TIME_KIND_CARD');
  // 8 tracks of 48 000 samples of 3 bytes a second.
  assert.ok(Math.abs(cards.hours_without_margin / (64e9 / (8 * 48_000 * 3) / 3600) - 1) < 0.01);
});

test('faster is louder, and the table says from when on it does not work', async () => {
  const { report } = await api.noise.ForecastNoise({ scene: 'scenes/lesson', table_speeds_km_per_hour: [20, 60, 130] });
  const [asked] = report.table;
  assert.ok(asked.cells.every((c, i) => i === 0 || c.noise_dba > asked.cells[i - 1].noise_dba));
  assert.ok(asked.cells.every((c, i) => i === 0 || c.worst_snr_dba < asked.cells[i - 1].worst_snr_dba));
  assert.equal(report.talkers.length, scene.talkers.length);
});

test('what a team sets and where a conversation stands read back as they were sent', async () => {
  const { settings } = await api.teams.UpdateTeamSettings({ settings: { units: 'UNIT_SYSTEM_IMPERIAL', country_code: 'us' } });
  assert.deepEqual([settings.name, settings.country_code, settings.revision], ['teamSettings/team', 'US', '1']);
  assert.deepEqual((await api.teams.GetTeamSettings({})).settings, settings);
  const state = Buffer.from([0, 1, 254, 255]);
  await api.teams.SaveConversation({ conversation_id: 'm:0badf00d', state });
  assert.deepEqual((await api.teams.GetConversation({ conversation_id: 'm:0badf00d' })).conversation.state, state);
  const problem = await refusal(api.teams.SaveConversation({ conversation_id: 'a/b', state: Buffer.alloc(0) }));
  assert.equal(problem.code, status.INVALID_ARGUMENT);
  assert.deepEqual(details(problem).BadRequest.fieldViolations.map((v) => v.field), ['conversation_id', 'state']);
});

test('a scene without a shoot day is refused about heat, by field', async () => {
  const problem = await refusal(api.endurance.ForecastHeat({ scene: 'scenes/lesson' }));
  assert.equal(problem.code, status.INVALID_ARGUMENT);
  assert.equal(details(problem).BadRequest.fieldViolations[0].field, 'scene.shoot_day');
});
