using LabPipeline.Intake;
using LabPipeline.Science.Quantities;

namespace LabPipeline.BalanceIntake;

/// <summary>Takes the files of balances: weight in air and water, peeling, storage and frying masses.</summary>
public sealed class BalanceIntakeModule() : IntakeModule(new IntakeKind(QuantityKind.Balance, "balance"));
