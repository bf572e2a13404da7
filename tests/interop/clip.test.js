// An independent client streams clips to the real host and posts them to its JSON side.
'use strict';

const assert = require('node:assert/strict');
const { after, before, test } = require('node:test');
const { startPlanner } = require('./host.js');
const { clients, details, judgeClip, status } = require('./contract.js');

const RATE_HZ = 48_000;

let host;
let api;

before(async () => {
  host = await startPlanner();
  api = clients(host.grpcTarget);
});

after(async () => {
  for (const stub of Object.values(api ?? {})) {
    stub.close();
  }
  await host?.stop();
});

// A WAV file of one channel, 16 bits, of a sine at half of full scale.
function tone(seconds, hz) {
  const frames = seconds * RATE_HZ;
  const file = Buffer.alloc(44 + 2 * frames);
  file.write('RIFF', 0);
  file.writeUInt32LE(file.length - 8, 4);
  file.write('WAVEfmt ', 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(RATE_HZ, 24);
  file.writeUInt32LE(2 * RATE_HZ, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write('data', 36);
  file.writeUInt32LE(2 * frames, 40);
  for (let i = 0; i < frames; i++) {
    file.writeInt16LE(Math.round(16_384 * Math.sin((2 * Math.PI * hz * i) / RATE_HZ)), 44 + 2 * i);
  }
  return file;
}

test('a clip that is streamed comes back measured and judged', async () => {
  const file = tone(4, 1000);
  const answers = await judgeClip(host.grpcTarget, { file_name: 'tone.wav', byte_count: file.length }, file);
  const { report } = answers.at(-1).judged;
  assert.equal(report.file_name, 'tone.wav');
  assert.equal(report.format.sample_rate_hz, RATE_HZ);
  assert.equal(report.format.byte_count, String(file.length));
  assert.ok(Math.abs(report.format.duration_s - 4) < 1e-9);
  // A sine at half of full scale: 20 lg 0.5 and, as rms, 3.01 dB less.
  assert.ok(Math.abs(report.channels[0].sample_peak_dbfs - 20 * Math.log10(0.5)) < 0.01);
  assert.ok(Math.abs(report.channels[0].rms_dbov - 10 * Math.log10(0.125)) < 0.01);
  assert.match(report.verdict.outcome, /^CLIP_OUTCOME_(USE|USE_WITH_CARE|REDO)$/);
  assert.ok(report.verdict.headline.length > 0);
  const progress = answers.slice(0, -1).map((a) => a.progress);
  assert.ok(progress.length >= 1 && progress.every((p) => p !== null));
  assert.equal(progress.at(-1).fraction, 1);
  assert.equal(progress.at(-1).byte_count, String(file.length));
});

test('pieces of any size give the same report', async () => {
  const file = tone(2, 440);
  const reports = await Promise.all([1021, 65_536, 1_048_576].map(async (size) => (await judgeClip(host.grpcTarget, {}, file, size)).at(-1).judged.report));
  assert.deepEqual(reports[1], reports[0]);
  assert.deepEqual(reports[2], reports[0]);
});

test('a clip that breaks off is refused by field with the way out', async () => {
  const problem = await judgeClip(host.grpcTarget, {}, tone(2, 440).subarray(0, 100_000)).then(() => assert.fail('not refused'), (p) => p);
  assert.equal(problem.code, status.INVALID_ARGUMENT);
  const { BadRequest } = details(problem);
  assert.equal(BadRequest.fieldViolations[0].field, 'piece');
  assert.match(BadRequest.fieldViolations[0].description, /ends after/);
});

test('the JSON side takes the same file as a body', async () => {
  const file = tone(2, 440);
  const streamed = (await judgeClip(host.grpcTarget, { file_name: 'a.wav' }, file)).at(-1).judged.report;
  const answer = await fetch(new URL('/v1/clips:judge?file_name=a.wav', host.httpAddress), { method: 'POST', body: file });
  assert.equal(answer.status, 200);
  const { report } = await answer.json();
  assert.equal(report.verdict.headline, streamed.verdict.headline);
  assert.equal(report.channels[0].rmsDbov, streamed.channels[0].rms_dbov);
});

test('the JSON side refuses a picture with the same details', async () => {
  const answer = await fetch(new URL('/v1/clips:judge', host.httpAddress), { method: 'POST', body: Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex') });
  assert.equal(answer.status, 400);
  const refusal = await answer.json();
  assert.equal(refusal.code, status.INVALID_ARGUMENT);
  assert.ok(refusal.details.some((d) => d.fieldViolations?.[0].field === 'piece'));
});

test('thresholds are kept with their revision', async () => {
  const { settings } = await api.clips.UpdateClipSettings({ thresholds: { speech_to_noise_use_db: 24 } });
  assert.equal(settings.in_force.speech_to_noise_use_db, 24);
  assert.equal(settings.in_force.speech_to_noise_care_db, 12);
  const read = (await api.clips.GetClipSettings({})).settings;
  assert.deepEqual(read, settings);
  await api.clips.UpdateClipSettings({ thresholds: {}, revision: settings.revision });
  const late = await api.clips.UpdateClipSettings({ thresholds: {}, revision: settings.revision }).then(() => assert.fail('not refused'), (p) => p);
  assert.equal(late.code, status.ABORTED);
});
