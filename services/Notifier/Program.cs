using LabPipeline.Hosting;
using LabPipeline.Notifier;

return await ServiceProcess.RunAsync(args, new NotifierModule(), Console.Out, Console.Error).ConfigureAwait(false);
