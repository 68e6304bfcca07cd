using LabPipeline.Hosting;
using LabPipeline.Quality;

await LabHost.RunAsync(args, new QualityModule());
