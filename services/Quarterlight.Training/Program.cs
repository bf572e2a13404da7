using Quarterlight.Training;

return await TrainingProgram.RunAsync(args, Console.Out, Console.Error).ConfigureAwait(false);
