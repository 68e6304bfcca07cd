namespace LabPipeline.Station.Demo;

/// <summary>How an invented clone behaves in storage.</summary>
/// <remarks>
/// <c>Glucose</c>: mg/g at harvest. <c>Cold</c>: rise of its logarithm while the bay cools down. <c>Ageing</c>: rise of the logarithm for each squared
/// month after the fifth. <c>Sucrose</c>: share of the usual content. <c>SucroseAgeing</c>: mg/g for each squared month after four and a half.
/// <c>StemEnd</c>: tendency to stem-end defects, in standard deviations. <c>HollowHeart</c>: share of tubers.
/// </remarks>
internal sealed record DemoClone(
    string Code, double Glucose, double Cold, double Ageing, double Sucrose, double SucroseAgeing, double SpecificGravity, double StemEnd, double HollowHeart)
{
    private static readonly DemoClone[] All =
    [
        new("KT-104", 0.055, 0.30, 0.050, 1.00, 0.05, 1.0862, -0.2, 0.01),
        new("KT-118", 0.090, 1.10, 0.060, 1.10, 0.06, 1.0815, 0.4, 0.03),
        new("KT-127", 0.045, 0.25, 0.270, 0.95, 0.18, 1.0890, 0.0, 0.02),
        new("KT-131", 0.035, 0.15, 0.030, 0.90, 0.03, 1.0845, -0.6, 0.01),
    ];

    public static DemoClone Find(string code) => All.Single(clone => clone.Code == code);
}
