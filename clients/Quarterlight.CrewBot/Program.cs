using Quarterlight.CrewBot;

return await CrewBotProgram.RunAsync(args, CrewBotSurroundings.OfThisProcess(EmbeddedPlanner.StartAsync)).ConfigureAwait(false);
