using LabPipeline.ColourIntake;
using LabPipeline.Hosting;

await LabHost.RunAsync(args, new ColourIntakeModule());
