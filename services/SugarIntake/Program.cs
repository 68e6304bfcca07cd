using LabPipeline.SugarIntake;
using LabPipeline.Hosting;

await LabHost.RunAsync(args, new SugarIntakeModule());
