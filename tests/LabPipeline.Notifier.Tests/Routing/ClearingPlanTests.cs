using LabPipeline.Notifier.Deliveries;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Tests.Routing;

public sealed class ClearingPlanTests
{
    [Theory]
    [InlineData("delivered", 1, false, ClearingStep.Tell)]
    [InlineData("pending", 0, false, ClearingStep.HoldBackBoth)]
    [InlineData("pending", 1, false, ClearingStep.Tell)]
    [InlineData("pending", 0, true, ClearingStep.Tell)]
    [InlineData("failed", 3, false, ClearingStep.Nothing)]
    [InlineData("held back", 0, false, ClearingStep.Nothing)]
    public void Of_WhenTheRaisingStandsSo_TellsThoseWhoMayKnow(string state, int attempts, bool isCompleteRecord, ClearingStep expected) =>
        Assert.Equal(expected, ClearingPlan.Of(new RaisedDelivery { State = state, Attempts = attempts }, isCompleteRecord));
}
