// Starts the emulated chat platform as a program and drives it over POST /control.
'use strict';

const { spawn } = require('node:child_process');
const path = require('node:path');
const readline = require('node:readline');

const PROGRAM = path.join(
  __dirname, '..', 'Quarterlight.Chat.Emulator', 'bin', process.env.CONFIGURATION ?? 'Release', 'net10.0', 'Quarterlight.Chat.Emulator.dll');

const LONGEST_END_MS = 15_000;

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

  // The same over standard input.
  async function say(name, fields = {}) {
    const answered = new Promise(found => lines.once('line', line => found(JSON.parse(line))));
    child.stdin.write(`${JSON.stringify({ do: name, ...fields })}\n`);
    return answered;
  }

  // Ends the program by ending its input; one that does not end by itself is a fault of its own.
  async function stop() {
    if (child.exitCode !== null) {
      throw new Error(`the emulator ended early, with ${child.exitCode}`);
    }
    const ended = new Promise(done => child.once('exit', done));
    const timer = setTimeout(() => child.kill('SIGKILL'), LONGEST_END_MS);
    child.stdin.end();
    const code = await ended;
    clearTimeout(timer);
    if (code !== 0) {
      throw new Error(`the emulator ended with ${code}, or not by itself`);
    }
  }

  return { ...info, order, say, stop };
}

module.exports = { startEmulator };
