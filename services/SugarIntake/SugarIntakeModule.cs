using LabPipeline.Intake;
using LabPipeline.Science.Quantities;

namespace LabPipeline.SugarIntake;

/// <summary>Takes the files of sugar analysers: glucose before and after invertase, sucrose, extract mass, volume and dilution.</summary>
public sealed class SugarIntakeModule() : IntakeModule(new IntakeKind(QuantityKind.Sugar, "sugar"));
