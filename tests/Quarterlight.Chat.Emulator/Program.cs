using Quarterlight.Chat.Emulator.Control;

return await ControlProgram.RunAsync(args).ConfigureAwait(false);
