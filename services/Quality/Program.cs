using LabPipeline.Hosting;
using LabPipeline.Quality;

return await ServiceProcess.RunAsync(args, new QualityModule(), Console.Out, Console.Error).ConfigureAwait(false);
