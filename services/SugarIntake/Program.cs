using LabPipeline.Hosting;
using LabPipeline.SugarIntake;

return await ServiceProcess.RunAsync(args, new SugarIntakeModule(), Console.Out, Console.Error).ConfigureAwait(false);
