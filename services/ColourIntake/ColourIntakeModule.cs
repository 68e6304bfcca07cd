using LabPipeline.Intake;
using LabPipeline.Science.Quantities;

namespace LabPipeline.ColourIntake;

/// <summary>Takes the files of colour meters: Hunter or CIELAB values of chips.</summary>
public sealed class ColourIntakeModule() : IntakeModule(new IntakeKind(QuantityKind.Colour, "colour"));
