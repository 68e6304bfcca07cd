using LabPipeline.Science.Quantities;
using LabPipeline.Science.Statistics.Designs;

namespace LabPipeline.Reporting.Season;

/// <summary>A result that a season report analyses.</summary>
/// <param name="Quantity">What it is.</param>
/// <param name="Title">As a heading prints it.</param>
/// <param name="Unit">As a heading prints it.</param>
/// <param name="Decimals">Places shown; everything is computed from unrounded values.</param>
/// <param name="Kind">Scale of analysis.</param>
/// <param name="LowIsBest">Whether letters start at the lowest mean.</param>
/// <param name="Major">Whether the whole-season model and comparisons with the standard are printed, not only the tables of each pull.</param>
internal sealed record Response(Quantity Quantity, string Title, string Unit, int Decimals, ResponseScaleKind Kind, bool LowIsBest, bool Major)
{
    /// <summary>The title within a sentence: names keep their capitals.</summary>
    public string InText => Title.StartsWith("Hunter", StringComparison.Ordinal) || Title.StartsWith("CIELAB", StringComparison.Ordinal) ? Title : char.ToLowerInvariant(Title[0]) + Title[1..];

    /// <summary>What comes out of the warehouse divided by this lies on the range the scale expects.</summary>
    public double Divisor => Kind == ResponseScaleKind.Share ? 100 : 1;

    /// <param name="chips">Chips planned for one sample; sets how far shares of 0 and 1 are drawn in.</param>
    public ResponseScale ScaleFor(int chips) => Kind switch
    {
        ResponseScaleKind.Log => ResponseScale.Log(),
        ResponseScaleKind.Share => ResponseScale.Logit(0.5 / (chips + 1)),
        _ => ResponseScale.Measured,
    };

    /// <summary>The scale as a reader is told of it.</summary>
    /// <param name="chips">Chips planned for one sample.</param>
    public string ScaleStatement(int chips) => Kind switch
    {
        ResponseScaleKind.Log => "natural logarithm",
        ResponseScaleKind.Share => FormattableString.Invariant($"empirical logit of the share (0.5 / {chips + 1} drawn in at each end)"),
        _ => "as measured",
    };

    /// <summary>A limit or raw value on the scale of analysis.</summary>
    public double Transform(ResponseScale scale, double raw) => scale.Transform(raw / Divisor);
}
