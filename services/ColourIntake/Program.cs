using LabPipeline.ColourIntake;
using LabPipeline.Hosting;

return await ServiceProcess.RunAsync(args, new ColourIntakeModule(), Console.Out, Console.Error).ConfigureAwait(false);
