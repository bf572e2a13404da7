// Clients made from our .proto files at run time, and the reading of rich errors.
'use strict';

const path = require('node:path');
const grpc = require('@grpc/grpc-js');
const loader = require('@grpc/proto-loader');
const protobuf = require('protobufjs');
const { root } = require('./host.js');

const CALL_LIMIT_MS = 60_000;
const protos = path.join(root, 'protos');
const folders = [protos, path.join(protos, 'third_party', 'googleapis'), __dirname];
const files = ['cabin_service', 'kit_service', 'scene_service', 'plan_service', 'placement_service', 'radio_service', 'clip_service', 'endurance_service', 'noise_service', 'team_service'].map((f) => `quarterlight/v1/${f}.proto`);

const packages = grpc.loadPackageDefinition(
  loader.loadSync([...files, 'health.proto'], { includeDirs: folders, keepCase: true, enums: String, longs: String, defaults: true, oneofs: true }),
);

// A client whose methods return promises.
function client(Service, target) {
  const stub = new Service(target, grpc.credentials.createInsecure());
  return new Proxy(stub, {
    get: (inner, method) => method === 'close'
      ? () => inner.close()
      : (request) => new Promise((resolve, reject) => {
          inner[method](request, { deadline: Date.now() + CALL_LIMIT_MS }, (problem, answer) => (problem ? reject(problem) : resolve(answer)));
        }),
  });
}

function clients(target) {
  const v1 = packages.quarterlight.v1;
  return {
    cabins: client(v1.CabinService, target),
    kits: client(v1.KitService, target),
    scenes: client(v1.SceneService, target),
    plans: client(v1.PlanService, target),
    placement: client(v1.PlacementService, target),
    radio: client(v1.RadioService, target),
    clips: client(v1.ClipService, target),
    endurance: client(v1.EnduranceService, target),
    noise: client(v1.NoiseService, target),
    teams: client(v1.TeamService, target),
    health: client(packages.grpc.health.v1.Health, target),
  };
}

// Streams a file: the header, then pieces. Resolves to what came back, or rejects with the refusal.
function judgeClip(target, header, file, pieceBytes = 65_536) {
  const stub = new packages.quarterlight.v1.ClipService(target, grpc.credentials.createInsecure());
  return new Promise((resolve, reject) => {
    const call = stub.JudgeClip({ deadline: Date.now() + CALL_LIMIT_MS });
    const answers = [];
    call.on('data', (answer) => answers.push(answer));
    call.on('error', reject);
    call.on('end', () => resolve(answers));
    call.write({ header });
    for (let at = 0; at < file.length; at += pieceBytes) {
      call.write({ piece: file.subarray(at, at + pieceBytes) });
    }
    call.end();
  }).finally(() => stub.close());
}

// google.rpc details of a refused call, by short type name.
function details(problem) {
  const types = new protobuf.Root();
  types.resolvePath = (_, target) => {
    const found = folders.map((f) => path.join(f, target)).find((f) => require('node:fs').existsSync(f));
    return found ?? target;
  };
  types.loadSync(['google/rpc/status.proto', 'google/rpc/error_details.proto']);
  const status = types.lookupType('google.rpc.Status').decode(problem.metadata.get('grpc-status-details-bin')[0]);
  return Object.fromEntries(status.details.map((any) => {
    const name = any.type_url.split('/').pop();
    return [name.split('.').pop(), types.lookupType(name).toObject(types.lookupType(name).decode(any.value))];
  }));
}

module.exports = { clients, details, judgeClip, status: grpc.status };
