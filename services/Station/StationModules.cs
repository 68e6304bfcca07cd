using LabPipeline.BalanceIntake;
using LabPipeline.BenchIntake;
using LabPipeline.ColourIntake;
using LabPipeline.Hosting;
using LabPipeline.Notifier;
using LabPipeline.Quality;
using LabPipeline.SugarIntake;

namespace LabPipeline.Station;

/// <summary>Every service of the pipeline, for running them in one process.</summary>
public static class StationModules
{
    public static ILabModule[] All() =>
    [
        new SugarIntakeModule(),
        new BalanceIntakeModule(),
        new ColourIntakeModule(),
        new BenchIntakeModule(),
        new QualityModule(),
        new NotifierModule(),
    ];
}
