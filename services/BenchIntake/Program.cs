using LabPipeline.BenchIntake;
using LabPipeline.Hosting;

await LabHost.RunAsync(args, new BenchIntakeModule());
