using LabPipeline.BenchIntake;
using LabPipeline.Hosting;

return await ServiceProcess.RunAsync(args, new BenchIntakeModule(), Console.Out, Console.Error).ConfigureAwait(false);
