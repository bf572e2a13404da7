// Starts the emulated chat platform as a program and drives it over POST /control.
'use strict';

const { spawn } = require('node:child_process');
const path = require('node:path');
const readline = require('node:readline');

const PROGRAM = path.join(
  __dirname, '..', 'Quarterlight.Chat.Emulator', 'bin', process.env.CONFIGURATION ?? 'Release', 'net10.0', 'Quarterlight.Chat.Emulator.dll');

async function startEmulator(...options) {
  const child = spawn('dotnet', [PROGRAM, '--port', '0', ...options], { stdio: ['pipe', 'pipe', 'inherit'] });
  const lines = readline.createInterface({ input: child.stdout });
  const info = await new Promise((found, failed) => {
    lines.once('line', line => found(JSON.parse(line)));
    child.once('exit', code => failed(new Error(`the emulator ended with ${code} before it listened`)));
  });

  // Carries out an order; what the emulator cannot do is an error here.
  async function order(name, fields = {}) {
    const response = await fetch(`${info.address}/control`, { method: 'POST', body: JSON.stringify({ do: name, ...fields }) });
    const answer = await response.json();
    if (!answer.ok) {
      throw new Error(`${name}: ${answer.problem}`);
    }
    return answer;
  }

  async function stop() {
    const ended = new Promise(done => child.once('exit', done));
    child.stdin.end();
    return ended;
  }

  return { ...info, order, stop };
}

module.exports = { startEmulator };
