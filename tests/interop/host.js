// Starts the built planner as a process of its own and finds out where it listens.
'use strict';

const { spawn } = require('node:child_process');
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const readline = require('node:readline');

const STARTED_EVENT = 1003;
const START_LIMIT_MS = 60_000;
const root = path.resolve(__dirname, '..', '..');

// Without a folder it takes one of its own and removes it when stopped.
async function startPlanner(folder) {
  const configuration = process.env.CONFIGURATION ?? 'Release';
  const program = path.join(root, 'services', 'Quarterlight.Planner', 'bin', configuration, 'net10.0', 'Quarterlight.Planner.dll');
  const data = folder ?? newFolder();
  const child = spawn('dotnet', [program, '--grpc-port', '0', '--http-port', '0', '--data', data], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  try {
    const { GrpcAddress, HttpAddress } = await addresses(child);
    return {
      grpcTarget: new URL(GrpcAddress).host,
      httpAddress: HttpAddress,
      async stop() {
        child.kill('SIGTERM');
        const code = await ended;
        if (folder === undefined) {
          removeFolder(data);
        }
        return code;
      },
      async kill() {
        child.kill('SIGKILL');
        await ended;
      },
    };
  } catch (problem) {
    child.kill('SIGKILL');
    throw problem;
  }
}

function newFolder() {
  return fs.mkdtempSync(path.join(os.tmpdir(), 'quarterlight-interop-'));
}

function removeFolder(folder) {
  fs.rmSync(folder, { recursive: true, force: true });
}

// Killed in the middle of a line, a planner leaves half of it.
function entryOf(line) {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

// The planner logs one JSON object a line; the line of its start says where it listens.
function addresses(child) {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('the planner did not start in time')), START_LIMIT_MS);
    child.once('exit', (code) => reject(new Error(`the planner ended with ${code} before it listened`)));
    readline.createInterface({ input: child.stdout }).on('line', (line) => {
      const entry = entryOf(line);
      if (entry?.EventId === STARTED_EVENT) {
        clearTimeout(timer);
        resolve(entry.State);
      }
    });
  });
}

module.exports = { startPlanner, newFolder, removeFolder, root };
