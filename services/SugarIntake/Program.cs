using LabPipeline.Hosting;
using LabPipeline.SugarIntake;

await LabHost.RunAsync(args, new SugarIntakeModule());
