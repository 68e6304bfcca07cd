using LabPipeline.Board.Serving;

return await BoardHost.RunAsync(args, Console.Out, Console.Error);
