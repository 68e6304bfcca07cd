using LabPipeline.Intake;
using LabPipeline.Science.Quantities;

namespace LabPipeline.BenchIntake;

/// <summary>Takes the files of bench sheets: defects of chips, cleaned surface, fry batches.</summary>
public sealed class BenchIntakeModule() : IntakeModule(new IntakeKind(QuantityKind.Bench, "bench"));
