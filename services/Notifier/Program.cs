using LabPipeline.Hosting;
using LabPipeline.Notifier;

await LabHost.RunAsync(args, new NotifierModule()).ConfigureAwait(false);
