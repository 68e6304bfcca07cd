using LabPipeline.BalanceIntake;
using LabPipeline.Hosting;

await LabHost.RunAsync(args, new BalanceIntakeModule());
