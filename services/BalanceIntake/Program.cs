using LabPipeline.BalanceIntake;
using LabPipeline.Hosting;

return await ServiceProcess.RunAsync(args, new BalanceIntakeModule(), Console.Out, Console.Error).ConfigureAwait(false);
